package resale

import (
	"math"

	"walkline/valuation/hedonic"
)

// trendYears is how many years of prices it takes until half of a drift that they show is taken for a trend that goes on. Starter
// value, from memory: replace it with yours.
const trendYears = 4

// Ageing returns the logarithm by which the price moves a year while the vehicle is kept, and how unsure that is: it grows older,
// and the market goes on as the dated rows show, shrunk towards standing still. Without comparables nothing is known of it.
// Units: 0.05 is about 5 % a year.
func (m Model) Ageing() (e Effect, known bool) {
	if m.err != nil || m.blend.Empty() {
		return Effect{}, false
	}
	e = m.blend.Ageing(m.subject)
	e.Mean += m.trend()
	return e, true
}

// Bare reports whether the guess alone carries the price.
func (m Model) Bare() bool { return m.blend.Empty() }

// trend returns the log drift a year that the oldest row and the subject lie apart by, shrunk.
func (m Model) trend() float64 {
	oldest, back := -1, 0.0
	for i, r := range m.rows[:m.used] {
		if r.traits.Back > back {
			oldest, back = i, r.traits.Back
		}
	}
	if oldest < 0 {
		return 0
	}
	return m.blend.Changes(oldest)[hedonic.CauseDate] / (back + trendYears)
}

// Ahead returns by how many days the price that is fitted lies behind the valuation, in that of a subject whose month of sale is
// stated; 0 elsewhere.
func (m Model) Ahead() float64 {
	if m.blend.Empty() {
		return 0
	}
	return math.Max(0, m.cal.sale-m.cal.today) * daysAYear
}

const daysAYear = 365.25
