package resale

import (
	"math"

	"walkline/valuation/hedonic"
	"walkline/valuation/money"
)

// Price returns the figures of the answer. Where Err isn't nil they are all zero and mean nothing.
func (m Model) Price() Price {
	p := Price{RowsUsed: m.used, Adjusted: m.adjusted(), Warnings: append([]Warning{}, m.Warnings()...)}
	if m.err != nil {
		return p
	}
	t := m.Distribution()
	p.Mean, p.P10, p.P50, p.P90 = t.Mean(), t.Quantile(0.1), t.Quantile(0.5), t.Quantile(0.9)
	return p
}

// adjusted returns every row of the table, in the table's order.
func (m Model) adjusted() []Adjusted {
	out := make([]Adjusted, len(m.rows))
	middle := math.Exp(m.predict(m.subject).At)
	for i, r := range m.rows {
		a := Adjusted{Row: r.index, ID: r.row.ID, Price: r.row.Price, Adjusted: r.row.Price, Used: r.reason == "", Why: r.reason}
		if i < m.used {
			m.adjust(&a, i)
			a.Influence = m.blend.Pull(i) * middle
		}
		out[r.index] = a
	}
	return out
}

// adjust fills in the adjustments of used row i. The whole change on the log scale is the sum over the causes; the money
// goes to the causes in the same shares, which the logarithmic mean of both prices makes add up (Montgomery, Vartia).
func (m Model) adjust(a *Adjusted, i int) {
	logs := m.blend.Changes(i)
	a.Weight = m.blend.Weight(i)
	total := 0.0
	for _, l := range logs {
		total += l
	}
	price := float64(a.Price)
	a.Adjusted = money.Amount(math.Round(price * math.Exp(total)))
	mean := price
	if math.Abs(total) > 1e-9 {
		mean = price * math.Expm1(total) / total
	}
	parts := a.changes()
	largest, sum := hedonic.CauseOther, money.Amount(0)
	for c := hedonic.CauseAsked; c < hedonic.Causes; c++ {
		*parts[c] = money.Amount(math.Round(mean * logs[c]))
		sum += *parts[c]
		if math.Abs(logs[c]) > math.Abs(logs[largest]) {
			largest = c
		}
	}
	*parts[largest] += a.Adjusted - a.Price - sum
}
