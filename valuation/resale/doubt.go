package resale

import (
	"math"

	"walkline/valuation/prob"
)

// Doubt is what is not sure of the subject itself beside what the rows leave unsure.
type Doubt struct {
	Mileage *prob.Three // of the subject, in its unit, at or above its reading; nil: the reading is the mileage
	Off     prob.Three  // fraction that buyers take off beside the discount of the title brand
	Brand   prob.Three  // discount of the subject's title for its own cause
	General prob.Three  // discount of a branded title, which the fit counts
}

// None reports whether nothing is in doubt.
func (d Doubt) None() bool { return d.Mileage == nil && d.Off.Zero() && d.Brand == d.General }

// doubtNodes is how many values stand for a judgement.
const doubtNodes = 6

// factors returns what is left of the fitted price, each as likely: one less the discount beside, and the title's own discount against the
// general one, both at the same place of their judgements, since the fit has the general one's doubt already.
func (d Doubt) factors(branded bool) []float64 {
	left := []float64{1}
	if branded && d.Brand != d.General {
		left = left[:0]
		for i := range doubtNodes {
			u := (float64(i) + 0.5) / doubtNodes
			left = append(left, (1-d.Brand.Quantile(u))/(1-d.General.Quantile(u)))
		}
	}
	if d.Off.Zero() {
		return left
	}
	var all []float64
	for _, f := range left {
		for _, off := range d.Off.Nodes(doubtNodes) {
			all = append(all, f*(1-off))
		}
	}
	return all
}

// Doubted returns the distribution of the sale price with that doubt, and the standard deviation of the expected price, as
// [Model.LevelSD] has it, with
// what the doubt leaves unsure for every bidder alike. More miles than are shown never bring more than those that are shown.
// A guess is of this vehicle as it stands, and stays.
func (m Model) Doubted(s Subject, d Doubt) (prob.Table, float64) {
	plain, level := m.Distribution(), m.LevelSD()
	if m.blend.Empty() || d.None() {
		return plain, level
	}
	all := m.possible(s, d, plain)
	mean, square := 0.0, 0.0
	for _, t := range all {
		mean, square = mean+t.Mean(), square+t.Mean()*t.Mean()
	}
	n := float64(len(all))
	mean, square = mean/n, square/n
	level *= mean / plain.Mean()
	return prob.Blend(all, tailChances), math.Sqrt(level*level + max(0, square-mean*mean))
}

// AtDoubted is [Model.At] with what is not sure of that other subject, whose mileage lies at or above the reading in s: by its quantiles at
// those chances, from 0 to 1.
func (m Model) AtDoubted(s Subject, d Doubt, chances []float64) prob.Table {
	plain := m.At(s)
	if m.blend.Empty() || d.None() {
		return plain
	}
	return prob.Blend(m.possible(s, d, plain), chances)
}

// possible returns the distributions of the price for each mileage and each discount that the doubt leaves, each as likely; plain is that
// of the reading.
func (m Model) possible(s Subject, d Doubt, plain prob.Table) []prob.Table {
	at := []prob.Table{plain}
	if d.Mileage != nil {
		at = at[:0]
		for _, x := range d.Mileage.Nodes(doubtNodes) {
			more := s
			more.Mileage = &x
			at = append(at, lower(m.At(more), plain))
		}
	}
	var all []prob.Table
	for _, f := range d.factors(brandOf(brandWord(s)) != "") {
		for _, t := range at {
			all = append(all, t.Rescaled(f, 1))
		}
	}
	return all
}

// brandWord is the title brand that the subject is sold with.
func brandWord(s Subject) string {
	if s.Brand == "" {
		return "rebuilt"
	}
	return s.Brand
}

// lower returns the distribution whose quantiles are the lower of both.
func lower(a, b prob.Table) prob.Table {
	values := make([]float64, len(tailChances))
	for i, u := range tailChances {
		values[i] = min(a.Quantile(u), b.Quantile(u))
	}
	return prob.NewTable(tailChances, values)
}
