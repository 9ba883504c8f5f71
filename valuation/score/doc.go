// Package score answers one question: how well did stated distributions and chances foretell what came?
//
// A distribution is its quantiles at [Chances]: [Quantile] and [CDF] read it, between two quantiles along the normal score,
// beyond the outermost on the line through the last two; [CRPS] scores it, and [Naive] scores foretelling each outcome by all the
// others. [Coverage] counts how often an interval held, with the chances that the count leaves open. [Uneven] judges a
// histogram. [NewReliability] splits the Brier score of stated chances.
//
// Units: chances 0..1, scores in the unit of what is foretold; 0 is perfect.
// Assumptions: outcomes are independent of each other, for the ranges and for [Uneven].
//
// Sources: [1] Gneiting and Raftery, JASA 102 (2007) 359-378, CRPS (from memory); [2] Brier, Monthly Weather Review 78 (1950)
// 1-3, whose score is twice today's; [3] Murphy, J. Applied Meteorology 12 (1973) 595-600 (both from memory).
//
// It knows nothing of builds and of money.
package score
