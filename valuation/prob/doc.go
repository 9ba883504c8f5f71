// Package prob answers one question: which distributions and draws does the engine use, and what are their moments,
// quantiles and tails?
//
// It holds the normal distribution, the three-point judgement read as a modified PERT beta, tabulated distributions
// ([Table]) for anything that has a quantile function, stratified draws that depend on a name and a seed alone
// ([Draws]), sample figures (mean, quantile, expected shortfall), ratio studies of estimates against prices, the
// order-statistic constant of the winner's allowance, and the linear algebra and Student-t figures that the resale model
// needs. A mixed model's normal equations are mostly zero between the levels of a group: [Mixed] eliminates its effects in a
// sparse order [5] and finds of their covariance only what its rows read [6].
//
// Units: chances are 0..1; values keep the unit of their caller.
// Assumptions: samples are given whole and unsorted unless said otherwise; no function keeps or changes its argument
// unless its name says so.
//
// Sources: [1] Vose, Risk Analysis, 3rd ed. 2008, modified PERT (from memory); [2] Acerbi and Tasche, On the coherence
// of expected shortfall, J. Banking Finance 26 (2002), definition 2.6 (from memory); [3] McKay, Beckman and Conover,
// Technometrics 21 (1979) 239-245, Latin hypercube sampling (from memory); [4] Milgrom and Weber, Econometrica 50 (1982); [5] George and
// Liu, Computer Solution of Large Sparse Positive Definite Systems, 1981 (from memory); [6] Erisman and Tinney, CACM 18 (1975) 177-179
// (from memory).
//
// It reads no clock and no global randomness; gonum is seen here and nowhere else.
package prob
