package scenario

import (
	"walkline/valuation/hidden"
	"walkline/valuation/memory"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// strand is one line or risk as drawn, and what is read off it alone. A column that is nothing throughout is nil.
type strand struct {
	at                  []int32 // the scenarios in which it is there; nil: all of them
	cash, labour, hours []float64
	days                []float64 // lead time of a line, days that a risk adds
	cost, work          float64   // means over all scenarios of money and hours
	present             float64   // share of the scenarios
	slices              []float64 // mean cost in each slice of the common factor
}

// floatSize and indexSize are the sizes of a figure and of a position in bytes.
const floatSize, indexSize = 8, 4

// size returns the bytes that the strand holds.
func (s *strand) size() int {
	n := len(s.cash) + len(s.labour) + len(s.hours) + len(s.days) + len(s.slices)
	return n*floatSize + len(s.at)*indexSize
}

// newStrand keeps of the drawn columns what is not nothing.
func newStrand(cash, labour, hours, days []float64, f *frame) *strand {
	s := &strand{at: there(cash, labour, hours, days)}
	n := float64(len(cash))
	s.present = 1
	if s.at != nil {
		s.present = float64(len(s.at)) / n
	}
	s.cash, s.labour, s.hours, s.days = s.keep(cash), s.keep(labour), s.keep(hours), s.keep(days)
	s.work = total(s.hours) / n
	s.slices = make([]float64, len(f.count))
	s.each(len(cash), func(i int, cost float64) { s.slices[f.of[i]] += cost })
	for k := range s.slices {
		s.cost += s.slices[k] / n
		s.slices[k] /= max(1, f.count[k])
	}
	return s
}

// there returns the scenarios in which anything is not nothing, nil when that is at least most of them.
func there(columns ...[]float64) []int32 {
	n := len(columns[0])
	at := make([]int32, 0, n)
	for i := range n {
		for _, c := range columns {
			if c[i] != 0 {
				at = append(at, int32(i))
				break
			}
		}
	}
	if len(at) > n*sparse/100 {
		return nil
	}
	return append([]int32(nil), at...)
}

// sparse is the percentage of the scenarios up to which positions are kept beside the figures.
const sparse = 85

// keep returns the part of a column that the strand keeps.
func (s *strand) keep(column []float64) []float64 {
	some := false
	for _, x := range column {
		if x != 0 {
			some = true
			break
		}
	}
	switch {
	case !some:
		return nil
	case s.at == nil:
		return column
	}
	kept := make([]float64, len(s.at))
	for k, i := range s.at {
		kept[k] = column[i]
	}
	return kept
}

func total(xs []float64) float64 {
	var s float64
	for _, x := range xs {
		s += x
	}
	return s
}

// each calls f with every scenario of n in which the strand is there, and its cost in it.
func (s *strand) each(n int, f func(i int, cost float64)) {
	cost := func(k int) (c float64) {
		if s.cash != nil {
			c = s.cash[k]
		}
		if s.labour != nil {
			c += s.labour[k]
		}
		return c
	}
	if s.at == nil {
		for i := range n {
			f(i, cost(i))
		}
		return
	}
	for k, i := range s.at {
		f(int(i), cost(k))
	}
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

// dot returns the sum of the strand's cost times d over all scenarios.
func (s *strand) dot(d []float64) float64 {
	return s.along(s.cash, d) + s.along(s.labour, d)
}

func (s *strand) along(column, d []float64) (sum float64) {
	switch {
	case column == nil:
	case s.at == nil:
		for i, x := range column {
			sum += x * d[i]
		}
	default:
		for k, i := range s.at {
			sum += column[k] * d[i]
		}
	}
	return sum
}

// line returns a repair line as drawn. What the line is called and why it is there is no part of its draws.
func (m *Memory) line(l repair.Line, lot *Lot, f *frame) *strand {
	content := l
	content.Job, content.Area, content.Operation, content.Why, content.Caution, content.Edited = "", "", "", "", "", false
	key := memory.Of("line", content, lot.N, lot.Seed, lot.Loading, lot.Rates, lot.Time.HoldingPerDay)
	return m.strands.Recall(key, func() (*strand, int) {
		out := l.Draw(repair.Setting{Draws: f.draws, Factor: f.factor, Loading: lot.Loading, Rates: lot.Rates, HoldingPerDay: lot.Time.HoldingPerDay})
		s := newStrand(out.Cash, out.Labour, out.Hours, out.Lead, f)
		return s, s.size()
	})
}

// risk returns a hidden risk as drawn at that chance.
func (m *Memory) risk(r hidden.Risk, chance float64, lot *Lot, f *frame) *strand {
	content := r
	content.Name, content.Why, content.Caution, content.Findings, content.Chance = "", "", "", nil, hidden.Beta{}
	key := memory.Of("risk", content, chance, lot.N, lot.Seed, lot.Loading, lot.Rates)
	return m.strands.Recall(key, func() (*strand, int) {
		out := r.Draw(chance, hidden.Setting{Draws: f.draws, Factor: f.factor, Loading: lot.Loading, Rates: lot.Rates})
		s := newStrand(out.Cash, out.Labour, out.Hours, out.Days, f)
		s.present = float64(out.Present) / float64(lot.N)
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
		return &strand{cash: c}, lot.N * floatSize
	})
	return s.cash
}
