package sheet

import (
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/money"
)

// step is one bar of the waterfall on its axis, in major units.
type step struct {
	name     string
	figure   string
	from, to float64
	whole    bool // a price: it stands on nought
}

// steps returns the bars from the resale price down to the bid; each cost hangs from where the one before it ended.
func steps(a valuation.Answer) []step {
	p := view.NewPurse(a.Currency)
	var out []step
	var at money.Amount
	for i, b := range a.Waterfall {
		s := step{name: b.Name, figure: p.Whole(p.Major(b.Amount)), from: p.Major(at), to: p.Major(at + b.Amount)}
		if i == 0 || i == len(a.Waterfall)-1 {
			s.from, s.to, s.whole = 0, p.Major(b.Amount), true
		}
		if b.Of() == valuation.BarProfit && b.Amount > 0 {
			s.name = "Expected loss" // it is what the buyer would have to add
		}
		at += b.Amount
		if s.whole || b.Amount != 0 {
			out = append(out, s)
		}
	}
	return out
}

const (
	barHeight = 2.6
	barNames  = 31.0 // mm for the names
	barRoom   = 15.0 // mm for the figures
)

// waterfall draws the way from the resale price to the bid: prices are solid bars, what is taken off is plain.
func (c *column) waterfall(a valuation.Answer) {
	bars := steps(a)
	if len(bars) == 0 {
		return
	}
	c.heading("From the resale price to the bid, " + a.Currency)
	low, high := 0.0, 0.0
	for _, b := range bars {
		low, high = min(low, b.from, b.to), max(high, b.from, b.to)
	}
	room := c.w - barNames - barRoom
	at := func(x float64) float64 { return c.x + barNames + (x-low)/max(high-low, 1)*room }
	for _, b := range bars {
		s, fill := bodyType, ground-26
		if b.whole {
			s, fill = strongType, 90
		}
		names := c.press.wrap(b.name, barNames-1, s)
		c.need(float64(len(names)) * s.line())
		left, right := min(at(b.from), at(b.to)), max(at(b.from), at(b.to))
		c.press.box(c.page, left, c.y+(s.line()-barHeight)/2, max(right-left, 0.2), barHeight, fill, muted, 0.15)
		c.press.write(c.page, c.x+c.w, c.y, 1, b.figure, s)
		for _, name := range names {
			c.press.write(c.page, c.x, c.y, 0, name, s)
			c.y += s.line()
		}
	}
}
