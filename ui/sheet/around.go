package sheet

import (
	"walkline/ui/view"
	"walkline/valuation"
)

// aroundTheBid are how far each house rule would go by itself, and all that the bids next to the walk-away bid bring; nothing for a lot
// that is not ready.
func aroundTheBid(a valuation.Answer) []part {
	if len(a.Needs) > 0 {
		return nil
	}
	p := view.NewPurse(a.Currency)
	stops := part{title: "Each limit alone would stop at"}
	for _, c := range a.Ceilings {
		at := "no bid"
		switch {
		case c.Any:
			at = "any bid"
		case c.Bid != nil:
			at = p.Exact(*c.Bid)
		}
		stops.blocks = append(stops.blocks, row(valuation.RuleWords[c.Rule], at, bodyType))
	}
	return []part{stops, inFull(a.Ladder, p)}
}

// row is a label with its figure.
func row(label, figure string, s style) block {
	return block{height: func(c *column) float64 { return 2 * s.line() }, write: func(c *column) { c.pair(label, figure, s) }}
}

// inFull is all that each bid of the ladder brings.
func inFull(rungs []valuation.Rung, p view.Purse) part {
	out := part{title: "What a bid brings"}
	for _, r := range rungs {
		words := "Bid " + p.Group(r.Bid) + ": invoice " + p.Group(r.Acquisition) + ", profit " + p.Whole(r.MeanProfit) + ", loss " +
			view.Percent(r.LossChance) + ", worst tenth " + p.Whole(r.WorstTenth) + ", margin " + view.Percent(r.Margin)
		if r.PerHour != nil {
			words += ", per hour " + p.Whole(*r.PerHour)
		}
		if !r.Holds {
			words += ", breaks a rule"
		}
		out.blocks = append(out.blocks, block{height: func(c *column) float64 { return c.bulletHeight(words, smallType) },
			write: func(c *column) { c.bullet(words, smallType) }})
	}
	return out
}
