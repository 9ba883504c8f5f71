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
	at := p.read(p.Currency.Major(inv.Total))
	f := Figures{Bid: b, Total: inv.Total, Mean: at.mean, LossChance: p.LossChance(at.total), WorstTenth: at.worst(p)}
	for _, r := range p.on() {
		if r.slack(at) < 0 {
			f.Broken = append(f.Broken, r.name)
		}
	}
	f.Holds = len(f.Broken) == 0
	if at.outlay > 0 {
		f.Margin = f.Mean / at.outlay
	}
	if p.hours > 0 {
		h := (f.Mean + p.labour) / p.hours
		f.PerHour = &h
	}
	return f
}

// Mean returns the expected profit at an invoice total. Units: money in major units. Limits: after Find.
func (p *Problem) Mean(total float64) float64 { return p.mean(total) }

// MeanMultiple returns the mean price on the day of sale as a multiple of Resale, where it is finished. Limits: after Find.
func (p *Problem) MeanMultiple() float64 {
	if p.finished == 0 {
		return 1
	}
	return p.grown / p.finished
}

// Means is the expected value of what the waterfall shows, at an invoice total.
type Means struct {
	Resale, Growing, Got, Selling, Capital, Allowance float64 // Growing: what the days until the sale put to the price; Got: from ways out
	Labour, Hours, Days, Days90, Cash90               float64
}

// Means returns the expected figures at a bid. Limits: after Find.
func (p *Problem) Means(b money.Amount) Means {
	a := p.Currency.Major(p.Terms.Total(b, p.Currency).Total)
	today := p.Resale.Mean() * p.finished
	return Means{today, p.sold() - today, p.got, p.selling(), p.capital(a), p.Allowance, p.labour, p.hours, p.days, p.days90, p.cash90}
}
