// Package bid answers one question: what is the most that may be bid, and which house rule says so?
//
// [Find] reads the scenarios of a lot, its resale price, the sale's terms and the house rules. Every figure that a rule
// looks at depends on the bid through the invoice total A(b) alone and never improves when A rises, so each rule has a
// greatest total, found to the minor unit; the walk-away bid is the largest legal bid whose invoice stays
// within the smallest of them. Between two edges of the fee schedules a higher bid never costs less; at an edge the invoice may jump
// and even fall, so each stretch is looked at by itself.
//
// profit(b) = R g (1 - sell%) - sell_flat - cost - A(b) (1 + r T / 365) - winner's allowance, g being what the days until the sale of a
// scenario put to the price; in a scenario that stops, the money of a way out stands in place of the sale. The price R and that
// money are independent of the scenarios and integrated out: the chance of a loss is the mean over the scenarios of the chance that R falls
// short, and the worst tenth is the worst tenth of that mixture. Profits are counted after the winner's allowance, since that is what the
// winner may expect; cash and days do not know it.
//
// Units: money in major units, bids and invoice totals in minor units; chances 0..1; margin is profit / outlay, the outlay being every
// cost, selling, own labour and capital cost included. A rule met to within 1e-7 of its limit holds. Assumptions: chances, quantiles and
// the worst tenth are read from groups of scenarios of like outlay, whose means stand for them: slices as wide as 1/128 of the standard
// deviation of what the sale brings, in a few bands of what of the price is kept. A certain resale price, or one so nearly certain that
// there would be more slices than scenarios, is read from the scenarios themselves.
//
// Sources: [1] expected shortfall, Acerbi and Tasche 2002; [2] the law of total probability, for
// P(profit < 0) = E[P(profit < 0 | costs)]; [3] winner's allowance, Milgrom and Weber 1982, see prob.WinnersConstant;
// what winning draws in comes as a column and a narrowed price; [4] the search: Dowell and Jarratt 1971, a modified regula falsi (from
// memory).
//
// It sets no rule and knows no vehicle.
package bid
