package form

import (
	"cmp"

	"walkline/ui/damage"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// listedOf returns what a run list says of a case's lot, blank where no list said anything yet.
func listedOf(c *valuation.Case) *lot.Listed {
	if c.Lot.Listed == nil {
		c.Lot.Listed = new(lot.Listed)
	}
	return c.Lot.Listed
}

// listing returns an edit that leaves nothing behind where no list says anything.
func listing(e Edit) Edit {
	return func(label string, change func(*valuation.Case)) {
		e(label, func(c *valuation.Case) {
			change(c)
			if l := c.Lot.Listed; l != nil && !l.Said() && l.RunOrder == 0 {
				c.Lot.Listed = nil
			}
		})
	}
}

// NewListed returns a form of what the run list says beside the facts: fields that a list fills in, and a hand can.
func NewListed(e Edit) *Form {
	f := New(listing(e))
	words := make([]string, len(lot.Areas))
	for i, area := range lot.Areas {
		words[i] = damage.Area(area)
	}
	const columns = 3
	f.Row("Listed damage", f.ticks("Listed damage", lot.Areas, words, columns, func(c *valuation.Case) *[]string {
		return &listedOf(c).Areas
	}), func(valuation.Case) {})
	sum := widgets.Spec{Kind: widgets.Money, Optional: true, Least: widgets.Bound(1)}
	f.Number("Listed value before", sum, func(c *valuation.Case) any { return &listedOf(c).ValueBefore })
	f.Number("Listed repair estimate", sum, func(c *valuation.Case) any { return &listedOf(c).RepairEstimate })
	in := widgets.NewCaption("")
	f.Row("Listed in", in, func(c valuation.Case) { in.SetText(cmp.Or(listedOf(&c).Currency, c.Currency)) })
	f.Text("Listed note", func(c *valuation.Case) *string { return &listedOf(c).Note })
	return f
}
