package scenario

import (
	"walkline/valuation/hidden"
	"walkline/valuation/memory"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// strand is one line or risk as drawn, and what is read off it alone. A column that is nothing throughout is nil.
type strand struct {
	at            []int32   // the scenarios in which it is there; nil: all of them
	cost          []float64 // money, own labour included
	labour, hours []float64
	days          []float64 // lead time of a line, days that a risk adds
	mean, pay     float64   // means over all scenarios of cost and of the labour in it
	work          float64   // mean of the hours
	present       float64   // share of the scenarios
	slices        []float64 // mean cost in each slice of the common factor
}

// floatSize and indexSize are the sizes of a figure and of a position in bytes.
const floatSize, indexSize = 8, 4

// size returns the bytes that the strand holds.
func (s *strand) size() int {
	n := len(s.cost) + len(s.labour) + len(s.hours) + len(s.days) + len(s.slices)
	return n*floatSize + len(s.at)*indexSize
}

// newStrand returns the strand of those columns, which are its own from then on, with what is read off them.
func newStrand(at []int32, cash, labour, hours, days []float64, f *frame) *strand {
	s := &strand{at: at, cost: plus(cash, labour), labour: labour, hours: hours, days: days, present: 1, slices: make([]float64, len(f.count))}
	n := float64(len(f.factor))
	if at != nil {
		s.present = float64(len(at)) / n
	}
	s.work, s.pay = total(hours)/n, total(labour)/n
	s.bySlice(s.cost, f.of)
	for k := range s.slices {
		s.mean += s.slices[k] / n
		s.slices[k] /= max(1, f.count[k])
	}
	return s
}

// plus adds b to a in place, either of which may be nothing.
func plus(a, b []float64) []float64 {
	if a == nil {
		return b
	}
	for i, x := range b {
		a[i] += x
	}
	return a
}

// bySlice adds a column to the sums by slice.
func (s *strand) bySlice(column []float64, of []int32) {
	if s.at == nil {
		for i, x := range column {
			s.slices[of[i]] += x
		}
		return
	}
	for k, x := range column {
		s.slices[of[s.at[k]]] += x
	}
}

func total(xs []float64) float64 {
	var s float64
	for _, x := range xs {
		s += x
	}
	return s
}

// addTo adds one of the strand's columns to a column of all scenarios.
func (s *strand) addTo(sum, column []float64) {
	switch {
	case column == nil:
	case s.at == nil:
		for i, x := range column {
			sum[i] += x
		}
	default:
		for k, i := range s.at {
			sum[i] += column[k]
		}
	}
}

// raise lifts a column of all scenarios to the strand's days where those are more.
func (s *strand) raise(most []float64) {
	switch {
	case s.days == nil:
	case s.at == nil:
		for i, x := range s.days {
			most[i] = max(most[i], x)
		}
	default:
		for k, i := range s.at {
			most[i] = max(most[i], s.days[k])
		}
	}
}

// dot returns the sum of the strand's cost times d over all scenarios, by fours, so that no addition waits for the one before it.
func (s *strand) dot(d []float64) float64 {
	column := s.cost
	var sum [4]float64
	n := len(column) &^ 3
	if s.at == nil {
		d = d[:len(column)]
		for i := 0; i < n; i += 4 {
			sum[0] += column[i] * d[i]
			sum[1] += column[i+1] * d[i+1]
			sum[2] += column[i+2] * d[i+2]
			sum[3] += column[i+3] * d[i+3]
		}
		for i, x := range column[n:] {
			sum[0] += x * d[n+i]
		}
		return sum[0] + sum[1] + sum[2] + sum[3]
	}
	for k, x := range column {
		sum[k&3] += x * d[s.at[k]]
	}
	return sum[0] + sum[1] + sum[2] + sum[3]
}

// line returns a repair line as drawn.
func (m *Memory) line(l repair.Line, lot *Lot, f *frame, player *repair.Player) *strand {
	key := memory.Of("line", unnamedLine(l), lot.N, lot.Seed, lot.Loading, lot.Rates, lot.Time.HoldingPerDay, lot.Spreads, f.moved,
		player.Brought(l))
	return m.strands.Recall(key, func() (*strand, int) {
		out := player.Draw(l)
		s := newStrand(out.At, out.Cash, out.Labour, out.Hours, out.Lead, f)
		return s, s.size()
	})
}

// unnamedLine and unnamedRisk leave only what is drawn from: what work is called and why it is there is no part of it.
func unnamedLine(l repair.Line) repair.Line {
	l.Job, l.Area, l.Operation, l.Why, l.Caution, l.Edited = "", "", "", "", "", false
	return l
}

func unnamedRisk(r hidden.Risk) hidden.Risk {
	r.Name, r.Why, r.Caution, r.Findings, r.Chance, r.Brings = "", "", "", nil, hidden.Beta{}, nil
	return r
}

// there returns how the k-th risk is drawn.
func (l *Lot) there(k int) hidden.There {
	if l.Belief == nil {
		return hidden.There{Chance: l.Chances[k]}
	}
	return l.Belief.There(k)
}

// risk returns a hidden risk as drawn at those chances.
func (m *Memory) risk(r hidden.Risk, chance hidden.There, lot *Lot, f *frame, ratios map[string][]float64) *strand {
	key := memory.Of("risk", unnamedRisk(r), chance, lot.N, lot.Seed, lot.Loading, lot.Rates, lot.Spreads, f.moved)
	return m.strands.Recall(key, func() (*strand, int) {
		out := r.Draw(chance, hidden.Setting{Draws: f.draws, Factor: f.factor, Loading: lot.Loading, Rates: lot.Rates, Ratios: ratios})
		s := newStrand(out.At, out.Cash, out.Labour, out.Hours, out.Days, f)
		return s, s.size()
	})
}

// column returns one quantity that leans on nothing, as drawn.
func (m *Memory) column(name string, t prob.Three, lot *Lot, f *frame) []float64 {
	if t.Sure() {
		c := make([]float64, lot.N)
		for i := range c {
			c[i] = t.Low
		}
		return c
	}
	s := m.strands.Recall(memory.Of("column", name, t, lot.N, lot.Seed), func() (*strand, int) {
		c := make([]float64, lot.N)
		f.draws.Column(name, c)
		table := t.Score()
		for i, z := range c {
			c[i] = table.At(z)
		}
		return &strand{cost: c}, lot.N * floatSize
	})
	return s.cost
}
