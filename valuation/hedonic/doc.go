// Package hedonic answers one question: how do prices of vehicles in one table hang on what the vehicles are, and how sure is
// that, given what other models' prices teach?
//
// Hedonic means that a price is taken for the sum of what its vehicle's traits are worth. The natural logarithm of the price is a
// sum of effects measured from one vehicle, the subject: level, age and its bend, steps from model year to model year beside
// them (a random walk), mileage (straight, root or logarithm), asked against sold, title brand, condition, the drift of the
// market since the sale (a random walk too, so that old rows fade as fast as the used-vehicle price index has moved), and, where
// the table has them, trim, make and model with slopes of their own, and any further column of numbers or words that the subject
// states too. Every effect has a Gaussian prior [Prior] fitted to other models; the spreads of effects of levels, of the years'
// steps and of the residual are estimated from the table under priors of their own, so that a column that tells nothing shrinks
// away; so is the size of the market's drift. Errors are Student-t, and one row in fifty may be wild, anywhere from a tenth to ten
// times what it should be. All is solved together by expectation-maximisation [1, 2]. Rows far from the subject in age,
// mileage or distance count for less (a power of their likelihood).
//
// Forms of mileage and market priors are weighed by how well they foretell rows left out (hat matrix, weights held; no refits)
// [3]; above 60 rows the best on a spread of 60 is fitted to all rows alone.
//
// [Refine] goes the other way: it fits what the models of one market have in common, from samples of each.
//
// Shapes: [Fit] takes one table of [Sale] and the subject's [Traits] and returns a [Blend] of a few fits. Units: prices in major
// units, effects as logarithms (0.05 is about 5 %), age in years, mileage in miles, and 10,000 miles for its effect. Signs: a
// change brings the row to the subject.
// Assumptions: asking and selling differ by one factor; title brands discount by one factor; sales are independent given their
// traits; errors have one scale at all ages. Letting it grow as a power of the age (0.3 to 0.6, shrunk) was tried on the four open
// sets of cmd/fitprior: old vehicles were held a little better and new ones worse, at the same coverage over all.
//
// Sources: [1] Lange, Little and Taylor, Robust statistical modeling using the t distribution, JASA 84 (1989) 881-896; [2] Efron
// and Morris, JASA 70 (1975) 311-319, pooling; [3] Yao, Vehtari, Simpson and Gelman, Using stacking to average Bayesian
// predictive distributions, Bayesian Analysis 13 (2018) 917-1007, weights by pseudo-BMA; [4] Rosen, Hedonic prices and implicit
// markets, J. Political Economy 82 (1974) 34-55, the idea. Citations from memory.
//
// It doesn't read rows of a file, screen them or find duplicates, and turns no logarithm into a price: package resale does.
package hedonic
