package hedonic

import (
	"math"

	"walkline/valuation/prob"
)

// Ageing returns by how much the logarithm of a vehicle's price moves as it grows a year older with nothing else changed, and how
// unsure that is.
func (b Blend) Ageing(t Traits) Effect {
	older := t
	older.Age++
	var mean, second float64
	for _, mb := range b.members {
		now, _ := mb.design.features(t)
		then, _ := mb.design.features(older)
		change := less(then, now)
		m := prob.Dot(change, mb.fit.Coef)
		mean += mb.share * m
		second += mb.share * (m*m + mb.fit.Doubt.Variance(change))
	}
	return Effect{Mean: mean, SD: math.Sqrt(math.Max(0, second-mean*mean))}
}

// less returns a - b, what is alike in both left out.
func less(a, b []prob.Entry) []prob.Entry {
	at := map[int]float64{}
	for _, e := range b {
		at[e.Term] -= e.X
	}
	var out []prob.Entry
	for _, e := range a {
		if x := e.X + at[e.Term]; x != 0 {
			out = append(out, prob.Entry{Term: e.Term, X: x})
		}
		delete(at, e.Term)
	}
	for _, e := range b {
		if x, left := at[e.Term]; left {
			out = append(out, prob.Entry{Term: e.Term, X: x})
			delete(at, e.Term)
		}
	}
	return out
}
