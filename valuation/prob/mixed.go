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

	off   []float64   // y less what the prior means make of it
	peak  float64     // log density of the errors at their middle, for a scale of one
	order elimination // of the effects
	rows  [][]Entry   // Rows by the effects' places, sorted
	room  []float64   // the system, then its factor
	near  []float64   // covariance of the effects that meet, by their places
	right []float64   // right-hand side
}

// MixedFit is a fit of a [Mixed] model.
type MixedFit struct {
	Coef   []float64  // effect of each term
	Cov    Covariance // of Coef, the rows' weights held
	Doubt  Covariance // of Coef, that the weights are themselves found from the rows counted in
	Sigma  float64    // scale of the errors
	Tau    []float64  // spread of each group
	Weight []float64  // precision of each row in the last step
	Robust []float64  // Student-t weight of each row, up to (DF+1)/DF
	Left   []float64  // residual of each row when it is left out, the weights held
	Spread []float64  // scale of that residual
	Score  float64    // sum of the log densities of the left-out residuals
}

// Limits of the iteration: it stops when the spreads and the target have settled.
const settled = 2e-3

// Solve returns the effects by expectation-maximisation: Gaussian priors on the effects, Student-t errors, the spreads
// of the groups and of the errors estimated under their own priors, from s in at most the given number of steps. m is Prepared.
func (m *Mixed) Solve(s MixedFit, steps int) MixedFit {
	m.settle(&s, steps)
	m.estimate(&s)
	s.Cov = Covariance{m.order, slices.Clone(m.room)}
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
			m.effects(s)
		}
		sum, n := 0.0, 0.0
		for i := range m.Rows {
			if fresh {
				known[i] = quadratic(m.rows[i], m.near, len(m.Terms))
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
	m.prepareSystem()
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

func (m *Mixed) residual(s MixedFit, i int) float64 { return m.Y[i] - Dot(m.Rows[i], s.Coef) }

// spreads updates the spread of each group and returns how far they moved.
func (m *Mixed) spreads(s *MixedFit) float64 {
	p := len(m.Terms)
	sum := make([]float64, len(m.Groups))
	count := make([]float64, len(m.Groups))
	for j, t := range m.Terms {
		if t.Group >= 0 {
			off := s.Coef[j] - t.Mean
			sum[t.Group] += off*off + m.near[m.order.place[j]*(p+1)]
			count[t.Group]++
		}
	}
	for _, l := range m.Links {
		to := m.order.place[l.To]
		step, doubt := s.Coef[l.To], m.near[to*(p+1)]
		if l.From >= 0 {
			from := m.order.place[l.From]
			step -= s.Coef[l.From]
			doubt += m.near[from*(p+1)] - 2*m.near[min(from, to)*p+max(from, to)]
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
