package prob

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/mathext"
)

// pertWeight is the weight of the most likely value in the modified PERT distribution. Source: Vose 2008 (from memory).
const pertWeight = 4

// Shape returns the alpha and beta of the PERT beta of t. Limits: t must be ordered and have a spread.
func (t Three) Shape() (alpha, beta float64) {
	w := t.High - t.Low
	return 1 + pertWeight*(t.Likely-t.Low)/w, 1 + pertWeight*(t.High-t.Likely)/w
}

// Mean returns (low + 4 likely + high) / 6.
func (t Three) Mean() float64 { return (t.Low + pertWeight*t.Likely + t.High) / (pertWeight + 2) }

// Variance returns the beta's own variance (mean-low)(high-mean)/7, which is not ((high-low)/6)^2 unless symmetric.
func (t Three) Variance() float64 {
	m := t.Mean()
	return (m - t.Low) * (t.High - m) / (pertWeight + 3)
}

// Quantile returns the value below which t lies with chance p. Limits: p in 0..1, t ordered.
func (t Three) Quantile(p float64) float64 {
	if t.Sure() || p <= 0 {
		return t.Low
	}
	if p >= 1 {
		return t.High
	}
	a, b := t.Shape()
	return t.Low + (t.High-t.Low)*mathext.InvRegIncBeta(a, b, p)
}

// CDF returns the chance that t is at most x; of a certain value, of one at or below x.
func (t Three) CDF(x float64) float64 {
	switch {
	case x < t.Low:
		return 0
	case x >= t.High:
		return 1
	}
	a, b := t.Shape()
	return mathext.RegIncBeta(a, b, (x-t.Low)/(t.High-t.Low))
}

// Table returns the distribution of t by its quantiles, with t's own mean.
func (t Three) Table() Table {
	if t.Sure() {
		return CertainTable(t.Low)
	}
	const knots = 400
	p, x := make([]float64, knots+1), make([]float64, knots+1)
	for i := range p {
		p[i] = (1 - math.Cos(math.Pi*float64(i)/knots)) / 2 // close together at the ends, where quantiles run apart
		x[i] = t.Quantile(p[i])
	}
	p[0], p[knots] = 0, 1
	m := NewTable(p, x).Mean()
	for i := range x {
		x[i] += t.Mean() - m
	}
	return NewTable(p, x)
}

// scoreSpan and scoreKnots set the table of quantiles by normal score: beyond 4.25 sd lies 1 draw in 47,000.
// shapeSteps is the grid of mode positions for which the unit PERT is tabulated.
const (
	scoreSpan  = 4.25
	scoreKnots = 136
	shapeSteps = 64
)

// Scored is a distribution tabulated by normal score, so that a correlated draw needs one multiplication and one look-up.
type Scored struct {
	at [scoreKnots + 1]float64
}

// unitShapes holds the quantiles of the PERT on [0, 1] by mode position and normal score. It is a constant table, made
// at its first use; modes above one half are mirrored.
var unitShapes = sync.OnceValue(func() *[shapeSteps + 1]Scored {
	var all [shapeSteps + 1]Scored
	for k := 0; k <= shapeSteps/2; k++ {
		unit := Three{0, float64(k) / shapeSteps, 1}
		for i := range all[k].at {
			q := unit.Quantile(NormCDF(-scoreSpan + 2*scoreSpan*float64(i)/scoreKnots))
			all[k].at[i] = q
			all[shapeSteps-k].at[scoreKnots-i] = 1 - q
		}
	}
	return &all
})

// Score tabulates the PERT distribution of t at evenly spaced normal scores; between knots it is linear, and scores
// beyond 4.25 take the end value. Between tabulated mode positions it is linear too, which keeps the mean exact and
// quantiles within about 1e-4 of the range.
func (t Three) Score() *Scored {
	s := new(Scored)
	if t.Sure() {
		for i := range s.at {
			s.at[i] = t.Low
		}
		return s
	}
	width := t.High - t.Low
	mode := (t.Likely - t.Low) / width * shapeSteps
	k := min(int(mode), shapeSteps-1)
	f := mode - float64(k)
	lo, hi := &unitShapes()[k], &unitShapes()[k+1]
	for i := range s.at {
		s.at[i] = t.Low + width*(lo.at[i]+f*(hi.at[i]-lo.at[i]))
	}
	return s
}

// At returns the value at normal score z.
func (s *Scored) At(z float64) float64 {
	x := (z + scoreSpan) * (scoreKnots / (2 * scoreSpan))
	if x <= 0 {
		return s.at[0]
	}
	i := int(x)
	if i >= scoreKnots {
		return s.at[scoreKnots]
	}
	f := x - float64(i)
	return s.at[i] + f*(s.at[i+1]-s.at[i])
}

// BetaQuantile returns the quantile of a Beta(a, b). Limits: a, b > 0, p in 0..1.
func BetaQuantile(a, b, p float64) float64 {
	return mathext.InvRegIncBeta(a, b, math.Min(1, math.Max(0, p)))
}
