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

// Quantiles returns the quantiles of a sample that need not be sorted, as [Quantile] does, without sorting all of it.
// Limits: at least one value; xs stays as it is.
func Quantiles(xs []float64, ps ...float64) []float64 {
	left := slices.Clone(xs)
	out := make([]float64, len(ps))
	for k, p := range ps {
		x := p*float64(len(left)) - 0.5
		i := min(max(int(x), 0), len(left)-1)
		settle(left, i)
		out[k] = left[i]
		if i < len(left)-1 && x > 0 {
			out[k] += (x - float64(i)) * (slices.Min(left[i+1:]) - left[i])
		}
	}
	return out
}

// settle brings the i-th smallest value to its place, the smaller ones before it and the larger ones behind.
// Source: Hoare 1961, selection, with the median of three as the dividing value.
func settle(xs []float64, i int) {
	lo, hi := 0, len(xs)-1
	for lo < hi {
		a, b, c := xs[lo], xs[(lo+hi)/2], xs[hi]
		pivot := max(min(a, b), min(max(a, b), c))
		l, r := lo, hi
		for l <= r {
			for xs[l] < pivot {
				l++
			}
			for xs[r] > pivot {
				r--
			}
			if l <= r {
				xs[l], xs[r] = xs[r], xs[l]
				l++
				r--
			}
		}
		switch {
		case i <= r:
			hi = r
		case i >= l:
			lo = l
		default:
			return
		}
	}
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
