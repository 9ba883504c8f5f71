package prob

import "math"

// leaveOut finds what each row's residual would be without it, by the hat matrix, with the weights held.
func (m *Mixed) leaveOut(s *MixedFit) {
	n := len(m.Rows)
	df := m.DF
	s.Left, s.Spread = make([]float64, n), make([]float64, n)
	s.Score = 0
	for i, row := range m.Rows {
		v := Quadratic(row, s.Cov, len(m.Terms))
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
	p := len(m.Terms)
	sys := NewSymmetric(p)
	told := MixedFit{Sigma: s.Sigma, Tau: s.Tau, Robust: make([]float64, len(s.Robust)), Weight: make([]float64, len(s.Weight))}
	for i, r := range s.Robust {
		told.Robust[i] = r * (m.DF + 1) / (m.DF + 3)
	}
	b := make([]float64, p)
	m.priors(&told, sys.Raw())
	m.gather(&told, sys.Raw(), b)
	_, inv, err := sys.Solve(b)
	if err != nil {
		panic(errImproper)
	}
	s.Doubt = inv
}

// Dot returns the sum of the row's elements times the values of their terms.
func Dot(row []Entry, b []float64) float64 {
	sum := 0.0
	for _, e := range row {
		sum += e.X * b[e.Term]
	}
	return sum
}

// Quadratic returns row' v row.
func Quadratic(row []Entry, v []float64, p int) float64 {
	sum := 0.0
	for k, e := range row {
		at := v[e.Term*p:]
		sum += e.X * e.X * at[e.Term]
		for _, f := range row[k+1:] {
			sum += 2 * e.X * f.X * at[f.Term]
		}
	}
	return sum
}
