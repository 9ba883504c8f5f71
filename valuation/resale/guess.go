package resale

import (
	"math"

	"walkline/valuation/prob"
)

// guessSpan is how many normal scores the guess's curve reaches to either side: beyond lies 1 chance in 741.
const guessSpan = 3.0

// guessTable returns the distribution through a guess's three points, its 10th, 50th and 90th percentiles: the log price
// is a smooth rising curve of the normal score, straight beyond the outer points and cut at guessSpan.
func guessTable(g prob.Three) prob.Table {
	if g.Sure() {
		return prob.CertainTable(g.Likely)
	}
	z90 := prob.NormQuantile(0.9)
	y := []float64{0, logPrice(g.Low), logPrice(g.Likely), logPrice(g.High), 0}
	x := []float64{-guessSpan, -z90, 0, z90, guessSpan}
	y[0] = y[1] - (guessSpan-z90)*(y[2]-y[1])/z90
	y[4] = y[3] + (guessSpan-z90)*(y[3]-y[2])/z90
	curve := newRising(x, y)
	values := make([]float64, len(tailChances))
	last := 0.0
	for i, u := range tailChances {
		z := math.Min(math.Max(prob.NormQuantile(u), -guessSpan), guessSpan)
		if i == 0 {
			z = -guessSpan
		}
		if i == len(tailChances)-1 {
			z = guessSpan
		}
		values[i] = math.Max(last, math.Exp(curve.at(z)))
		last = values[i]
	}
	return prob.NewTable(tailChances, values)
}

func logPrice(x float64) float64 { return math.Log(math.Max(x, math.Exp(leastLog))) }

// rising is a smooth curve that never falls, through points that don't (Fritsch and Carlson 1980).
type rising struct{ x, y, slope []float64 }

func newRising(x, y []float64) rising {
	n := len(x)
	r := rising{x, y, make([]float64, n)}
	chord := func(i int) float64 { return (y[i+1] - y[i]) / (x[i+1] - x[i]) }
	r.slope[0], r.slope[n-1] = chord(0), chord(n-2)
	for i := 1; i < n-1; i++ {
		a, b := chord(i-1), chord(i)
		if a > 0 && b > 0 {
			wa, wb := x[i+1]-x[i], x[i]-x[i-1]
			r.slope[i] = 3 * (wa + wb) / ((2*wa+wb)/a + (wa+2*wb)/b)
		}
	}
	return r
}

func (r rising) at(x float64) float64 {
	i := 0
	for i < len(r.x)-2 && x > r.x[i+1] {
		i++
	}
	h := r.x[i+1] - r.x[i]
	t := (x - r.x[i]) / h
	return r.y[i]*(1+2*t)*(1-t)*(1-t) + r.slope[i]*h*t*(1-t)*(1-t) + r.y[i+1]*t*t*(3-2*t) + r.slope[i+1]*h*t*t*(t-1)
}
