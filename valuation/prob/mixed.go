package prob

import (
	"math"
	"slices"
)

// Scale is a belief about a standard deviation: its size, and how many observations the belief is worth (a scaled
// inverse chi-square on its square).
type Scale struct {
	SD    float64 `json:"sd"`
	Worth float64 `json:"worth"`
}

// Valid reports whether s is a usable belief: both figures positive and finite.
func (s Scale) Valid() bool {
	return s.SD > 0 && s.Worth > 0 && !math.IsInf(s.SD, 0) && !math.IsInf(s.Worth, 0)
}

// Term is one effect with its Gaussian prior.
type Term struct {
	Mean, SD float64
	Group    int // of the effects whose spread is estimated together; below 0: SD is given
}

// Entry is one element of a sparse row: how often a term's effect counts.
type Entry struct {
	Term int
	X    float64
}

// Link is a prior on the step between two effects along a chain: Gaussian about zero, with the spread of its group for a gap
// of one, growing as the square root of the gap.
type Link struct {
	From, To int     // terms, To never none; From below 0: an effect of zero
	Gap      float64 // above 0
	Group    int
}

// Mixed is a linear model of mixed effects with Student-t errors: y = row effects + error. Term 0 is the level, which
// every row has once. Effects have Gaussian priors; those of a group share a spread that the data tell.
//
// Source: Lange, Little and Taylor, JASA 84 (1989) 881-896, errors; Laird and Ware, Biometrics 38 (1982) 963-974, effects
// (both from memory).
type Mixed struct {
	Rows     [][]Entry
	Unknown  [][]int   // for each row the groups of which it has a level without an effect of its own
	Y        []float64 // observed
	Like     []float64 // 0..1: the power to which each row's likelihood counts
	Terms    []Term
	Links    []Link  // between terms of their own, whose SD says how little is known of where the chain stands
	Groups   []Scale // prior of each group's spread
	Residual Scale   // prior of the scale of the errors
	Least    float64 // the errors' scale is never below
	DF       float64 // of the errors
	Wild     float64 // chance of a row that has nothing to do with the rest, times its density over y; 0: there is none
	Target   []Entry // the row whose expectation must settle

	off  []float64 // y less what the prior means make of it
	room []float64 // for a matrix that isn't kept
	peak float64   // log density of the errors at their middle, for a scale of one
}

// MixedFit is a fit of a [Mixed] model.
type MixedFit struct {
	Coef   []float64 // effect of each term
	Cov    []float64 // covariance of Coef, row by row, the rows' weights held
	Doubt  []float64 // covariance of Coef, that the weights are themselves found from the rows counted in
	Sigma  float64   // scale of the errors
	Tau    []float64 // spread of each group
	Weight []float64 // precision of each row in the last step
	Robust []float64 // Student-t weight of each row, up to (DF+1)/DF
	Left   []float64 // residual of each row when it is left out, the weights held
	Spread []float64 // scale of that residual
	Score  float64   // sum of the log densities of the left-out residuals
}

// Limits of the iteration: it stops when the spreads and the target have settled.
const settled = 2e-3

// Solve returns the effects by expectation-maximisation: Gaussian priors on the effects, Student-t errors, the spreads
// of the groups and of the errors estimated under their own priors, from s in at most the given number of steps. m is Prepared.
func (m *Mixed) Solve(s MixedFit, steps int) MixedFit {
	m.settle(&s, steps)
	m.estimate(&s)
	m.leaveOut(&s)
	m.doubt(&s)
	return s
}

// Try returns the fit after at most the given number of steps, good for its Score and for Resume alone.
func (m *Mixed) Try(s MixedFit, steps int) MixedFit {
	m.settle(&s, steps)
	m.leaveOut(&s)
	return s
}

