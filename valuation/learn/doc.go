// Package learn answers one question: what do the buyer's own past buys say about the forecasts, and by how much should
// the next forecast change?
//
// A [Build] is one past buy: what was foretold ([Prediction], frozen) and what came ([Came]). [Propose] weighs the builds
// and returns one [Proposal] a factor: today's value, the proposed one, the buys behind it, and how far it moves and why.
// [Apply] takes one proposal over into [Factors]; nothing changes by itself. [Judge] holds the forecasts against what
// came: coverage, PIT, scores, and money won and lost by cause.
//
// Every observation may be missing, and missing is unknown, never zero: a nil pointer, an empty date, a risk that is in
// no list. What is unknown leaves a build out of the one figure that needs it, and out of no other.
//
// Units: exact money in minor units of the build's currency (money.Amount); forecasts of money in major units; hours of
// one person; calendar days; chances 0..1; ratios are actual / foretold, 1 where the forecast was right.
// A forecast made with learned factors is taken back to the starter values first, so that a factor is never learned twice.
//
// It does no I/O and reads no clock: today is given.
package learn
