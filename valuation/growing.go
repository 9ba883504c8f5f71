package valuation

import (
	"math"
	"time"

	"walkline/valuation/prob"
	"walkline/valuation/scenario"
)

// yearDays is how many days a yearly change is spread over.
const yearDays = 365

// growing is how the price moves from the day for which it is estimated to the day of sale.
type growing struct {
	season []float64                   // by month; empty: none
	from   time.Time                   // the day of purchase
	valued time.Month                  // of the estimate
	ahead  float64                     // days after the purchase for which the price is estimated
	logs   func(score float64) float64 // log change a year at a normal score; nil: the price stays
	mean   float64                     // log of the mean change a year
}

// growing returns how the price moves: by the case's own judgement, or else as the comparables tell.
func (w *work) growing() growing {
	g := growing{season: w.c.Resale.Season, ahead: w.market.model.Ahead()}
	g.from, _ = time.Parse(time.DateOnly, string(w.c.saleDay()))
	valued, _ := time.Parse(time.DateOnly, string(w.c.ValuedOn))
	g.valued = valued.Month()
	if y := w.c.Resale.YearlyChange; y != nil {
		if y.Zero() {
			return g
		}
		table := y.Score()
		g.logs, g.mean = func(z float64) float64 { return math.Log1p(table.At(z)) }, math.Log1p(y.Mean())
		return g
	}
	if e, known := w.market.model.Ageing(); known {
		g.logs, g.mean = func(z float64) float64 { return e.Mean + e.SD*z }, e.Mean+e.SD*e.SD/2
	}
	return g
}

// multiple returns the mean price so many days after the purchase, as a multiple of the estimate.
func (g growing) multiple(days float64) float64 {
	return math.Exp(g.mean*(days-g.ahead)/yearDays) * g.inSeason(days)
}

// inSeason returns what the month of sale puts to the price, against the month of the estimate.
func (g growing) inSeason(days float64) float64 {
	if len(g.season) == 0 {
		return 1
	}
	sold := g.from.AddDate(0, 0, int(days)).Month()
	return g.season[sold-1] / g.season[g.valued-1]
}

// still reports whether the price stays what it is.
func (g growing) still() bool { return g.logs == nil && len(g.season) == 0 }

// grown returns the price on each scenario's day of sale as a multiple of the estimate; nil where it stays. Random: the column
// "resale/yearly", which leans on nothing.
func (w *work) grown(m *Memory, l scenario.Lot) []float64 {
	g := w.grows
	if g.still() {
		return nil
	}
	out := make([]float64, len(w.played.Days))
	var scores []float64
	if g.logs != nil {
		scores = m.scenes.Score("resale/yearly", l)
	}
	for i, days := range w.played.Days {
		out[i] = g.inSeason(days)
		if scores != nil {
			out[i] *= math.Exp(g.logs(scores[i]) * (days - g.ahead) / yearDays)
		}
	}
	return out
}

// drawn returns a judgement in every scenario, from the column of that name; nil where it is nothing.
func (w *work) drawn(m *Memory, l scenario.Lot, name string, t prob.Three) []float64 {
	if t.Zero() {
		return nil
	}
	out := make([]float64, l.N)
	if t.Sure() {
		for i := range out {
			out[i] = t.Low
		}
		return out
	}
	table := t.Score()
	for i, z := range m.scenes.Score(name, l) {
		out[i] = table.At(z)
	}
	return out
}