// settle steps until the spreads and the target have settled. The covariance, the dearest part of a step, moves little from one
// to the next: it is found anew every few steps, and always before the last.
func (m *Mixed) settle(s *MixedFit, steps int) {
	at := math.Inf(1)
	known := make([]float64, len(m.Rows)) // variance of each row's expectation
	stale := freshSteps
	for range steps {
		fresh := stale >= freshSteps
		stale++
		if fresh {
			m.estimate(s)
			stale = 1
		} else {
			s.Coef = m.effects(s)
		}
		sum, n := 0.0, 0.0
		for i := range m.Rows {
			if fresh {
				known[i] = Quadratic(m.Rows[i], s.Cov, len(m.Terms))
			}
			r := m.residual(*s, i)
			e := r*r + known[i]
			genuine := m.genuine(e/(s.Sigma*s.Sigma), s.Sigma)
			s.Robust[i] = genuine * (m.DF + 1) / (m.DF + e/(s.Sigma*s.Sigma))
			sum += s.Robust[i] * m.Like[i] * e
			n += genuine * m.Like[i]
		}
		prior := m.Residual
		next := math.Max(m.Least, math.Sqrt((prior.Worth*prior.SD*prior.SD+sum)/(prior.Worth+n)))
		moved := math.Abs(math.Log(next/s.Sigma)) + m.spreads(s)
		s.Sigma = next
		mean := Dot(m.Target, s.Coef)
		if moved < settled && math.Abs(mean-at) < settled*s.Sigma {
			if fresh {
				break
			}
			stale = freshSteps
		}
		at = mean
	}
}

// genuine returns the chance that a row whose squared standardised error is z2 is no wild one.
func (m *Mixed) genuine(z2, sigma float64) float64 {
	if m.Wild == 0 {
		return 1
	}
	density := math.Exp(m.peak-(m.DF+1)/2*math.Log1p(z2/m.DF)) / sigma
	return math.Max(density/(density+m.Wild), leastGenuine)
}

// leastGenuine keeps the weight of the wildest row above nothing.
const leastGenuine = 1e-6

// freshSteps is for how many steps a covariance serves.
const freshSteps = 3

// Prepare makes m ready once its fields are set. It sets the mean of the level's flat prior to the rows' median, so that
// a change of scale of all that is observed changes the answer by that scale exactly.
func (m *Mixed) Prepare() {
	m.Terms[0].Mean = 0
	m.peak = TLogPDF(0, m.DF)
	m.off = make([]float64, len(m.Rows))
	for i, row := range m.Rows {
		m.off[i] = m.Y[i]
		for _, e := range row {
			m.off[i] -= e.X * m.Terms[e.Term].Mean
		}
	}
	m.Terms[0].Mean = middle(m.off)
	for i := range m.off {
		m.off[i] -= m.Terms[0].Mean
	}
}

func middle(xs []float64) float64 {
	s := slices.Clone(xs)
	slices.Sort(s)
	n := len(s)
	if n == 0 {
		return 0
	}
	return (s[(n-1)/2] + s[n/2]) / 2
}

// Start returns a first guess that a few gross errors can't spoil: the prior's effects, the median level.
func (m *Mixed) Start() MixedFit {
	p := len(m.Terms)
	s := MixedFit{Coef: make([]float64, p), Sigma: m.Residual.SD, Tau: make([]float64, len(m.Groups)),
		Weight: make([]float64, len(m.Rows)), Robust: make([]float64, len(m.Rows))}
	for j, t := range m.Terms {
		s.Coef[j] = t.Mean
	}
	for g := range m.Groups {
		s.Tau[g] = m.Groups[g].SD
	}
	off := make([]float64, len(m.Rows))
	for i := range off {
		off[i] = math.Abs(m.off[i])
	}
	spread := math.Max(s.Sigma, normalMAD*middle(off))
	for i := range off {
		r := off[i] / spread
		s.Robust[i] = (m.DF + 1) / (m.DF + r*r)
	}
	return s
}

// Resume returns where to start when a model with other terms or priors has been fitted to the same rows.
func (m *Mixed) Resume(from MixedFit) MixedFit {
	s := MixedFit{Coef: make([]float64, len(m.Terms)), Sigma: from.Sigma, Tau: make([]float64, len(m.Groups)),
		Weight: make([]float64, len(m.Rows)), Robust: append([]float64(nil), from.Robust...)}
	for g := range s.Tau {
		s.Tau[g] = m.Groups[g].SD
	}
	return s
}

// normalMAD turns a median absolute deviation into the standard deviation of a normal sample: 1 / NormQuantile(0.75).
const normalMAD = 1.4826

// sdFloor stands for certainty in a prior: far below the resolution of anything measured.
const sdFloor = 1e-8

