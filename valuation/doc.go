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
// Units: exact money in minor units (money.Amount), model figures in major units, hours of one person, calendar days,
// chances 0..1. Signs: money that comes to us is positive, costs are positive numbers; profit = resale - costs, and is
// counted after the winner's allowance. In the waterfall each bar carries the sign with which it is added.
// Assumptions: the resale price is independent of what the build costs; the engine reads no clock and no file.
//
// It gives no advice: the maker's procedures, local codes and licensed practice decide what may be done to a vehicle.
package valuation
