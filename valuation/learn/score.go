package learn

import (
	"math"
	"slices"
	"sync"

	"walkline/valuation/prob"
)

// levels are the intervals whose coverage is kept.
var levels = []float64{0.5, 0.8, 0.9}

// tenths is the number of bars of a PIT histogram and of bins of a reliability diagram.
const tenths = 10

// record holds one figure against what came of it.
func (f figure) record(judged []Build) FigureRecord {
	r := FigureRecord{Key: f.key, Name: f.name, PIT: make([]int, tenths), Uneven: 1}
	for _, l := range levels {
		r.Coverage = append(r.Coverage, Coverage{Level: l, High: 1})
	}
	var came []float64
	for _, b := range judged {
		said := f.foretold(b.Foretold.restated(b.Hammer, b.Currency))
		x, known := f.came(b)
		if !known || !said.Known() || said.Q[0] == said.Q[len(said.Q)-1] {
			continue
		}
		came = append(came, x)
		for i := range r.Coverage {
			c := &r.Coverage[i]
			if x >= said.quantile((1-c.Level)/2) && x <= said.quantile((1+c.Level)/2) {
				c.Inside++
			}
		}
		r.PIT[min(tenths-1, int(tenths*said.cdf(x)))]++
		r.CRPS += said.crps(x)
	}
	r.N = len(came)
	if r.N == 0 {
		return r
	}
	r.CRPS /= float64(r.N)
	for i := range r.Coverage {
		c := &r.Coverage[i]
		c.N, c.Share = r.N, float64(c.Inside)/float64(r.N)
		c.Low, c.High = prob.ChanceRange(c.Inside, r.N, 0.95)
	}
	r.Uneven = uneven(r.PIT)
	if r.N >= 3 {
		naive := climate(came)
		r.Naive = &naive
	}
	return r
}

// uneven returns the chance of counts at least so uneven when every bar is as likely (chi-squared test).
func uneven(counts []int) float64 {
	n := 0
	for _, c := range counts {
		n += c
	}
	want := float64(n) / float64(len(counts))
	x := 0.0
	for _, c := range counts {
		x += (float64(c) - want) * (float64(c) - want) / want
	}
	return prob.ChiSquaredTail(x, float64(len(counts)-1))
}

// cdf returns the chance of a value at or below x: between two quantiles along the normal score, beyond the outermost on
// the line through the last two that differ.
func (f Figure) cdf(x float64) float64 {
	z := scores()
	last := len(f.Q) - 1
	i := min(max(1, firstAt(f.Q, x)), last)
	for i < last && f.Q[i] == f.Q[i-1] {
		i++
	}
	for i > 1 && f.Q[i] == f.Q[i-1] {
		i--
	}
	if f.Q[i] == f.Q[i-1] {
		return 0.5
	}
	return prob.NormCDF(z[i-1] + (z[i]-z[i-1])*(x-f.Q[i-1])/(f.Q[i]-f.Q[i-1]))
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

// crps returns the continuous ranked probability score of x, in its unit: twice the mean over all chances of the quantile
// score. Source: Gneiting and Raftery, JASA 102 (2007) 359-378 (from memory).
func (f Figure) crps(x float64) float64 {
	sum := 0.0
	for _, r := range ladder() {
		q := f.Q[r.at-1] + r.along*(f.Q[r.at]-f.Q[r.at-1])
		if x <= q {
			sum += (1 - r.chance) * (q - x)
		} else {
			sum += r.chance * (x - q)
		}
	}
	return 2 * sum / rungs
}

// climate returns the mean CRPS of foretelling each value by all the others, whatever the lot.
func climate(xs []float64) float64 {
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

// reliability returns the Brier score of the calls and its parts. Source: Brier, Monthly Weather Review 78 (1950) 1-3,
// halved as today; Murphy, J. Applied Meteorology 12 (1973) 595-600 (both from memory).
func reliability(calls []call) Reliability {
	r := Reliability{N: len(calls)}
	if r.N == 0 {
		return r
	}
	var bins [tenths]Bin
	for _, c := range calls {
		b := &bins[min(tenths-1, int(tenths*c.chance))]
		came := 0.0
		if c.came {
			came = 1
			b.Events++
			r.Events++
		}
		b.N++
		b.Said += c.chance
		r.Brier += (c.chance - came) * (c.chance - came)
	}
	n := float64(r.N)
	r.Brier /= n
	share := float64(r.Events) / n
	r.Uncertainty = share * (1 - share)
	for _, b := range bins {
		if b.N == 0 {
			continue
		}
		b.Said /= float64(b.N)
		b.Came = float64(b.Events) / float64(b.N)
		b.Low, b.High = prob.ChanceRange(b.Events, b.N, 0.95)
		r.Calibration += float64(b.N) * math.Pow(b.Said-b.Came, 2) / n
		r.Resolution += float64(b.N) * math.Pow(b.Came-share, 2) / n
		r.Bins = append(r.Bins, b)
	}
	r.Within = r.Brier - (r.Calibration - r.Resolution + r.Uncertainty)
	return r
}
