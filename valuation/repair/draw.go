package repair

import (
	"fmt"
	"slices"
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
	Ratios        Ratios
}

// Ratios are what the hours of a trade ("hours/body"), the parts of a source ("parts/used"), "materials" and "outside" work
// of the whole lot come to against its lines: one factor a scenario, shared by all lines. A kind that is missing comes to 1.
type Ratios map[string][]float64

// on returns f with its figures times the ratio of that kind.
func (r Ratios) on(kind string, f func(i int32, x float64)) func(i int32, x float64) {
	ratio := r[kind]
	if ratio == nil {
		return f
	}
	return func(i int32, x float64) { f(i, x*ratio[i]) }
}

// Outcome is one line over the scenarios in which it is needed. Shape: each column has one value for each of them, or is
// nil where it is nothing throughout.
type Outcome struct {
	At     []int32   // the scenarios, rising; nil: all of them
	Cash   []float64 // parts, materials, outside work
	Labour []float64 // own hours at their rates
	Hours  []float64
	Lead   []float64 // days until the last critical part is here
}

// Player plays lines out, one after another, in the same room. Limits: for one goroutine.
type Player struct {
	Setting
	cash, labour, hours, lead []float64 // of all scenarios, nothing between two lines
	work                      []float64
	id                        string
	lean                      prob.Lean
	at                        []int32 // scenarios in which the line is needed; nil: all
}

// NewPlayer returns a player of lines in that setting.
func NewPlayer(s Setting) *Player {
	n := s.Draws.Len()
	col := func() []float64 { return make([]float64, n) }
	return &Player{Setting: s, cash: col(), labour: col(), hours: col(), lead: col(), work: col()}
}

// Draw plays one line out. Random: streams named by the line's id. Limits: the line has passed the case's checks.
func (l Line) Draw(s Setting) Outcome { return NewPlayer(s).Draw(l) }

// Draw plays a line out. Random and limits: as [Line.Draw].
func (p *Player) Draw(l Line) Outcome {
	p.id, p.at = l.ID, nil
	p.lean = prob.Lean{Factor: p.Factor, Rho: Or(l.Loading, p.Loading)}
	if chance := Or(l.Chance, 1); chance < 1 {
		p.at = p.happens("need", chance, p.lean, nil)
	}
	for _, trade := range lot.Trades {
		if h, ok := l.Hours[trade]; ok {
			p.spell("hours/"+trade, h, trade, p.at)
		}
	}
	p.spend("materials", "materials", l.Materials, p.at)
	p.spend("outside", "outside", l.Outside, p.at)
	for i, part := range l.Parts {
		p.part(fmt.Sprintf("part/%d", i), part, l.ChiefTrade())
	}
	return Outcome{p.at, p.take(p.cash), p.take(p.labour), p.take(p.hours), p.take(p.lead)}
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

// take returns a column at the line's scenarios and clears it for the next line; nil where it is nothing.
func (p *Player) take(column []float64) []float64 {
	if !slices.ContainsFunc(column, func(x float64) bool { return x != 0 }) {
		return nil
	}
	var kept []float64
	if p.at == nil {
		kept = slices.Clone(column)
	} else {
		kept = make([]float64, len(p.at))
		for k, i := range p.at {
			kept[k] = column[i]
		}
	}
	clear(column)
	return kept
}

// each calls f with the value of t in every scenario of at (all when nil).
func (p *Player) each(name string, t prob.Three, lean prob.Lean, at []int32, f func(i int32, x float64)) {
	n := len(at)
	if at == nil {
		n = len(p.work)
	}
	values := p.work[:n]
	switch {
	case t.Zero() || n == 0:
		return
	case t.Sure():
		for k := range values {
			values[k] = t.Low
		}
	default:
		stream := p.Draws.Stream(p.id + "/" + name)
		stream.Values(t.Score(), lean, at, values)
	}
	if at == nil {
		for i, x := range values {
			f(int32(i), x)
		}
		return
	}
	for k, i := range at {
		f(i, values[k])
	}
}

// spend books money of a kind that [Ratios] may know.
func (p *Player) spend(name, kind string, t prob.Three, at []int32) {
	p.each(name, t, p.lean, at, p.Ratios.on(kind, func(i int32, x float64) { p.cash[i] += x }))
}

// spell books own hours of a trade.
func (p *Player) spell(name string, t prob.Three, trade string, at []int32) {
	rate := p.Rates[trade]
	p.each(name, t, p.lean, at, p.Ratios.on("hours/"+trade, func(i int32, x float64) {
		p.hours[i] += x
		p.labour[i] += x * rate
	}))
}

// wait lengthens the line's lead time to that of a critical part.
func (p *Player) wait(name string, t prob.Three, critical bool, at []int32) {
	if critical {
		p.each(name+"/lead", t, prob.Lean{}, at, func(i int32, x float64) { p.lead[i] = max(p.lead[i], x) })
	}
}

// happens returns those scenarios of at in which an event of that chance comes about.
func (p *Player) happens(name string, chance float64, lean prob.Lean, at []int32) []int32 {
	stream := p.Draws.Stream(p.id + "/" + name)
	return stream.Happens(chance, lean, at, p.work)
}

// part plays one part: its options in order of expected cost, then its fallback.
func (p *Player) part(name string, part Part, chief string) {
	critical := part.Critical == nil || *part.Critical
	open := p.at
	for _, j := range part.Order(p.Rates[chief], p.HoldingPerDay) {
		o, at := part.Options[j], fmt.Sprintf("%s/option/%d", name, j)
		taken, chance := open, Or(o.Chance, 1)
		if chance < 1 {
			taken = p.happens(at, chance, prob.Lean{}, open)
			open = without(open, taken, len(p.work))
		}
		p.spend(at+"/price", o.kind(), o.Price, taken)
		p.spend(at+"/freight", o.kind(), o.Freight, taken)
		p.each(at+"/core", o.CoreBack, prob.Lean{}, taken, func(i int32, x float64) { p.cash[i] -= x })
		p.spell(at+"/hours", o.ExtraHours, chief, taken)
		p.wait(at, o.LeadDays, critical, taken)
		if chance >= 1 {
			return
		}
	}
	if f := part.Fallback; f != nil {
		p.spend(name+"/fallback/price", "", f.Price, open)
		p.spell(name+"/fallback/hours", f.Hours, chief, open)
		p.wait(name+"/fallback", f.LeadDays, critical, open)
	}
}

// kind returns the kind under which [Ratios] know the option's money: none for a price that was quoted.
func (o Option) kind() string {
	if o.Quoted != "" {
		return ""
	}
	return "parts/" + o.Source
}

// without returns the scenarios of open (all n when nil) that are not among taken. Shape: both rise. Never nil.
func without(open, taken []int32, n int) []int32 {
	left := make([]int32, 0, n-len(taken))
	keep := func(i int32) {
		if len(taken) > 0 && taken[0] == i {
			taken = taken[1:]
			return
		}
		left = append(left, i)
	}
	if open == nil {
		for i := range int32(n) {
			keep(i)
		}
	}
	for _, i := range open {
		keep(i)
	}
	return left
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