// estimate sets the effects and their covariance for the present weights and spreads.
func (m *Mixed) estimate(s *MixedFit) {
	p := len(m.Terms)
	if len(s.Cov) != p*p {
		s.Cov = make([]float64, p*p)
	}
	sys := symmetricIn(s.Cov, p)
	a := sys.Raw()
	b := make([]float64, p)
	m.priors(s, a)
	m.gather(s, a, b)
	x, inv, err := sys.Solve(b)
	if err != nil {
		panic(errImproper)
	}
	s.Coef, s.Cov = m.plusMeans(x), inv
}

// errImproper can't come about: every effect has a proper prior.
const errImproper = "prob: a system with a proper prior on every effect can't be singular"

// effects returns the effects for the present weights and spreads, without their covariance.
func (m *Mixed) effects(s *MixedFit) []float64 {
	p := len(m.Terms)
	if len(m.room) != p*p {
		m.room = make([]float64, p*p)
	}
	sys, b := symmetricIn(m.room, p), make([]float64, p)
	m.priors(s, sys.Raw())
	m.gather(s, sys.Raw(), b)
	x, err := sys.SolveAlone(b)
	if err != nil {
		panic(errImproper)
	}
	return m.plusMeans(x)
}

// plusMeans adds the prior means to x, in place.
func (m *Mixed) plusMeans(x []float64) []float64 {
	for j := range x {
		x[j] += m.Terms[j].Mean
	}
	return x
}

// priors sets the upper triangle of a to the precision of the effects before the rows are seen.
func (m *Mixed) priors(s *MixedFit, a []float64) {
	p := len(m.Terms)
	for j, t := range m.Terms {
		sd := t.SD
		if t.Group >= 0 {
			sd = s.Tau[t.Group]
		}
		sd = math.Max(sd, sdFloor)
		a[j*p+j] = 1 / (sd * sd)
	}
	for _, l := range m.Links {
		w := 1 / (l.Gap * s.Tau[l.Group] * s.Tau[l.Group])
		a[l.To*p+l.To] += w
		if l.From >= 0 {
			a[l.From*p+l.From] += w
			a[min(l.From, l.To)*p+max(l.From, l.To)] -= w
		}
	}
}

// gather adds each row, at its present precision, to the upper triangle of the normal equations a x = b.
func (m *Mixed) gather(s *MixedFit, a, b []float64) {
	p := len(m.Terms)
	for i, row := range m.Rows {
		v := s.Sigma * s.Sigma / (m.Like[i] * s.Robust[i])
		for _, g := range m.Unknown[i] {
			v += s.Tau[g] * s.Tau[g]
		}
		w := 1 / v
		s.Weight[i] = w
		y := m.off[i]
		for k, e := range row {
			b[e.Term] += w * e.X * y
			for _, f := range row[k:] {
				lo, hi := e.Term, f.Term
				if lo > hi {
					lo, hi = hi, lo
				}
				a[lo*p+hi] += w * e.X * f.X
			}
		}
	}
}

func (m *Mixed) residual(s MixedFit, i int) float64 { return m.Y[i] - Dot(m.Rows[i], s.Coef) }

// spreads updates the spread of each group and returns how far they moved.
func (m *Mixed) spreads(s *MixedFit) float64 {
	p := len(m.Terms)
	sum := make([]float64, len(m.Groups))
	count := make([]float64, len(m.Groups))
	for j, t := range m.Terms {
		if t.Group >= 0 {
			off := s.Coef[j] - t.Mean
			sum[t.Group] += off*off + s.Cov[j*p+j]
			count[t.Group]++
		}
	}
	for _, l := range m.Links {
		step, doubt := s.Coef[l.To], s.Cov[l.To*p+l.To]
		if l.From >= 0 {
			step -= s.Coef[l.From]
			doubt += s.Cov[l.From*p+l.From] - 2*s.Cov[l.From*p+l.To]
		}
		sum[l.Group] += (step*step + doubt) / l.Gap
		count[l.Group]++
	}
	moved := 0.0
	for g := range sum {
		prior := m.Groups[g]
		next := math.Sqrt((prior.Worth*prior.SD*prior.SD + sum[g]) / (prior.Worth + count[g]))
		moved = math.Max(moved, math.Abs(math.Log(next/s.Tau[g]))/10)
		s.Tau[g] = next
	}
	return moved
}
