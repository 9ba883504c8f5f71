package scenario

import (
	"math"
	"sort"

	"walkline/valuation/prob"
)

// strataCount is the number of slices of the common factor within which a column's mean is taken.
const strataCount = 64

// strata sorts the scenarios by the common factor: the slice of each, and how many lie in each.
type strata struct {
	of    []int32
	count []float64
}

func newStrata(factor []float64) strata {
	n := len(factor)
	s := strata{make([]int32, n), make([]float64, min(strataCount, max(1, n/16)))}
	for i, z := range factor {
		k := min(len(s.count)-1, int(prob.NormCDF(z)*float64(len(s.count))))
		s.of[i] = int32(k)
		s.count[k]++
	}
	return s
}

// sums returns the sum of xs in each slice.
func (s strata) sums(xs []float64) []float64 {
	m := make([]float64, len(s.count))
	for i, x := range xs {
		m[s.of[i]] += x
	}
	return m
}

// means returns the mean of xs in each slice.
func (s strata) means(xs []float64) []float64 {
	m := s.sums(xs)
	for k := range m {
		m[k] /= math.Max(1, s.count[k])
	}
	return m
}

// Shared returns the variance of the mean of a column given the common factor: what every bidder who misjudges this lot misjudges
// together, with by how much each scenario's factor lifts that mean. The part of the variance that chance alone puts between slices is
// taken off. Shape: one value a scenario. Units: those of the column, squared for the variance.
func (o Outcome) Shared(xs []float64) (variance float64, off []float64) {
	s := o.strata
	means, all := s.means(xs), prob.Mean(xs)
	off = make([]float64, len(xs))
	var within float64
	for i, x := range xs {
		m := means[s.of[i]]
		within += (x - m) * (x - m)
		off[i] = m - all
	}
	n, k := float64(len(xs)), float64(len(means))
	return math.Max(0, prob.Variance(means)-within/math.Max(1, n-k)*k/n), off
}

// Square returns the mean over the common factor of the square of a column's mean given it.
func (o Outcome) Square(xs []float64) float64 {
	var sum float64
	for k, m := range o.strata.means(xs) {
		sum += m * m * o.strata.count[k]
	}
	return sum / float64(len(xs))
}

// dust is the share of the mean square outlay below which a variance is the rounding of float64: a lot that is certain has
// no causes of its spread.
const dust = 1e-24

// Share is one cause's part of the variance of the profit, 0..1; negative where it works against the rest.
type Share struct {
	Name string
	Part float64
	Kind string
}

// The kinds of a share. Lines and risks have the names that the user gave them: it is the kind that tells what a share is of.
const (
	OfResale  = "resale"
	OfFactor  = "factor" // what makes the lot worse than it looks
	OfLine    = "line"
	OfRisk    = "risk"
	OfHours   = "hours" // own ones, of a plan without a rebuild
	OfFreight = "freight"
	OfStorage = "storage"
	OfTime    = "time"
	OfRest    = "rest" // small causes together
)

// Shares splits the variance of the profit by cause, largest first: the resale price (of the given variance, in money
// squared, independent of the rest), the common factor, each line and risk beyond it, freight, storage and time. The
// shares add up to 1. capital is the money that a day costs beside the holding cost. Source: covariance decomposition of a sum.
func (o Outcome) Shares(resale, capital float64) []Share {
	w := o.split(resale, capital)
	if w.all <= dust*w.scale {
		return nil
	}
	shares := []Share{{"Resale price", resale / w.all, OfResale}}
	for n, parts := range [][]Part{o.Lines, o.Risks} {
		for _, p := range parts {
			shares = append(shares, Share{p.Name, w.part(p.strand().dot(w.off), p.drawn.slices), []string{OfLine, OfRisk}[n]})
		}
	}
	shares = append(shares, Share{"Freight", w.own(o.Freight), OfFreight}, Share{"Storage", w.own(o.Storage), OfStorage})
	days := make([]float64, len(o.Days))
	for i := range days {
		days[i] = o.Holding[i] + capital*o.Days[i]
	}
	shares = append(shares, Share{"Time", w.own(days), OfTime})
	shares = append(shares, Share{"Worse than it looks", w.factor, OfFactor})
	sort.SliceStable(shares, func(a, b int) bool { return shares[a].Part > shares[b].Part })
	return shares
}

// Parts returns causes that do not lean on each other, given with their variances, with their shares of the whole, largest first; none
// where nothing varies.
func Parts(causes []Share) []Share {
	var all float64
	for _, c := range causes {
		all += c.Part
	}
	if all == 0 {
		return nil
	}
	for i := range causes {
		causes[i].Part /= all
	}
	sort.SliceStable(causes, func(a, b int) bool { return causes[a].Part > causes[b].Part })
	return causes
}

// splitter splits columns into what follows the common factor and what does not.
type splitter struct {
	strata
	off    []float64 // the total less its mean, one value a scenario
	slice  []float64 // sums of off by slice
	all    float64   // variance of the profit
	scale  float64   // square of the mean outlay
	factor float64   // share gathered for the common factor
}

func (o Outcome) split(resale, capital float64) splitter {
	w := splitter{strata: o.strata, off: make([]float64, len(o.Cost))}
	for i, x := range o.Cost {
		w.off[i] = x + capital*o.Days[i]
	}
	m := prob.Mean(w.off)
	w.scale = m * m
	for i := range w.off {
		w.off[i] -= m
		w.all += w.off[i] * w.off[i]
	}
	w.all = resale + w.all/float64(len(w.off))
	w.slice = w.sums(w.off)
	return w
}

// own returns the share of a column beyond the common factor, and books the rest to it.
func (w *splitter) own(xs []float64) float64 {
	var along float64
	for i, x := range xs {
		along += x * w.off[i]
	}
	return w.part(along, w.means(xs))
}

// part returns the share beyond the common factor of a column, whose product with off has the sum along and which has those
// means by slice. off sums to nothing, so the column's own mean does not matter.
func (w *splitter) part(along float64, means []float64) float64 {
	var shared float64
	for k, m := range means {
		shared += m * w.slice[k]
	}
	n := float64(len(w.off)) * w.all
	w.factor += shared / n
	return (along - shared) / n
}
