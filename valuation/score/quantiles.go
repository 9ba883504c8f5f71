package score

import (
	"slices"
	"sync"

	"walkline/valuation/prob"
)

// Chances are the chances at which a distribution keeps its quantiles.
var Chances = []float64{0.01, 0.025, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5,
	0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 0.975, 0.99}

// Quantile returns the value below which the distribution lies with chance u. Shape: q holds its quantiles at [Chances].
// Limits: beyond the outermost chance, the outermost quantile.
func Quantile(q []float64, u float64) float64 {
	i, found := slices.BinarySearch(Chances, u)
	if found || i == 0 {
		return q[i]
	}
	if i == len(Chances) {
		return q[i-1]
	}
	z := scores()
	return q[i-1] + (q[i]-q[i-1])*(prob.NormQuantile(u)-z[i-1])/(z[i]-z[i-1])
}

// CDF returns the chance of a value at or below x: between two quantiles along the normal score, beyond the outermost on
// the line through the last two that differ.
func CDF(q []float64, x float64) float64 {
	z := scores()
	last := len(q) - 1
	i := min(max(1, firstAt(q, x)), last)
	for i < last && q[i] == q[i-1] {
		i++
	}
	for i > 1 && q[i] == q[i-1] {
		i--
	}
	if q[i] == q[i-1] {
		return 0.5
	}
	return prob.NormCDF(z[i-1] + (z[i]-z[i-1])*(x-q[i-1])/(q[i]-q[i-1]))
}

// firstAt returns the first place whose value is at least x.
func firstAt(q []float64, x float64) int {
	i, _ := slices.BinarySearch(q, x)
	return i
}

// scores are the normal scores of [Chances]: a constant table, made at its first use.
var scores = sync.OnceValue(func() []float64 {
	z := make([]float64, len(Chances))
	for i, u := range Chances {
		z[i] = prob.NormQuantile(u)
	}
	return z
})

// rungs is the number of even chances over which a CRPS is summed.
const rungs = 400

// rung is one even chance: between which two quantiles it lies, and how far along the normal score.
type rung struct {
	chance, along float64
	at            int
}

// ladder holds the rungs: a constant table, made at its first use.
var ladder = sync.OnceValue(func() []rung {
	z := scores()
	out := make([]rung, rungs)
	for k := range out {
		u := (float64(k) + 0.5) / rungs
		i := min(max(1, firstAt(Chances, u)), len(Chances)-1)
		out[k] = rung{u, (prob.NormQuantile(u) - z[i-1]) / (z[i] - z[i-1]), i}
	}
	return out
})

// CRPS returns the continuous ranked probability score of x, in its unit: twice the mean over all chances of the quantile
// score. Source: [1].
func CRPS(q []float64, x float64) float64 {
	sum := 0.0
	for _, r := range ladder() {
		at := q[r.at-1] + r.along*(q[r.at]-q[r.at-1])
		if x <= at {
			sum += (1 - r.chance) * (at - x)
		} else {
			sum += r.chance * (x - at)
		}
	}
	return 2 * sum / rungs
}

// Naive returns the mean CRPS of foretelling each value by all the others, whatever the lot.
func Naive(xs []float64) float64 {
	s := prob.Sorted(xs)
	n := float64(len(s))
	away := make([]float64, len(s)) // sum of distances to all others
	total, below := 0.0, 0.0
	for _, x := range s {
		total += x
	}
	pairs := 0.0
	for i, x := range s {
		above := total - below - x
		away[i] = float64(i)*x - below + above - (n-1-float64(i))*x
		below += x
		pairs += away[i]
	}
	score := 0.0
	for i := range s {
		score += away[i]/(n-1) - (pairs-2*away[i])/(2*(n-1)*(n-1))
	}
	return score / n
}
