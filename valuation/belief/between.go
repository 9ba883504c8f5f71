package belief

import (
	"math"

	"walkline/valuation/prob"
)

// Between returns the standard deviation between groups whose own means y have variances v: the value at which the
// weighted squares about the common mean are what chance would make them, k - 3 for k groups, blended with the starter
// value, which counts for starts groups. With equal variances and no starter value this is the shrinkage of Efron and Morris [2].
func Between(y, v []float64, starter, starts float64) float64 {
	k := float64(len(y))
	if k < 4 {
		return starter
	}
	own := tau2(y, v)
	return math.Sqrt((starts*starter*starter + (k-3)*own) / (starts + k - 3))
}

// tau2 solves sum (y - mean)^2 / (tau2 + v) = k - 3, 0 when even tau2 = 0 gives less.
func tau2(y, v []float64) float64 {
	k := float64(len(y))
	lo, hi := 0.0, k*prob.Variance(y)+1e-12
	if squares(y, v, 0) <= k-3 {
		return 0
	}
	for range 80 {
		mid := (lo + hi) / 2
		if squares(y, v, mid) > k-3 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// squares returns the squares of y about their weighted mean, each over t + v.
func squares(y, v []float64, t float64) float64 {
	var weight, mean, sum float64
	for i := range y {
		w := 1 / (t + v[i])
		weight += w
		mean += w * y[i]
	}
	mean /= weight
	for i := range y {
		sum += (y[i] - mean) * (y[i] - mean) / (t + v[i])
	}
	return sum
}
