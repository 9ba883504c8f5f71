package scenario

import (
	"math"
	"sort"

	"walkline/valuation/prob"
)

// strata is the number of slices of the common factor within which a column's mean is taken.
const strata = 64

// slices sorts the scenarios by the common factor: the slice of each, and how many lie in each.
type slices struct {
	of    []int
	count []float64
}

func (o Outcome) slices() slices {
	n := len(o.Factor)
	s := slices{make([]int, n), make([]float64, min(strata, max(1, n/16)))}
	for i, z := range o.Factor {
		k := min(len(s.count)-1, int(prob.NormCDF(z)*float64(len(s.count))))
		s.of[i] = k
		s.count[k]++
	}
	return s
}

// means returns the mean of xs in each slice.
func (s slices) means(xs []float64) []float64 {
	m := make([]float64, len(s.count))
	for i, x := range xs {
		m[s.of[i]] += x
	}
	for k := range m {
		m[k] /= math.Max(1, s.count[k])
	}
	return m
}

// SharedVariance returns the variance of the expected cost given the common factor, in money squared: what every bidder
// who misjudges this lot misjudges together. The part that chance alone puts between slices is taken off.
func (o Outcome) SharedVariance() float64 {
	s := o.slices()
	means := s.means(o.Cost)
	var within float64
	for i, x := range o.Cost {
		d := x - means[s.of[i]]
		within += d * d
	}
	n, k := float64(len(o.Cost)), float64(len(means))
	return math.Max(0, prob.Variance(means)-within/math.Max(1, n-k)*k/n)
}

// Share is one cause's part of the variance of the profit, 0..1; negative where it works against the rest.
type Share struct {
	Name string
	Part float64
}

// Shares splits the variance of the profit by cause, largest first: the resale price (of the given variance, in money
// squared, independent of the rest), the common factor, each line and risk beyond it, freight, storage and time. The
// shares add up to 1. capital is the money that a day costs beside the holding cost. Source: covariance decomposition of a sum.
func (o Outcome) Shares(resale, capital float64) []Share {
	total := make([]float64, len(o.Cost))
	for i, x := range o.Cost {
		total[i] = x + capital*o.Days[i]
	}
	all := resale + prob.Variance(total)
	if all <= 0 {
		return nil
	}
	w := splitter{o.slices(), total, prob.Mean(total), all, 0}
	shares := []Share{{"Resale price", resale / all}}
	for _, p := range append(append([]Part(nil), o.Lines...), o.Risks...) {
		shares = append(shares, Share{p.Name, w.own(p.Cost)})
	}
	shares = append(shares, Share{"Freight", w.own(o.Freight)}, Share{"Storage", w.own(o.Storage)})
	days := make([]float64, len(o.Days))
	for i := range days {
		days[i] = o.Holding[i] + capital*o.Days[i]
	}
	shares = append(shares, Share{"Time", w.own(days)})
	shares = append(shares, Share{"Worse than it looks", w.factor})
	sort.SliceStable(shares, func(a, b int) bool { return shares[a].Part > shares[b].Part })
	return shares
}

// splitter splits columns into what follows the common factor and what does not.
type splitter struct {
	slices
	total  []float64
	mean   float64
	all    float64
	factor float64 // share gathered for the common factor
}

// own returns the share of a column beyond the common factor, and books the rest to it.
func (w *splitter) own(xs []float64) float64 {
	means := w.means(xs)
	var own, shared float64
	m := prob.Mean(xs)
	for i, x := range xs {
		d := w.total[i] - w.mean
		own += (x - means[w.of[i]]) * d
		shared += (means[w.of[i]] - m) * d
	}
	n := float64(len(xs)) * w.all
	w.factor += shared / n
	return own / n
}
