package main

import (
	"fmt"
	"math"
	"sort"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// score collects what a method said and what the prices were.
type score struct {
	said, came []float64
	widths     []float64 // of the 80 % interval, over the median; none for a method that gives no interval
	missed     []float64 // interval scores
	inside     int
}

func (v *score) point(said, came float64) {
	v.said, v.came = append(v.said, said), append(v.came, came)
}

func (v *score) take(p resale.Price, came float64) {
	v.point(p.P50, came)
	v.widths = append(v.widths, (p.P90-p.P10)/p.P50)
	if p.P10 <= came && came <= p.P90 {
		v.inside++
	}
	low, high, at := math.Log(p.P10), math.Log(p.P90), math.Log(came)
	v.missed = append(v.missed, high-low+10*max(0, low-at, at-high))
}

// errors returns the absolute errors as fractions of the prices.
func (v *score) errors() []float64 {
	out := make([]float64, len(v.said))
	for i, s := range v.said {
		out[i] = math.Abs(s/v.came[i] - 1)
	}
	return out
}

// String returns the median and mean absolute percentage error, COD, PRD, and of intervals the coverage and median width.
func (v *score) String() string {
	errs := v.errors()
	s, err := prob.NewRatioStudy(v.said, v.came)
	if err != nil {
		return err.Error()
	}
	text := fmt.Sprintf("%7.2f %7.2f %6.1f %6.3f", 100*mid(errs), 100*prob.Mean(errs), s.COD, s.PRD)
	if len(v.widths) > 0 {
		text += fmt.Sprintf(" %6.1f%% %5.1f%%", 100*float64(v.inside)/float64(len(errs)), 100*mid(v.widths))
	}
	return text
}

// against returns by how much the mean absolute percentage error lies above that of another score of the same tasks, and the standard
// error of that difference, task by task.
func (v *score) against(other *score) string {
	if v == other {
		return ""
	}
	a, b := v.errors(), other.errors()
	for i := range a {
		a[i] -= b[i]
	}
	return fmt.Sprintf("  mean %+.2f (standard error %.2f)", 100*prob.Mean(a), 100*deviation(a)/math.Sqrt(float64(len(a))))
}

// interval returns the mean interval score of the 80 % interval on the log scale: its width, and ten times by how far a price lies
// outside.
//
// Source: Gneiting and Raftery, JASA 102 (2007) 359-378, the negatively oriented score at a chance of 0.2 (from memory).
func (v *score) interval() float64 { return prob.Mean(v.missed) }

func mid(xs []float64) float64 {
	s := append([]float64(nil), xs...)
	sort.Float64s(s)
	if len(s) == 0 {
		return math.NaN()
	}
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}
