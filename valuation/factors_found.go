package valuation

import (
	"iter"
	"slices"

	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// unnamed moves money from the known work to the hidden damage: damage that was found and that no bill names was paid for by bills that
// name no line. Each find takes what it was judged or foretold to cost, no more together than those bills came to.
func (d diary) unnamed(c *learn.Came, loose money.Amount) {
	cur, known := money.Lookup(d.p.Currency)
	if !known || c.Repair == nil {
		return
	}
	for id, cost := range d.finds() {
		x := min(cur.FromMajor(cost), loose)
		if x <= 0 || slices.ContainsFunc(d.b.Receipts, func(r build.Receipt) bool { return lot.SameWork(r.Line, id) }) {
			continue
		}
		repair, hidden := *c.Repair-x, x
		if c.Hidden != nil {
			hidden += *c.Hidden
		}
		loose, c.Repair, c.Hidden = loose-x, &repair, &hidden
	}
}

// finds yields the damage that was found with what it costs, in major units: as judged on the spot, else as it was foretold.
func (d diary) finds() iter.Seq2[string, float64] {
	return func(yield func(string, float64) bool) {
		for _, u := range d.b.Unlisted {
			if !yield(u.ID, u.Cost.Mean()) {
				return
			}
		}
		for _, s := range d.b.Risks {
			if s.State == build.Found && !yield(s.Risk, d.foretold(s.Risk)) {
				return
			}
		}
	}
}

// foretold returns the money that a risk was foretold to cost if it is there.
func (d diary) foretold(risk string) float64 {
	sum := 0.0
	if d.p.Foretold != nil {
		for _, i := range d.p.Foretold.Items {
			if i.Risk == risk && i.Kind == learn.HiddenKind {
				sum += i.Mean
			}
		}
	}
	return sum
}
