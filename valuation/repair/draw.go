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

// scale multiplies the values of the scenarios of at (all when nil) by the ratio of that kind.
func (r Ratios) scale(kind string, at []int32, values []float64) {
	ratio := r[kind]
	if ratio == nil {
		return
	}
	for k := range values {
		i := k
		if at != nil {
			i = int(at[k])
		}
		values[k] *= ratio[i]
	}
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
	cash, labour, hours, lead column
	work                      []float64
	lists                     [4][]int32
	id                        string
	lean                      prob.Lean
	at                        []int32 // scenarios in which the line is needed; nil: all
	calls                     map[*Need][]bool

	// There holds the scenarios in which each hidden risk is there, by its id, for the lines that it brings along.
	There map[string][]int32
}

// column is one figure of a line in every scenario, nothing before the line is played.
type column struct {
	v    []float64
	some bool // it is not nothing throughout
}

// NewPlayer returns a player of lines in that setting.
func NewPlayer(s Setting) *Player {
	n := s.Draws.Len()
	col := func() column { return column{v: make([]float64, n)} }
	p := &Player{Setting: s, cash: col(), labour: col(), hours: col(), lead: col(), work: make([]float64, n),
		calls: map[*Need][]bool{}, There: map[string][]int32{}}
	for i := range p.lists {
		p.lists[i] = make([]int32, n)
	}
	return p
}

// Draw plays one line out. Random: streams named by the line's id. Limits: the line has passed the case's checks.
func (l Line) Draw(s Setting) Outcome { return NewPlayer(s).Draw(l) }

// Draw plays a line out. Random and limits: as [Line.Draw].
func (p *Player) Draw(l Line) Outcome {
	p.at = nil
	if l.Needs != nil {
		p.at = p.needed(l.Needs)
	}
	p.id = l.ID
	p.lean = prob.Lean{Factor: p.Factor, Rho: Or(l.Loading, p.Loading)}
	if chance := Or(l.Chance, 1); chance < 1 && l.Needs == nil {
		needed, _ := p.split("need", chance, p.lean, nil, 0)
		p.at = slices.Clone(needed)
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
	return Outcome{p.at, p.cash.take(p.at), p.labour.take(p.at), p.hours.take(p.at), p.lead.take(p.at)}
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

// take returns the figures of those scenarios (all when nil), nil where they are nothing, and clears the column.
func (c *column) take(at []int32) []float64 {
	if !c.some {
		return nil
	}
	c.some = false
	if at == nil {
		kept := c.v
		c.v = make([]float64, len(kept))
		return kept
	}
	kept := make([]float64, len(at))
	for k, i := range at {
		kept[k] = c.v[i]
	}
	clear(c.v)
	return kept
}

// add adds scale times the values to the scenarios of at (all when nil).
func (c *column) add(at []int32, values []float64, scale float64) {
	c.some = c.some || len(values) > 0
	if at == nil {
		for i, x := range values {
			c.v[i] += x * scale
		}
		return
	}
	for k, i := range at[:len(values)] {
		c.v[i] += values[k] * scale
	}
}

// raise lifts the scenarios of at (all when nil) to the values that are more.
func (c *column) raise(at []int32, values []float64) {
	c.some = c.some || len(values) > 0
	if at == nil {
		for i, x := range values {
			c.v[i] = max(c.v[i], x)
		}
		return
	}
	for k, i := range at[:len(values)] {
		c.v[i] = max(c.v[i], values[k])
	}
}

// values returns t in every scenario of at (all when nil) at the ratio of its kind, nothing where t is nothing. It is good
// until the next call.
func (p *Player) values(name, kind string, t prob.Three, lean prob.Lean, at []int32) []float64 {
	n := len(at)
	if at == nil {
		n = len(p.work)
	}
	values := p.work[:n]
	switch {
	case t.Zero() || n == 0:
		return nil
	case t.Sure():
		for k := range values {
			values[k] = t.Low
		}
	default:
		stream := p.Draws.Stream(p.id + "/" + name)
		stream.Values(t.Score(), lean, at, values)
	}
	p.Ratios.scale(kind, at, values)
	return values
}

// spend books money of a kind that [Ratios] may know.
func (p *Player) spend(name, kind string, t prob.Three, at []int32) {
	p.cash.add(at, p.values(name, kind, t, p.lean, at), 1)
}

// spell books own hours of a trade.
func (p *Player) spell(name string, t prob.Three, trade string, at []int32) {
	hours := p.values(name, "hours/"+trade, t, p.lean, at)
	p.hours.add(at, hours, 1)
	p.labour.add(at, hours, p.Rates[trade])
}

// wait lengthens the line's lead time to that of a critical part.
func (p *Player) wait(name string, t prob.Three, critical bool, at []int32) {
	if critical {
		p.lead.raise(at, p.values(name+"/lead", "", t, prob.Lean{}, at))
	}
}

// split parts the scenarios of at by whether an event of that chance comes about, into the player's lists 2 x pair and after.
func (p *Player) split(name string, chance float64, lean prob.Lean, at []int32, pair int) (yes, no []int32) {
	stream := p.Draws.Stream(p.id + "/" + name)
	return stream.Split(chance, lean, at, p.work, p.lists[2*pair], p.lists[2*pair+1])
}

// part plays one part: its options in order of expected cost, then its fallback.
func (p *Player) part(name string, part Part, chief string) {
	critical := part.Critical == nil || *part.Critical
	open := p.at
	for turn, j := range part.Order(p.Rates[chief], p.HoldingPerDay) {
		o, at := part.Options[j], fmt.Sprintf("%s/option/%d", name, j)
		taken, chance := open, Or(o.Chance, 1)
		if chance < 1 {
			taken, open = p.split(at, chance, prob.Lean{}, open, turn%2)
		}
		p.spend(at+"/price", o.kind(), o.Asked(), taken)
		p.spend(at+"/freight", o.kind(), o.Freight, taken)
		p.cash.add(taken, p.values(at+"/core", "", o.CoreBack, prob.Lean{}, taken), -1)
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
	if o.Given() {
		return ""
	}
	return "parts/" + o.Source
}

// Order returns the positions of the options that are tried, in the order that costs least in the mean: the cheapest first, and none
// that costs more than the fallback, which is always to be had. What costs the same keeps its order. A quote stands in place of the
// options of its source that were not quoted: what somebody offered beats a starter value. Of a part in hand that alone is taken.
// Units: rate is money an own hour, holding is money a day.
func (p Part) Order(rate, holding float64) []int {
	if p.Critical != nil && !*p.Critical {
		holding = 0
	}
	if i := slices.IndexFunc(p.Options, Option.inHand); i >= 0 {
		return []int{i}
	}
	var order []int
	cost := make([]float64, len(p.Options))
	for i, o := range p.Options {
		cost[i] = o.Asked().Mean() + o.Freight.Mean() - o.CoreBack.Mean() + o.ExtraHours.Mean()*rate + o.LeadDays.Mean()*holding
		if (o.Given() || !p.quoted(o.Source)) && (p.Fallback == nil || cost[i] <= p.Fallback.cost(rate, holding)) {
			order = append(order, i)
		}
	}
	sort.SliceStable(order, func(a, b int) bool { return cost[order[a]] < cost[order[b]] })
	return order
}

func (f Fallback) cost(rate, holding float64) float64 {
	return f.Price.Mean() + f.Hours.Mean()*rate + f.LeadDays.Mean()*holding
}

// quoted reports whether one of the options of that source was quoted.
func (p Part) quoted(source string) bool {
	return slices.ContainsFunc(p.Options, func(o Option) bool { return o.Source == source && o.Given() })
}
