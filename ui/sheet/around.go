package sheet

import (
	"walkline/ui/view"
	"walkline/valuation"
)

// aroundTheBid are the invoice at the bid, how far each house rule would go by itself, and what the bids of the ladder bring; nothing for a
// lot that is not ready.
func aroundTheBid(a valuation.Answer) []part {
	if len(a.Needs) > 0 {
		return nil
	}
	p := view.NewPurse(a.Currency)
	bill := part{title: "Invoice at " + p.Show(a.Acquisition.Bid)}
	for _, l := range a.Acquisition.Lines {
		bill.blocks = append(bill.blocks, row(l.Name, p.Exact(l.Amount), bodyType))
	}
	bill.blocks = append(bill.blocks, row("Invoice total", p.Exact(a.Acquisition.Total), strongType))
	stops := part{title: "Each rule alone would stop at"}
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
	return []part{bill, stops, ladder(a, p)}
}

// row is a label with its figure.
func row(label, figure string, s style) block {
	return block{height: func(c *column) float64 { return 2 * s.line() }, write: func(c *column) { c.pair(label, figure, s) }}
}

// ladder is what each bid of the ladder brings.
func ladder(a valuation.Answer, p view.Purse) part {
	out := part{title: "What a bid brings"}
	for _, r := range a.Ladder {
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
