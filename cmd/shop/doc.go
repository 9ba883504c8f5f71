// Command shop plays a simulated shop and holds the learning against it.
//
//	go run ./cmd/shop [-buys 400] [-fresh 300] [-shops 8] [-seed 1]
//
// The shop's true ratios, chances and spreads are known and differ from the starter values. It buys lots, works on them and
// sells them; what comes is drawn from the starter forecast's items and the truth, by arithmetic of its own and not by the
// engine's. Then the program says how near the learned factors come to the truth, against what their own uncertainty
// claims; how often the intervals hold on fresh lots, with the starter values and with what was learned; and what the
// walk-away bids of either, and of a buyer who knows the truth, earn on the same fresh lots.
//
// Random: one seed for everything; a run gives the same figures every time. Units: money in major units.
// Assumptions: lots are bought at prices that do not depend on what comes, so there is no winner's curse here and the
// allowance is off; every factor is taken over whole, but for one row that holds those from few buys back as the window does; the one house
// rule is that a lot is
// expected to pay for itself, own hours included, so that the best
// walk-away bid is the one that knows the truth; hours and money are lognormal, where the engine takes them for betas; lots are priced by a
// guess.
//
// It is a measure, not a proof: a real shop is no draw from the catalogue.
package main
