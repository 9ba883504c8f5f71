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

func mid(xs []float64) float64 {
	s := append([]float64(nil), xs...)
	sort.Float64s(s)
	if len(s) == 0 {
		return math.NaN()
	}
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}
