package learn

import (
	"math"

	"walkline/valuation/belief"
)

// outlying is how many standard deviations a build's ratios may lie from what the others say, on average, before the build counts less.
// Beyond it a build counts by the square, so that what it moves shrinks again: a bad diary teaches little, whatever is in it. Cf. Huber
// and Ronchetti, Robust Statistics, 2nd ed., 4.8 (redescending estimates), from memory. Starter value, ours.
const outlying = 2.0

// steadyWeight returns how much a build counts whose ratios lie so far from what is expected, in squared standard deviations, on average.
func steadyWeight(square float64) float64 {
	if square <= outlying*outlying {
		return 1
	}
	return outlying * outlying / square
}

// steadied is how often the weights are worked out anew. Three times settle them to a hundredth.
const steadied = 3

// steady lowers the weights of builds whose ratios lie far from the fit, and fits again.
func (f *fitted) steady(rho float64) {
	full := make([]float64, len(f.facts))
	for i, a := range f.facts {
		full[i] = a.weight
	}
	for range steadied {
		for i := range f.facts {
			sum, n := 0.0, 0.0
			for _, o := range f.facts[i].ratios {
				far := (o.log - belief.Dot(f.row(o.key), f.post.Mean)) / f.sigma / o.scale(f.sigma)
				sum, n = sum+far*far, n+1
			}
			f.facts[i].weight = full[i] * steadyWeight(sum/math.Max(n, 1))
		}
		f.pool(rho)
	}
}

// scale returns how many of the family's standard deviations a ratio scatters by: 1, or more where its own forecast says more, as that of
// bills that are held against work which may not have been needed.
func (o observed) scale(sigma float64) float64 { return math.Max(1, math.Sqrt(o.own)/sigma) }

// steadySales returns the sales with less weight on those that lie far from what the others say.
func steadySales(all []saleFact) []saleFact {
	out := append([]saleFact(nil), all...)
	for range steadied {
		post := fitSales(out).post
		for i, f := range all {
			far := (f.log - post.Mean[0] - f.brand*post.Mean[1]) / f.sd
			out[i].weight = f.weight * steadyWeight(far*far)
		}
	}
	return out
}
