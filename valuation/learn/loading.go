package learn

import (
	"maps"
	"math"
	"slices"

	"walkline/valuation/belief"
)

// scores standardises a fitted family's ratios, build by build.
func (f *fitted) scores() map[int64]belief.Scores {
	out := map[int64]belief.Scores{}
	sigma := math.Sqrt(f.post.Sigma2())
	for _, a := range f.facts {
		s := belief.Scores{Weight: a.weight}
		for _, o := range a.ratios {
			if o.key == "" {
				continue
			}
			z := (o.log - belief.Dot(f.row(o.key), f.post.Mean)) / sigma
			s.Z = append(s.Z, math.Max(-outlying, math.Min(z, outlying)))
			more := math.Sqrt(math.Max(0, sigma*sigma-o.own))
			s.Lean = append(s.Lean, belief.Lean{Sum: o.pull + more, Squares: o.squares + more*more})
		}
		out[a.build.ID] = s
	}
	return out
}

// together joins the scores of several families build by build, and leaves out builds with fewer than two.
func together(families ...map[int64]belief.Scores) []belief.Scores {
	joined := map[int64]belief.Scores{}
	for _, f := range families {
		for id, s := range f {
			j := joined[id]
			joined[id] = belief.Scores{Weight: s.Weight, Z: append(j.Z, s.Z...), Lean: append(j.Lean, s.Lean...)}
		}
	}
	var out []belief.Scores
	for _, id := range slices.Sorted(maps.Keys(joined)) {
		if len(joined[id].Z) > 1 {
			out = append(out, joined[id])
		}
	}
	for i := range out {
		out[i].Weight *= float64(len(out)) / float64(len(out)+loadingBuys)
	}
	return out
}

// loadingBuys is how many builds must speak of the loading before half of what they say is believed, so that no single bad diary decides
// how far costs go together. Starter value, ours.
const loadingBuys = 5

// loadingCorrelation returns the correlation of two ratios of one build that pooling counts with: that of two quantities
// of several items each. Starter value, from memory: three items a quantity.
func loadingCorrelation(loading float64) float64 {
	const items = 3
	square := loading * loading
	return square * items / (1 + square*(items-1))
}

// loadingValue returns a belief about the loading with its 80 % range.
func loadingValue(b belief.Loading) Value {
	return Value{At: b.Mean(), Low: b.Quantile(0.1), High: b.Quantile(0.9)}
}
