package resale

import (
	"math"

	"walkline/valuation/prob"
)

// data is a table of comparables as numbers.
type data struct {
	rows    [][]entry
	extra   [][]int   // groups of which the row has a level without an effect of its own
	y       []float64 // log price
	off     []float64 // log price less what the prior means make of it
	like    []float64 // likeness to the subject, 0..1: divides the variance of the row
	terms   []term
	groups  []group
	market  Market
	subject []entry
}

// solution is a fit of the effects of one design.
type solution struct {
	coef   []float64
	cov    []float64 // covariance of coef, row by row
	sigma  float64   // scale of the Student-t residual of one price
	tau    []float64 // spread of each group
	weight []float64 // of each row in the last step, in precision
	robust []float64 // Student-t weight of each row, up to (df+1)/df
	lever  []float64 // leverage of each row
	left   []float64 // residual of each row when it is left out
	spread []float64 // scale of that residual
	score  float64   // sum of the log densities of those residuals
}

// Limits of the iteration: it stops when the spreads and the subject's level have settled.
const (
	mostSteps  = 40
	choiceStep = 4 // enough to choose among members by
	settled    = 1e-3
	leastSigma = 0.01 // one price is never foretold closer than 1 %; starter value, from memory: replace it with yours
)

// solve returns the effects by expectation-maximisation: Gaussian priors on the effects, Student-t errors, the spreads
// of the groups and of the residual estimated under their own priors.
func (d *data) solve(s solution, steps int) solution {
	n := total(d.like)
	at := math.Inf(1)
	for range steps {
		d.estimate(&s)
		sum := 0.0
		for i := range d.rows {
			r := d.residual(s, i)
			v := quadratic(d.rows[i], s.cov, len(d.terms))
			e := r*r + v
			df := d.market.DF
			s.robust[i] = (df + 1) / (df + e/(s.sigma*s.sigma))
			sum += s.robust[i] * d.like[i] * e
		}
		prior := d.market.Residual
		next := math.Max(leastSigma, math.Sqrt((prior.Worth*prior.SD*prior.SD+sum)/(prior.Worth+n)))
		moved := math.Abs(math.Log(next/s.sigma)) + d.spreads(&s)
		s.sigma = next
		mean := dot(d.subject, s.coef)
		if moved < settled && math.Abs(mean-at) < settled*s.sigma {
			break
		}
		at = mean
	}
	d.estimate(&s)
	d.leaveOut(&s)
	return s
}

// centreLevel sets the mean of the level's flat prior to the rows' median, so that a change of scale of all prices, or of
// currency, changes the answer by that scale exactly.
func (d *data) centreLevel() {
	d.terms[0].mean = median(d.off)
	for i := range d.off {
		d.off[i] -= d.terms[0].mean
	}
}

// start returns a first guess that a few gross errors can't spoil: the prior's effects, the median level.
func (d *data) start() solution {
	p := len(d.terms)
	s := solution{coef: make([]float64, p), sigma: d.market.Residual.SD, tau: make([]float64, len(d.groups)),
		weight: make([]float64, len(d.rows)), robust: make([]float64, len(d.rows))}
	for j, t := range d.terms {
		s.coef[j] = t.mean
	}
	for g := range d.groups {
		s.tau[g] = d.groups[g].prior.SD
	}
	off := make([]float64, len(d.rows))
	for i := range off {
		off[i] = math.Abs(d.off[i])
	}
	spread := math.Max(s.sigma, normalMAD*median(off))
	for i := range off {
		r := off[i] / spread
		s.robust[i] = (d.market.DF + 1) / (d.market.DF + r*r)
	}
	return s
}

// resume returns where to start when another form or prior has been fitted to the same rows.
func (d *data) resume(from solution) solution {
	s := solution{coef: make([]float64, len(d.terms)), sigma: from.sigma, tau: make([]float64, len(d.groups)),
		weight: make([]float64, len(d.rows)), robust: append([]float64(nil), from.robust...)}
	for g := range s.tau {
		s.tau[g] = d.groups[g].prior.SD
	}
	return s
}

