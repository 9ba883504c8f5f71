package prob

import (
	"math"
	"slices"
)

// prepareSystem finds the order of elimination and makes room for the normal equations.
func (m *Mixed) prepareSystem() {
	p := len(m.Terms)
	m.order = newElimination(meetings(p, m.Rows, m.Links))
	m.room, m.near, m.right = make([]float64, p*p), make([]float64, p*p), make([]float64, p)
	m.sortRows()
}

// sortRows sets rows.
func (m *Mixed) sortRows() {
	n := 0
	for _, row := range m.Rows {
		n += len(row)
	}
	all := make([]Entry, 0, n)
	m.rows = make([][]Entry, len(m.Rows))
	for i, row := range m.Rows {
		from := len(all)
		for _, e := range row {
			all = append(all, Entry{m.order.place[e.Term], e.X})
		}
		m.rows[i] = all[from:]
		slices.SortFunc(m.rows[i], func(a, b Entry) int { return a.Term - b.Term })
	}
}

// sdFloor stands for certainty in a prior: far below the resolution of anything measured.
const sdFloor = 1e-8

// estimate sets the effects and the covariance of those that meet for the present weights and spreads.
func (m *Mixed) estimate(s *MixedFit) {
	m.effects(s)
	copy(m.near, m.room)
	m.order.invert(m.near)
}

// effects sets the effects for the present weights and spreads, without their covariance.
func (m *Mixed) effects(s *MixedFit) {
	m.system(s)
	m.order.forward(m.room, m.right)
	m.order.backward(m.room, m.right)
	for j, k := range m.order.place {
		s.Coef[j] = m.right[k] + m.Terms[j].Mean
	}
}

// system sets room to the factor of the normal equations and right to their right-hand side.
func (m *Mixed) system(s *MixedFit) {
	clear(m.room)
	clear(m.right)
	m.priors(s)
	m.gather(s)
	if !m.order.factor(m.room) {
		panic(errImproper)
	}
}

// errImproper can't come about: every effect has a proper prior.
const errImproper = "prob: a system with a proper prior on every effect can't be singular"

// priors adds the precision of the effects before the rows are seen.
func (m *Mixed) priors(s *MixedFit) {
	p, a := len(m.Terms), m.room
	for j, t := range m.Terms {
		sd := t.SD
		if t.Group >= 0 {
			sd = s.Tau[t.Group]
		}
		sd = math.Max(sd, sdFloor)
		a[m.order.place[j]*(p+1)] += 1 / (sd * sd)
	}
	for _, l := range m.Links {
		w, to := 1/(l.Gap*s.Tau[l.Group]*s.Tau[l.Group]), m.order.place[l.To]
		a[to*(p+1)] += w
		if l.From >= 0 {
			from := m.order.place[l.From]
			a[from*(p+1)] += w
			a[min(from, to)*p+max(from, to)] -= w
		}
	}
}

// gather adds each row, at its present precision.
func (m *Mixed) gather(s *MixedFit) {
	p, a, b := len(m.Terms), m.room, m.right
	for i, row := range m.rows {
		v := s.Sigma * s.Sigma / (m.Like[i] * s.Robust[i])
		for _, g := range m.Unknown[i] {
			v += s.Tau[g] * s.Tau[g]
		}
		w := 1 / v
		s.Weight[i] = w
		y := m.off[i]
		for k, e := range row {
			x, to := w*e.X, a[e.Term*p:(e.Term+1)*p]
			b[e.Term] += x * y
			for _, f := range row[k:] {
				to[f.Term] += x * f.X
			}
		}
	}
}
