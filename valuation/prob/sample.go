package prob

import (
	"math"
	"slices"
)

// Mean returns the mean of xs, 0 for none.
func Mean(xs []float64) float64 {
	if len(xs) == 0 {
		return 0
	}
	var s float64
	for _, x := range xs {
		s += x
	}
	return s / float64(len(xs))
}

// Variance returns the variance of xs about its mean, divided by n.
func Variance(xs []float64) float64 {
	m := Mean(xs)
	var s float64
	for _, x := range xs {
		s += (x - m) * (x - m)
	}
	return s / math.Max(1, float64(len(xs)))
}

// Quantile returns the p-quantile of a sorted sample, linear between the order statistics at (i + 1/2) / n
// (Hyndman and Fan 1996, type 5, from memory). Limits: at least one value.
func Quantile(sorted []float64, p float64) float64 {
	x := p*float64(len(sorted)) - 0.5
	if x <= 0 {
		return sorted[0]
	}
	i := int(x)
	if i >= len(sorted)-1 {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (x-float64(i))*(sorted[i+1]-sorted[i])
}

// Sorted returns a sorted copy of xs.
func Sorted(xs []float64) []float64 {
	ys := slices.Clone(xs)
	slices.Sort(ys)
	return ys
}

// WorstMean returns the mean of the lowest fraction a of a sorted sample, the last value counted in part: minus the
// expected shortfall. Limits: a in (0, 1], at least one value. Source: Acerbi and Tasche 2002, definition 2.6.
func WorstMean(sorted []float64, a float64) float64 {
	k := a * float64(len(sorted))
	whole := int(k)
	var s float64
	for _, x := range sorted[:whole] {
		s += x
	}
	if whole < len(sorted) {
		s += (k - float64(whole)) * sorted[whole]
	}
	return s / k
}
