// Package learn answers one question: what do the buyer's own past buys say about the forecasts, and by how much should
// the next forecast change?
//
// A [Build] is one past buy: what was foretold ([Prediction], frozen) and what came ([Came]). [Propose] weighs the builds
// and returns one [Proposal] a factor: today's value, the proposed one, the buys behind it, and how far it moves and why.
// [Apply] takes one proposal over into [Factors]; nothing changes by itself. How the forecasts did is package hindsight's.
//
// Hours by trade, and money by source and kind, are log ratios of actual to foretold, pooled to an overall ratio: a trade
// with few buys leans on the others. Each line counts by what came of it: a part's price is held against the foretold price
// of the source that it was bought from. The resale price has a bias and a spread of its own, the part that hangs on a
// brand's discount apart. Hidden risks are counts; similar ones (of one trade) lend each other their surprise. The
// loading is learned from how often a build's ratios run over together. Older buys count less by a half-life.
//
// A buy without a kept forecast is held against a guess made for its facts today, where there is one, and counts less.
//
// Every observation may be missing, and missing is unknown, never zero: a nil pointer, an empty date, a risk that is in
// no list. What is unknown leaves a build out of the one figure that needs it, and out of no other.
//
// Units: exact money in minor units of the build's currency (money.Amount); forecasts of money in major units; hours of
// one person; calendar days; chances 0..1; ratios are actual / foretold, 1 where the forecast was right.
// A forecast made with learned factors is taken back to the starter values first, so that a factor is never learned twice,
// and so is what the winner's allowance had counted already.
//
// Assumptions: builds are independent of each other; a shop's ratios drift slowly against the half-life. Only won lots
// are seen ([Selection]): findings that a bid rested on are corrected for, what the buyer saw and did not write down is not.
// A forecast whose range is too wide is not narrowed, but for the resale price. A kind of cost is one factor for all lines.
//
// Sources: those of package belief.
//
// It does no I/O and reads no clock: today is given.
package learn
