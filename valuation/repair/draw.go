package repair

import (
	"fmt"
	"sort"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Setting is what all lines of a case share when they are played out.
type Setting struct {
	Draws         *prob.Draws
	Factor        []float64          // the lot's common factor, one score a scenario
	Loading       float64            // of lines that name none
	Rates         map[string]float64 // money an own hour, by trade
	HoldingPerDay float64
}

// Outcome is one line over all scenarios. Shape: each column has one value a scenario.
type Outcome struct {
	Cash   []float64 // parts, materials, outside work
	Labour []float64 // own hours at their rates
	Hours  []float64
	Lead   []float64 // days until the last critical part is here
}

func newOutcome(n int) Outcome {
	col := func() []float64 { return make([]float64, n) }
	return Outcome{col(), col(), col(), col()}
}

// player plays one line: the outcome so far and a column to work in.
type player struct {
	Setting
	id      string
	loading float64
	out     Outcome
	col     []float64
}

// Draw plays the line out. Random: streams named by the line's id. Limits: the line has passed Check.
func (l Line) Draw(s Setting) Outcome {
	n := s.Draws.Len()
	p := player{Setting: s, id: l.ID, loading: Or(l.Loading, s.Loading), out: newOutcome(n), col: make([]float64, n)}
	for _, trade := range lot.Trades {
		if h, ok := l.Hours[trade]; ok {
			p.hours("hours/"+trade, h, s.Rates[trade], nil)
		}
	}
	p.spend("materials", l.Materials, nil)
	p.spend("outside", l.Outside, nil)
	for i, part := range l.Parts {
		p.part(fmt.Sprintf("part/%d", i), part, s.Rates[l.ChiefTrade()])
	}
	p.need(Or(l.Chance, 1))
	return p.out
}

// Or returns the value that v points to, or the default.
func Or(v *float64, otherwise float64) float64 {
	if v == nil {
		return otherwise
	}
	return *v
}

// ChiefTrade returns the trade with the most hours, body when the line has none.
func (l Line) ChiefTrade() string {
	chief, most := "body", 0.0
	for _, trade := range lot.Trades {
		if h := l.Hours[trade].Mean(); h > most {
			chief, most = trade, h
		}
	}
	return chief
}

// score fills the working column with the stream of that name, leaning on the common factor.
func (p *player) score(name string, loading float64) {
	p.Draws.Column(p.id+"/"+name, p.col)
	prob.Loaded(p.col, p.Factor, loading)
}

// each calls f with the value of t in every scenario of mask (all when nil).
func (p *player) each(name string, t prob.Three, loading float64, mask []bool, f func(i int, x float64)) {
	if t.Zero() {
		return
	}
	if t.Sure() {
		for i := range p.col {
			if mask == nil || mask[i] {
				f(i, t.Low)
			}
		}
		return
	}
	table := t.Score()
	p.score(name, loading)
	for i, z := range p.col {
		if mask == nil || mask[i] {
			f(i, table.At(z))
		}
	}
}

func (p *player) spend(name string, t prob.Three, mask []bool) {
	p.each(name, t, p.loading, mask, func(i int, x float64) { p.out.Cash[i] += x })
}

func (p *player) hours(name string, t prob.Three, rate float64, mask []bool) {
	p.each(name, t, p.loading, mask, func(i int, x float64) {
		p.out.Hours[i] += x
		p.out.Labour[i] += x * rate
	})
}

// part plays one part: its options in order of expected cost, then its fallback.
func (p *player) part(name string, part Part, rate float64) {
	n := len(p.col)
	open, taken := make([]bool, n), make([]bool, n)
	for i := range open {
		open[i] = true
	}
	critical := part.Critical == nil || *part.Critical
	for _, j := range part.Order(rate, p.HoldingPerDay) {
		o, at := part.Options[j], fmt.Sprintf("%s/option/%d", name, j)
		p.available(at, Or(o.Chance, 1), open, taken)
		p.spend(at+"/price", o.Price, taken)
		p.spend(at+"/freight", o.Freight, taken)
		p.each(at+"/core", o.CoreBack, 0, taken, func(i int, x float64) { p.out.Cash[i] -= x })
		p.hours(at+"/hours", o.ExtraHours, rate, taken)
		p.lead(at, o.LeadDays, critical, taken)
	}
	if f := part.Fallback; f != nil {
		p.spend(name+"/fallback/price", f.Price, open)
		p.hours(name+"/fallback/hours", f.Hours, rate, open)
		p.lead(name+"/fallback", f.LeadDays, critical, open)
	}
}

// available marks in taken the scenarios in which an option of that chance is had, and closes them in open.
func (p *player) available(name string, chance float64, open, taken []bool) {
	if chance >= 1 {
		copy(taken, open)
		clear(open)
		return
	}
	p.score(name, 0)
	edge := prob.Edge(chance)
	for i, z := range p.col {
		taken[i] = open[i] && z > edge
		open[i] = open[i] && !taken[i]
	}
}

func (p *player) lead(name string, t prob.Three, critical bool, mask []bool) {
	if critical {
		p.each(name+"/lead", t, 0, mask, func(i int, x float64) { p.out.Lead[i] = max(p.out.Lead[i], x) })
	}
}

// need takes the line out of the scenarios in which the work turns out not to be needed.
func (p *player) need(chance float64) {
	if chance >= 1 {
		return
	}
	p.score("need", p.loading)
	edge := prob.Edge(chance)
	for i, z := range p.col {
		if z <= edge {
			p.out.Cash[i], p.out.Labour[i], p.out.Hours[i], p.out.Lead[i] = 0, 0, 0, 0
		}
	}
}

// Order returns the positions of the part's options from the best to the worst by expected cost.
// Units: rate is money an own hour, holding is money a day.
func (p Part) Order(rate, holding float64) []int {
	order := make([]int, len(p.Options))
	cost := make([]float64, len(p.Options))
	for i, o := range p.Options {
		order[i] = i
		cost[i] = o.Price.Mean() + o.Freight.Mean() - o.CoreBack.Mean() + o.ExtraHours.Mean()*rate + o.LeadDays.Mean()*holding
	}
	sort.SliceStable(order, func(a, b int) bool { return cost[order[a]] < cost[order[b]] })
	return order
}
