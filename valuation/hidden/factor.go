package hidden

import "walkline/valuation/prob"

// scoresOf returns the normal score of the chance below each node of a density, summed from the nearer end. The trapezoid sums
// are corrected by the slope (Euler and Maclaurin), which leaves an error of the fourth order of the step.
func scoresOf(density []float64) []float64 {
	n := len(density)
	slope := func(k int) float64 { return (density[min(k+1, n-1)] - density[max(k-1, 0)]) / 2 }
	below, above := make([]float64, n), make([]float64, n)
	for k := 1; k < n; k++ {
		below[k] = below[k-1] + (density[k-1]+density[k])/2
		above[n-1-k] = above[n-k] + (density[n-k]+density[n-1-k])/2
	}
	scores := make([]float64, n)
	for k := range scores {
		low, high := below[k]-slope(k)/12, above[k]+slope(k)/12
		if low < high {
			scores[k] = prob.NormQuantile(min(max(low, 0), .5))
		} else {
			scores[k] = -prob.NormQuantile(min(max(high, 0), .5))
		}
	}
	return scores
}

// Moves returns the normal scores of the factor's distribution after the answers at the nodes of the grid; nil where the answers tell
// nothing of it.
func (p Posterior) Moves() []float64 { return p.scores }

// Factor returns the scores of the factor after the answers that stand where those scores stood before them: F^-1(Phi(z)), F being
// its distribution after the answers. Without answers they are the same scores. Shape: one value a scenario.
// Source: cubic Hermite interpolation between the nodes, whose slopes are the ratio of the densities.
func (p Posterior) Factor(before []float64) []float64 {
	if p.scores == nil {
		return before
	}
	lo, hi := 0, factorNodes-1
	for lo < factorNodes-2 && p.scores[lo] < -mostScore {
		lo++
	}
	for hi > lo+1 && p.scores[hi] > mostScore {
		hi--
	}
	at, slope := p.scores[lo:hi+1], make([]float64, hi+1-lo)
	for k := range slope {
		slope[k] = prob.NormPDF(at[k]) * factorStep / p.weights[lo+k]
	}
	out := make([]float64, len(before))
	for i, z := range before {
		k := seek(at, z)
		out[i] = min(max(factorNode(lo+k)+within(z-at[k], at[k+1]-at[k], slope[k], slope[k+1]), -factorSpan), factorSpan)
	}
	return out
}

// within returns how far the factor has come from one node to the next, x on from its score, the scores being wide apart and the
// slopes a and b; beyond the outer nodes it runs straight on.
func within(x, wide, a, b float64) float64 {
	switch {
	case x < 0:
		return a * x
	case x > wide:
		return factorStep + b*(x-wide)
	}
	t := x / wide
	return wide*t*(1-t)*((1-t)*a-t*b) + factorStep*t*t*(3-2*t)
}

// mostScore is the normal score beyond which hardly a scenario lies.
const mostScore = 5.0

// seek returns the place k of rising scores with at[k] <= z < at[k+1], the outermost where z lies beyond them.
func seek(at []float64, z float64) int {
	lo, hi := 0, len(at)-1
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; at[mid] <= z {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
