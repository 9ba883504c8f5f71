package resale

import (
	"math"
	"sort"

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
	out := make([]Adjusted, 0, len(m.rows))
	for i, r := range m.rows {
		a := Adjusted{Row: r.index, ID: r.row.ID, Price: r.row.Price, Adjusted: r.row.Price, Used: r.reason == "", Why: r.reason}
		if i < m.used {
			m.adjust(&a, i)
		}
		out = append(out, a)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Row < out[j].Row })
	return out
}

// adjust fills in the adjustments of used row i. The whole change on the log scale is the sum over the causes; the money
// goes to the causes in the same shares, which the logarithmic mean of both prices makes add up (Montgomery, Vartia).
func (m Model) adjust(a *Adjusted, i int) {
	var logs [causes]float64
	for _, mb := range m.members {
		mb.changes(i, &logs)
		a.Weight += mb.share * mb.table.Like[i] * mb.fit.Robust[i] * mb.table.DF / (mb.table.DF + 1)
		a.Influence += mb.share * mb.pull(i)
	}
	a.Influence *= math.Exp(m.predict(m.subject).at)
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
	largest, sum := causeOther, money.Amount(0)
	for c := causeAsked; c < causes; c++ {
		*parts[c] = money.Amount(math.Round(mean * logs[c]))
		sum += *parts[c]
		if math.Abs(logs[c]) > math.Abs(logs[largest]) {
			largest = c
		}
	}
	*parts[largest] += a.Adjusted - a.Price - sum
}

// changes adds the member's share of the log changes from row i to the subject.
func (mb member) changes(i int, logs *[causes]float64) {
	for _, e := range mb.table.Target {
		logs[mb.design.terms[e.Term].cause] += mb.share * e.X * mb.fit.Coef[e.Term]
	}
	for _, e := range mb.table.Rows[i] {
		logs[mb.design.terms[e.Term].cause] -= mb.share * e.X * mb.fit.Coef[e.Term]
	}
}

// pull returns by how much row i moves the subject's log price: the answer with it less the answer without it.
func (mb member) pull(i int) float64 { return mb.slopeOn(i) * mb.fit.Left[i] }

// slopeOn returns by how much the subject's log price moves per unit of the log price of row i.
func (mb member) slopeOn(i int) float64 {
	p := len(mb.table.Terms)
	cross := 0.0
	for _, e := range mb.table.Target {
		at := mb.fit.Cov[e.Term*p:]
		for _, f := range mb.table.Rows[i] {
			cross += e.X * f.X * at[f.Term]
		}
	}
	return cross * mb.fit.Weight[i]
}
