package hindsight

import (
	"walkline/valuation/learn"
	"walkline/valuation/money"
	"walkline/valuation/score"
)

// Restated returns the prediction at the hammer price that was paid: fees as the sale's terms charge them, capital on the
// invoice over the foretold days, the profit moved by what is paid less or more. The prediction itself never changes. Where
// the price or the terms are not known it stays at the bid that it was made for.
func Restated(p *learn.Prediction, hammer *money.Amount, currency string) *learn.Prediction {
	cur, known := money.Lookup(currency)
	if !known || hammer == nil || p.Invoice == nil || *hammer == p.At {
		return p
	}
	q := *p
	growth := p.Terms.CapitalRate * p.Days.Mean / 365
	before, after := p.At+p.Money.Fees, p.Invoice.Total(*hammer, cur).Total
	q.At, q.Money.Fees = *hammer, after-*hammer
	q.Money.Capital = cur.FromMajor(cur.Major(after) * growth)
	saved := cur.Major(before-after) * (1 + growth)
	q.Profit = learn.Figure{Mean: p.Profit.Mean + saved}
	for _, x := range p.Profit.Q {
		q.Profit.Q = append(q.Profit.Q, x+saved)
	}
	if q.Profit.Known() {
		q.LossChance = score.CDF(q.Profit.Q, 0)
	}
	return &q
}
