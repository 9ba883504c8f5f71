package prob

import (
	"math"
	"slices"
)

// leaveOut finds what each row's residual would be without it, by the hat matrix, with the weights held.
func (m *Mixed) leaveOut(s *MixedFit) {
	n := len(m.Rows)
	df := m.DF
	s.Left, s.Spread = make([]float64, n), make([]float64, n)
	s.Score = 0
	for i := range m.Rows {
		v := quadratic(m.rows[i], m.near, len(m.Terms))
		lever := math.Min(s.Weight[i]*v, 1-1e-9)
		s.Left[i] = m.residual(*s, i) / (1 - lever)
		own := s.Sigma * s.Sigma
		for _, g := range m.Unknown[i] {
			own += s.Tau[g] * s.Tau[g]
		}
		s.Spread[i] = math.Sqrt(own + v/(1-lever))
		z := s.Left[i] / s.Spread[i]
		density := m.peak - (df+1)/2*math.Log1p(z*z/df) - math.Log(s.Spread[i])
		if m.Wild > 0 {
			density = math.Log(math.Exp(density) + m.Wild)
		}
		s.Score += m.Like[i] * density
	}
}

// doubt sets the covariance of the effects when a row tells as much as its Student-t error lets it on average, which is less
// than its weight of one: (DF+1)/(DF+3) of it.
//
// Source: the information of a Student-t's location, Lange, Little and Taylor 1989, appendix B (from memory).
func (m *Mixed) doubt(s *MixedFit) {
	told := MixedFit{Sigma: s.Sigma, Tau: s.Tau, Robust: make([]float64, len(s.Robust)), Weight: make([]float64, len(s.Weight))}
	for i, r := range s.Robust {
		told.Robust[i] = r * (m.DF + 1) / (m.DF + 3)
	}
	m.system(&told)
	s.Doubt = Covariance{m.order, slices.Clone(m.room)}
}

// Dot returns the sum of the row's elements times the values of their terms.
func Dot(row []Entry, b []float64) float64 {
	sum := 0.0
	for _, e := range row {
		sum += e.X * b[e.Term]
	}
	return sum
}

// quadratic returns row' v row of a row whose terms rise and the upper triangle of v.
func quadratic(row []Entry, v []float64, p int) float64 {
	sum := 0.0
	for k, e := range row {
		at := v[e.Term*p : (e.Term+1)*p]
		half := e.X * at[e.Term] / 2
		for _, f := range row[k+1:] {
			half += f.X * at[f.Term]
		}
		sum += 2 * e.X * half
	}
	return sum
}
