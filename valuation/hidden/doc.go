// Package hidden answers one question: what damage may be there that has not been seen, and what would it cost?
//
// A [Risk] has a chance given as Beta counts, a cost, hours and days if it is there, and findings that inform it. [Raise]
// collects the risks that the survey brings up from the catalogue. [After] says what is believed after the answers: of the lot's
// common factor, by Bayes' rule on a grid of it, and of each risk given the factor; a [Look] that several risks explain is shared
// out between them. [Risk.Draw] plays a risk out, by its own chance given factor and answers.
//
// Units: money in major units (parts, materials, outside work; own labour apart), hours, days, chances 0..1.
// Random: each quantity has a stream named by the risk's id.
// Assumptions: given that the damage is there or not, findings are independent of each other; presence, cost, hours and
// days lean on the lot's common factor by the risk's loading, so one bad surprise makes the next more likely, and many bad signs
// say that the rest is worse too. The tie that a shared "yes" makes between its causes moves their chances, not their draws. A risk's
// days come on top of the time that its hours of work take.
//
// Sources: [1] Bayes' rule in odds form; [2] Beta-binomial updating, Gelman et al., Bayesian Data Analysis, 3rd ed.,
// section 2.4 (from memory); [3] one-factor Gaussian copula, see prob.Loaded; [4] noisy-or, Pearl 1988 (from memory).
//
// It does not learn: new counts come in as data.
package hidden
