// Package belief answers one question: what is believed of a quantity after evidence, given what was believed before?
//
// [Linear] is a normal-inverse-gamma belief about the coefficients of a linear model, updated exactly by [Linear.Update];
// observations of one [Sample] may go together. [Between] says how far groups lie apart, by which they are pooled. [Chance]
// is a beta belief in counts, updated by looks whose outcome other findings may have half promised. [Loading] is the belief
// about how strongly quantities lean on one common factor.
//
// Units: those of the caller. Weights are 0..1: a likelihood counts to the power of its weight, so that old evidence fades.
// Random: nothing is drawn.
// Assumptions: errors are normal about the linear model; given the chance, looks are independent.
// Each update is calibrated by simulation in its tests: a truth drawn from the belief before lies evenly in the one after.
//
// Sources: [1] O'Hagan and Forster, Bayesian Inference, ch. 11, the conjugate linear model (from memory); [2] Efron and
// Morris, JASA 70 (1975) 311-319, shrinkage; [3] Gelman et al., Bayesian Data Analysis, sections 2.4, 5.1 and 5.5 (not read,
// figures computed); [4] Sherman and Morrison, Ann. Math. Stat. 21 (1950) 124-127, the inverse of a matrix plus a product
// (from memory).
//
// It knows nothing of builds and of money.
package belief
