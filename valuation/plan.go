package valuation

import (
	"math"
	"slices"

	"walkline/valuation/hidden"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// PlannedLine is one repair line as it will be valued, and whether it comes from the catalogue untouched.
type PlannedLine struct {
	repair.Line
	Catalogue bool
}

// Plan returns the repair lines of the case: the user's own, then those of the catalogue that the survey calls for.
func Plan(c Case, k Knowledge) []PlannedLine {
	w := work{c: c, k: k}
	w.risks = w.hurt()
	w.chances = hidden.After(w.risks, c.Findings, c.loading()).Chances
	var out []PlannedLine
	for _, l := range w.plan() {
		own := l.ID == repair.DonorLine || slices.ContainsFunc(c.Repair.Lines, func(o repair.Line) bool { return o.ID == l.ID })
		out = append(out, PlannedLine{l, !own})
	}
	return out
}

// Risks returns the hidden risks of the case with their chances after the findings; what they cost is not worked out.
func Risks(c Case, k Knowledge) []RiskFigure {
	w := work{c: c, k: k}
	w.risks = w.hurt()
	out := make([]RiskFigure, len(w.risks))
	for i, chance := range hidden.After(w.risks, c.Findings, c.loading()).Chances {
		r := w.risks[i]
		out[i] = RiskFigure{ID: r.ID, Name: r.Name, Chance: chance, Why: r.Why, Caution: r.Caution}
	}
	return out
}

// BandPoint is the fitted price at one mileage or model year: its 10th, 50th and 90th percentile in major units.
type BandPoint struct {
	X, P10, P50, P90 float64
}

// bandPoints is how many points a band over mileage has; bandChances are those of its quantiles, between the ends.
const bandPoints = 25

var bandChances = []float64{0, .1, .5, .9, 1}

func (m *Memory) bands(c Case, k Knowledge) (byMileage, byYear []BandPoint) {
	if len(c.Resale.Rows) == 0 {
		return nil, nil
	}
	cur, _ := money.Lookup(c.Currency)
	s := c.subject()
	fit := m.market(c.Resale.Rows, s, c.beliefs(cur), k.Prior).model
	if fit.Err() != nil {
		return nil, nil
	}
	miles, years := c.reach(s)
	known := func(x float64, reading Case, at resale.Subject) BandPoint {
		fitted := market{table: fit.AtDoubted(at, reading.doubt(), bandChances)}
		return point(x, fitted.factored(c.learned().Resale).dented(c.Survey.HailOff()).table)
	}
	if s.Mileage != nil && miles[1] > miles[0] {
		for i := range bandPoints {
			x := miles[0] + (miles[1]-miles[0])*float64(i)/(bandPoints-1)
			at, reading := s, c
			shown := int(math.Round(x))
			at.Mileage, reading.Lot.Odometer = &x, &shown
			byMileage = append(byMileage, known(x, reading, at))
		}
	}
	for y := years[0]; y <= years[1]; y++ {
		at := s
		at.ModelYear = int(y)
		byYear = append(byYear, known(y, c, at))
	}
	return byMileage, byYear
}

func point(x float64, t prob.Table) BandPoint {
	return BandPoint{x, t.Quantile(.1), t.Quantile(.5), t.Quantile(.9)}
}

// reach returns the least and greatest mileage, in the lot's unit, and model year of the subject and the rows that count.
func (c Case) reach(s resale.Subject) (miles, years [2]float64) {
	miles, years = [2]float64{math.Inf(1), math.Inf(-1)}, [2]float64{float64(s.ModelYear), float64(s.ModelYear)}
	widen := func(r *[2]float64, x float64) { r[0], r[1] = min(r[0], x), max(r[1], x) }
	if s.Mileage != nil {
		widen(&miles, *s.Mileage)
	}
	for _, row := range c.Resale.Rows {
		if !row.Usable() {
			continue
		}
		if x, ok := row.MileageIn(s.Unit); ok {
			widen(&miles, x)
		}
		widen(&years, float64(row.ModelYear))
	}
	return miles, years
}
