// Command season plays years of a one-person shop that buys at salvage sales, and holds this program against rules of thumb.
//
//	go run ./cmd/season [-seasons 1000] [-lots 240] [-seed 1]
//
// A pool of lots is invented once. Each lot's damage is one of the surveys that a run list leaves possible (package patterns); what it
// truly costs, takes and brings is drawn by package cmd/truth, whose ratios and chances differ from the starter values. Rivals know the
// lot but for an error that they share and one of their own; the best of them sets the price. Each season is 17 sales of 40 lots of the
// pool, three weeks apart; every buyer meets the same lots, rivals and luck. The buyers:
//
//   - the program: looks at the 12 lots that are most worth it, values what it saw and lets the rest go, may stop at the strip-down or
//     sell in parts, has learned from past builds and results, and follows the plan of the day;
//   - first guesses, no looks: the same, bidding on the run list alone;
//   - looks and first guesses: the same, bidding at first guesses on what it did not look at as well;
//   - without ways out, without learning, without the plan (walk-away bids in order while the cash lasts);
//   - a fixed share of the clean price less repairs, and the price less twice the parts bill (common practice, no source), each from a
//     look at the lots that run first, in order while the cash lasts;
//   - a clairvoyant, who knows each lot's price and what will come of it, and buys the best one or two that bring enough for the days
//     in a bay.
//
// It prints the profit a year after own hours, the worst month (mean, and the worst in a hundred seasons), the share of ruined shops (more
// than 5,000 owed), lots bought and the share of them that lost, what was made of what was foretold, the profit as a ratio to the
// clairvoyant and to each rule, and what the program whole makes more in the same seasons.
//
// What is simplified: what the shop has learned was learned before the season and stays; bills are paid and own hours drawn on the day of
// the purchase; hours to do lie in one queue; a buyer has in mind the twelve lots of the greatest expected gain; the plan reads prices off
// the model of results at the mean of the lot, reserves cash as a share above its mean, and sets a price on a bay, chosen on seasons of
// their own, as is the clairvoyant's on the days in one; what is still to spend at the strip-down is known to the stopper; capital costs
// nothing; nobody adapts to us.
//
// Random: one seed for everything; a run gives the same table every time. Units: money in major units where printed. All figures are
// invented: it is a measure of the program's parts against each other, not of a market.
package main
