package scenario

import (
	"math"

	"walkline/valuation/memory"
	"walkline/valuation/prob"
)

// ratios returns the lot's factors by kind, one a scenario; nil where there is no spread. Random: streams "lot/ratio/...".
func (m *Memory) ratios(l *Lot, f *frame) map[string][]float64 {
	if len(l.Spreads) == 0 {
		return nil
	}
	out := map[string][]float64{}
	for kind, sd := range l.Spreads {
		if sd > 0 {
			out[kind] = m.ratio(kind, sd, l, f)
		}
	}
	return out
}

// ratio returns one kind's factors: lognormal with median 1, leaning on the column "lot/ratio" that all kinds share.
func (m *Memory) ratio(kind string, sd float64, l *Lot, f *frame) []float64 {
	loading := l.Loading
	if kind == "days_to_sell" {
		loading = 0
	}
	s := m.strands.Recall(memory.Of("ratio", kind, sd, loading, l.N, l.Seed), func() (*strand, int) {
		c := make([]float64, l.N)
		f.draws.Column("lot/ratio/"+kind, c)
		if loading > 0 {
			shared := make([]float64, l.N)
			f.draws.Column("lot/ratio", shared)
			prob.Loaded(c, shared, loading)
		}
		for i, z := range c {
			c[i] = math.Exp(sd * z)
		}
		return &strand{cost: c}, l.N * floatSize
	})
	return s.cost
}

// times returns the columns multiplied.
func times(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for i, x := range a {
		out[i] = x * b[i]
	}
	return out
}