// normalMAD turns a median absolute deviation into the standard deviation of a normal sample: 1 / NormQuantile(0.75).
const normalMAD = 1.4826

// sdFloor stands for certainty in a prior: far below the resolution of a price.
const sdFloor = 1e-8

// estimate sets the effects and their covariance for the present weights and spreads.
func (d *data) estimate(s *solution) {
	p := len(d.terms)
	m := prob.NewSymmetric(p)
	a := m.Raw()
	b := make([]float64, p)
	for j, t := range d.terms {
		sd := t.sd
		if t.group >= 0 {
			sd = s.tau[t.group]
		}
		sd = math.Max(sd, sdFloor)
		a[j*p+j] = 1 / (sd * sd)
	}
	for i, row := range d.rows {
		v := s.sigma * s.sigma / (d.like[i] * s.robust[i])
		for _, g := range d.extra[i] {
			v += s.tau[g] * s.tau[g]
		}
		w := 1 / v
		s.weight[i] = w
		y := d.off[i]
		for k, e := range row {
			b[e.term] += w * e.x * y
			for _, f := range row[k:] {
				lo, hi := e.term, f.term
				if lo > hi {
					lo, hi = hi, lo
				}
				a[lo*p+hi] += w * e.x * f.x
			}
		}
	}
	x, inv, err := m.Solve(b)
	if err != nil {
		panic("resale: a system with a proper prior on every effect can't be singular")
	}
	for j := range x {
		s.coef[j] = d.terms[j].mean + x[j]
	}
	s.cov = inv
}

func (d *data) prior(row []entry) float64 {
	sum := 0.0
	for _, e := range row {
		sum += e.x * d.terms[e.term].mean
	}
	return sum
}

func (d *data) residual(s solution, i int) float64 { return d.y[i] - dot(d.rows[i], s.coef) }

// spreads updates the spread of each group and returns how far they moved.
func (d *data) spreads(s *solution) float64 {
	p := len(d.terms)
	sum := make([]float64, len(d.groups))
	count := make([]float64, len(d.groups))
	for j, t := range d.terms {
		if t.group >= 0 {
			off := s.coef[j] - t.mean
			sum[t.group] += off*off + s.cov[j*p+j]
			count[t.group]++
		}
	}
	moved := 0.0
	for g := range sum {
		prior := d.groups[g].prior
		next := math.Sqrt((prior.Worth*prior.SD*prior.SD + sum[g]) / (prior.Worth + count[g]))
		moved = math.Max(moved, math.Abs(math.Log(next/s.tau[g]))/10)
		s.tau[g] = next
	}
	return moved
}

// leaveOut finds what each row's residual would be without it, by the hat matrix, with the weights held.
func (d *data) leaveOut(s *solution) {
	n := len(d.rows)
	peak, df := prob.TLogPDF(0, d.market.DF), d.market.DF
	s.lever, s.left, s.spread = make([]float64, n), make([]float64, n), make([]float64, n)
	s.score = 0
	for i, row := range d.rows {
		v := quadratic(row, s.cov, len(d.terms))
		s.lever[i] = math.Min(s.weight[i]*v, 1-1e-9)
		s.left[i] = d.residual(*s, i) / (1 - s.lever[i])
		own := s.sigma * s.sigma
		for _, g := range d.extra[i] {
			own += s.tau[g] * s.tau[g]
		}
		s.spread[i] = math.Sqrt(own + v/(1-s.lever[i]))
		z := s.left[i] / s.spread[i]
		s.score += d.like[i] * (peak - (df+1)/2*math.Log1p(z*z/df) - math.Log(s.spread[i]))
	}
}

func total(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum
}

func dot(row []entry, b []float64) float64 {
	sum := 0.0
	for _, e := range row {
		sum += e.x * b[e.term]
	}
	return sum
}

// quadratic returns row' v row.
func quadratic(row []entry, v []float64, p int) float64 {
	sum := 0.0
	for k, e := range row {
		at := v[e.term*p:]
		sum += e.x * e.x * at[e.term]
		for _, f := range row[k+1:] {
			sum += 2 * e.x * f.x * at[f.term]
		}
	}
	return sum
}
