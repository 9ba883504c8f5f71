// Package valuation answers one question: what is the most that may be bid for this lot, how sure is that, and why?
//
// [Value] is the front door, one straight page that calls each stage once:
//
//	lot, damage survey -> repair lines -----+
//	findings           -> hidden risks -----+
//	comparables        -> resale price -----+-> scenarios -> rules -> walk-away bid
//	fees, taxes, steps, time, selling ------+            -> ladder, waterfall, drivers, checklist
//
// A [Case] is all that goes in, an [Answer] all that comes out; [Knowledge] holds the catalogues and the market's prior.
// [Case.Check] says what is wrong with a case before it is valued. [Weigh] gives the odds at every other bid with the answer, a
// [Memory] keeps what an edit leaves alone. What came of a lot closes the loop: [Foresee] values what is left of a build
// with the same engine, [Case.Factors] carries what past buys taught, [Memory.Compare] and [Memory.Replay] say what that changes.
//
// At the strip-down each scenario goes on or takes the best way out (package ways); every plan has a walk-away bid under the same rules,
// and the answer is that of the best. The price is that of the day of sale. Where n bid, the allowance is c(n) k s: s is the standard
// deviation, over the level of prices and the lot's common factor, of the plan's mean value, k the part of it that differs from bidder to
// bidder; of that doubt winning leaves the share 1 - k^2 (1 - v(n)) of the variance, see prob.WinnersConstant and prob.WinnersVariance.
//
// Units: exact money in minor units (money.Amount), model figures in major units, hours of one person, calendar days,
// chances 0..1. Signs: money that comes to us is positive, costs are positive numbers; profit = resale - costs, and is
// counted after the winner's allowance. In the waterfall each bar carries the sign with which it is added.
// Assumptions: the resale price is independent of what the build costs but for its days; where the guess alone carries it, it stays what it
// is until a yearly change is entered; the engine reads no clock and no file.
//
// It gives no advice: the maker's procedures, local codes and licensed practice decide what may be done to a vehicle.
package valuation
