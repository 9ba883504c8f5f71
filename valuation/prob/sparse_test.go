package prob

import (
	"math"
	"math/rand/v2"
	"testing"
)

// manyLevels returns a table of n rows with shared slopes, models with slopes of their own, trims within models and a chain of years.
func manyLevels(rng *rand.Rand, n int) *Mixed {
	const models, trims, years = 9, 3, 7
	m := &Mixed{DF: 4, Residual: Scale{0.1, 4}, Least: 0.01, Wild: 0.02 / 4.6, Groups: []Scale{{0.3, 4}, {0.02, 4}, {0.1, 4}, {0.05, 4}}}
	m.Terms = []Term{{SD: 10, Group: -1}, {Mean: -0.1, SD: 0.05, Group: -1}, {Mean: -0.08, SD: 0.05, Group: -1}}
	first := func(count, group int) int {
		at := len(m.Terms)
		for range count {
			m.Terms = append(m.Terms, Term{SD: 10, Group: group})
		}
		return at
	}
	level, slope, trim, year := first(models, 0), first(models, 1), first(models*trims, 2), first(years, -1)
	for k := range years - 1 {
		m.Links = append(m.Links, Link{From: year + k, To: year + k + 1, Gap: 1 + float64(k%2), Group: 3})
	}
	m.Links = append(m.Links, Link{From: -1, To: year + 3, Gap: 1, Group: 3})
	for range n {
		k, age, miles := rng.IntN(models), rng.NormFloat64()*3, rng.NormFloat64()*4
		row := []Entry{{0, 1}, {1, age}, {2, miles}, {slope + k, age}, {year + rng.IntN(years), 1}, {level + k, 1},
			{trim + trims*k + rng.IntN(trims), 1}}
		var unknown []int
		if rng.IntN(9) == 0 {
			row, unknown = row[:6], []int{2}
		}
		m.Rows, m.Unknown, m.Like = append(m.Rows, row), append(m.Unknown, unknown), append(m.Like, 1-rng.Float64()/2)
		m.Y = append(m.Y, 9-0.12*age-0.07*miles+0.2*float64(k%3)+0.1*rng.NormFloat64())
	}
	m.Target = m.Rows[0]
	m.Prepare()
	return m
}

// dense solves m's normal equations at s by the dense solver that is held against published figures.
func dense(t *testing.T, m *Mixed, s MixedFit, told float64) (x, inverse []float64) {
	t.Helper()
	p := len(m.Terms)
	sys, b := NewSymmetric(p), make([]float64, p)
	add := func(i, j int, w float64) {
		if i <= j {
			sys.Raw()[i*p+j] += w
		}
	}
	for j, e := range m.Terms {
		sd := e.SD
		if e.Group >= 0 {
			sd = s.Tau[e.Group]
		}
		add(j, j, 1/(sd*sd))
	}
	for _, l := range m.Links {
		w := 1 / (l.Gap * s.Tau[l.Group] * s.Tau[l.Group])
		add(l.To, l.To, w)
		if l.From >= 0 {
			add(l.From, l.From, w)
			add(min(l.From, l.To), max(l.From, l.To), -w)
		}
	}
	for i, row := range m.Rows {
		v := s.Sigma * s.Sigma / (m.Like[i] * s.Robust[i] * told)
		for _, g := range m.Unknown[i] {
			v += s.Tau[g] * s.Tau[g]
		}
		for _, e := range row {
			b[e.Term] += e.X * m.off[i] / v
			for _, f := range row {
				add(e.Term, f.Term, e.X*f.X/v)
			}
		}
	}
	x, inverse, err := sys.Solve(b)
	if err != nil {
		t.Fatal(err)
	}
	for j := range x {
		x[j] += m.Terms[j].Mean
	}
	return x, inverse
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
		t.Errorf("%s: %.14g, by the dense solver %.14g", what, got, want)
	}
}

// A fit by sparse elimination is that of the whole matrix: effects, covariances with the target, and all that is read of pairs.
func TestSparseFitIsTheDenseFit(t *testing.T) {
	for _, n := range []int{1, 5, 60, 400} {
		m := manyLevels(rand.New(rand.NewPCG(3, uint64(n))), n)
		p := len(m.Terms)
		s := m.Solve(m.Start(), 12)
		m.estimate(&s)
		x, inverse := dense(t, m, s, 1)
		_, doubt := dense(t, m, s, (m.DF+1)/(m.DF+3))
		along := s.Cov.With(m.Target)
		for j := range p {
			near(t, "effect", s.Coef[j], x[j])
			near(t, "variance", m.near[m.order.place[j]*(p+1)], inverse[j*p+j])
			want := 0.0
			for _, e := range m.Target {
				want += e.X * inverse[e.Term*p+j]
			}
			near(t, "covariance with the target", along[j], want)
		}
		for i, row := range m.Rows {
			near(t, "variance of a row", quadratic(m.rows[i], m.near, p), whole(row, inverse, p))
			near(t, "variance of a row by halves", s.Cov.Variance(row), whole(row, inverse, p))
			near(t, "doubt of a row", s.Doubt.Variance(row), whole(row, doubt, p))
		}
		for _, l := range m.Links {
			if l.From >= 0 {
				a, b := m.order.place[l.From], m.order.place[l.To]
				near(t, "covariance along a chain", m.near[min(a, b)*p+max(a, b)], inverse[l.From*p+l.To])
			}
		}
	}
}

func whole(row []Entry, v []float64, p int) float64 {
	sum := 0.0
	for _, e := range row {
		for _, f := range row {
			sum += e.X * f.X * v[e.Term*p+f.Term]
		}
	}
	return sum
}

// A system that isn't positive definite has no factor.
func TestFactorRefusesIndefinite(t *testing.T) {
	e := newElimination(meetings(2, [][]Entry{{{0, 1}, {1, 1}}}, nil))
	if e.factor([]float64{1, 2, 0, 1}) {
		t.Error("an indefinite matrix has a factor")
	}
}

// Eliminated in a good order, a star stays a star: the hub, which all others meet, goes last but one at the earliest.
func TestTheHubOfAStarGoesLast(t *testing.T) {
	var rows [][]Entry
	for j := 1; j < 100; j++ {
		rows = append(rows, []Entry{{0, 1}, {j, 1}})
	}
	e := newElimination(meetings(100, rows, nil))
	if e.place[0] < 98 {
		t.Errorf("the hub goes at place %d", e.place[0])
	}
	for k, later := range e.later {
		if len(later) > 1 {
			t.Errorf("place %d meets %d others", k, len(later))
		}
	}
}
