package bid

import "walkline/valuation/money"

// Figures is what a bid brings. Units: money in major units.
type Figures struct {
	Bid, Total money.Amount
	Mean       float64 // expected profit after the winner's allowance
	LossChance float64
	WorstTenth float64  // mean profit in the worst tenth
	Margin     float64  // profit / outlay
	PerHour    *float64 // nil: no own hours
	Holds      bool     // every rule that is on holds
	Broken     []string // the rules that fail, in their order
}

// Judge returns the figures of one bid. Limits: after Find.
func (p *Problem) Judge(b money.Amount) Figures {
	inv := p.Terms.Total(b, p.Currency)
	a := p.Currency.Major(inv.Total)
	f := Figures{Bid: b, Total: inv.Total, Mean: p.mean(a), LossChance: p.LossChance(a), WorstTenth: p.worstTenth(a), Broken: p.broken(a)}
	f.Holds = len(f.Broken) == 0
	if out := p.outlay(a); out > 0 {
		f.Margin = f.Mean / out
	}
	if p.hours > 0 {
		h := (f.Mean + p.labour) / p.hours
		f.PerHour = &h
	}
	return f
}

// broken returns the rules that fail at an invoice total, in their order.
func (p *Problem) broken(a float64) []string {
	var names []string
	for _, r := range p.on() {
		if !r.holds(a) {
			names = append(names, r.name)
		}
	}
	return names
}

// Means is the expected value of what the waterfall shows, at an invoice total.
type Means struct {
	Resale, Selling, Capital, Allowance float64
	Labour, Hours, Days, Days90, Cash90 float64
}

// Means returns the expected figures at a bid. Limits: after Find.
func (p *Problem) Means(b money.Amount) Means {
	a := p.Currency.Major(p.Terms.Total(b, p.Currency).Total)
	return Means{p.Resale.Mean(), p.selling(), p.capital(a), p.Allowance, p.labour, p.hours, p.days, p.days90, p.cash90}
}
