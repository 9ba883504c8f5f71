// Package hammer answers one question: what will a lot go for?
//
// The hammer price is a share of the finished value less the visible work, as the shop itself sees both. The logarithm of the share
// is normal about the sum of an overall level, one term for each cause of loss and one for the running state:
//
//	ln(hammer / (finished value - visible work)) = level + cause + running state + error
//
// [Starter] is the belief before any result: wide. [Model.Learn] updates it exactly (normal-inverse-gamma): a cause or state with few
// results is drawn towards the level, one with many speaks for itself. [Model.Law] is the distribution of one lot's price, whose
// logarithm is Student-t, wider than the error alone by what is not known of the terms. It gives the chance to win at any bid.
// [Study] holds each result against what the results before it foretold.
//
// Units: money in major units of one currency; a share has none, so results of several sales go together.
// Assumptions: results are independent given the terms, and as good as the shop's own figures; prices of lots whose work exceeds
// their value have no share and are refused. A lot whose cause is not known stands in a group of its own, as does an unknown state.
//
// Sources: [1] O'Hagan and Forster, Bayesian Inference, ch. 11 (see package belief); [2] Dawid, JRSS A 147 (1984) 278-292, the
// probability integral transform of forecasts one step ahead (both from memory). Starter values are from memory: replace them by
// entering results.
//
// It knows no bid and no rule. A buyer's own guess stands above it: that is its caller's business.
package hammer
