// Package bid answers one question: what is the most that may be bid, and which house rule says so?
//
// [Find] reads the scenarios of a lot, its resale price, the sale's terms and the house rules. Every figure that a rule
// looks at depends on the bid through the invoice total A(b) alone and never improves when A rises, so each rule has a
// greatest total, found by bisection to the minor unit; the walk-away bid is the largest legal bid whose invoice stays
// within the smallest of them. Legal bids are looked through one by one, because an invoice may jump and even fall as
// the bid rises.
//
// profit(b) = R (1 - sell%) - sell_flat - cost - A(b) (1 + r T / 365) - winner's allowance. The resale price R is independent of
// the scenarios and integrated out: the chance of a loss is the mean over the scenarios of the chance that R falls short, and
// the worst tenth is the worst tenth of that mixture. Profits are counted after the winner's allowance, since that is what
// the winner may expect; cash and days do not know it.
//
// Units: money in major units, bids and invoice totals in minor units; chances 0..1; margin is profit / outlay, the outlay
// being every cost, selling, own labour and capital cost included. A rule met to within 1e-7 of its limit holds.
// Assumptions: the worst tenth is read from groups of scenarios of like cost (1,024 of them), whose means stand for them;
// a certain resale price is read from the scenarios themselves.
//
// Sources: [1] expected shortfall, Acerbi and Tasche 2002; [2] the law of total probability, for
// P(profit < 0) = E[P(profit < 0 | costs)]; [3] winner's allowance, Milgrom and Weber 1982, see prob.WinnersConstant.
//
// It sets no rule and knows no vehicle.
package bid
