package bid

import (
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// mostHammers is how many legal bids are looked at one by one; beyond, so many evenly likely hammer prices stand for all.
const mostHammers = 4096

// Law is the distribution of where the hammer falls before it is raised to a legal bid: the chance of at most x major units, and the
// price with chance u of falling at or below it. Quantile(0) is the least price.
type Law interface {
	CDF(x float64) float64
	Quantile(u float64) float64
}

// Win returns the chance that the hammer falls at or below a walk-away bid, and the mean profit of bidding up to it, nothing where it
// is not won. The hammer falls at the guess, up to the next legal bid. Units: the guess and the gain in major units.
// Limits: after Find; the walk-away bid is legal.
func Win(p *Problem, guess Law, walk money.Amount) (chance, gain float64) {
	major := p.Currency.Major
	chance = guess.CDF(major(walk))
	if chance == 0 {
		return 0, 0
	}
	profit := func(b money.Amount) float64 { return p.mean(major(p.Terms.Total(b, p.Currency).Total)) }
	first := invoice.After(p.Steps, p.Currency.FromMajor(guess.Quantile(0))-1)
	_, below := invoice.Stand(p.Steps, first)
	if _, upTo := invoice.Stand(p.Steps, walk); upTo-below < mostHammers {
		before := 0.0
		for b := first; b <= walk; b = invoice.Next(p.Steps, b) {
			at := guess.CDF(major(b))
			gain += (at - before) * profit(b)
			before = at
		}
		return chance, gain
	}
	for i := range mostHammers {
		at := guess.Quantile(chance * (float64(i) + 0.5) / mostHammers)
		gain += chance / mostHammers * profit(min(walk, invoice.After(p.Steps, p.Currency.FromMajor(at)-1)))
	}
	return chance, gain
}
