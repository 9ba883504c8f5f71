package sale

import (
	"math"
	"sort"

	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Plan is the policy of a sale, worked out. It may be used by one goroutine at a time.
type Plan struct {
	sale   Sale
	offers []offer
	value  values
	exact  *exact // nil where the grid stands in
}

// New works the policy of a sale out. Limits: the sale has passed Check; what is left may lie below zero.
func New(s Sale) *Plan {
	p := layOut(s)
	effort := s.Effort
	if effort == 0 {
		effort = usualEffort
	}
	start := p.start()
	e := newExact(p.offers, max(0, p.reserve().bays), effort)
	for _, more := range append(extras(s.Currency), state{}) {
		e.at(0, start.plus(more))
	}
	if e.over() {
		p.value = newGrid(p.offers, p.reserve())
		return p
	}
	p.value, p.exact = e, e
	return p
}

// layOut returns a plan without values.
func layOut(s Sale) *Plan {
	p := &Plan{sale: s, offers: make([]offer, len(s.Lots))}
	for i, l := range s.Lots {
		p.offers[i] = newOffer(l, s.Later, s.Currency)
		cash, bays := s.between(l.Day, s.Lots[len(s.Lots)-1].Day)
		p.offers[i].owed, p.offers[i].bound = int64(cash), bays
	}
	return p
}

// between returns the cash that comes in and the bays that come free after a day, up to another.
func (s Sale) between(day, last lot.Date) (cash money.Amount, bays int) {
	for _, in := range s.In {
		if in.Day > day && in.Day <= last {
			cash += in.Amount
		}
	}
	for _, f := range s.Freed {
		if f.Day > day && f.Day <= last {
			bays += f.Bays
		}
	}
	return cash, bays
}

// InHand returns what there is when the first lot to come runs.
func (s Sale) InHand() Purse {
	if len(s.Lots) == 0 {
		return s.Purse
	}
	cash, bays := s.between("", s.Lots[0].Day)
	return Purse{s.Cash + cash, s.Hours, s.Bays + bays}
}

// start returns the state before the first lot.
func (p *Plan) start() state {
	return p.state(0, p.sale.InHand())
}

// state returns what is left before a lot as the values have it: with what comes in later.
func (p *Plan) state(lot int, left Purse) state {
	s := state{int64(left.Cash), ticks(left.Hours), left.Bays}
	if lot < len(p.offers) {
		s.cash, s.bays = s.cash+p.offers[lot].owed, s.bays+p.offers[lot].bound
	}
	return s
}

// purse returns what is in hand before a lot.
func (p *Plan) purse(lot int, s state) Purse {
	return Purse{money.Amount(s.cash - p.offers[lot].owed), fromTicks(s.hours), s.bays - p.offers[lot].bound}
}

// extras are a thousand of cash, ten hours and a bay.
func extras(cur money.Currency) []state {
	return []state{{cash: int64(cur.FromMajor(1000))}, {hours: ticks(10)}, {bays: 1}}
}

func (s state) plus(more state) state {
	return state{s.cash + more.cash, s.hours + more.hours, s.bays + more.bays}
}

// reserve returns what there is, with every extra.
func (p *Plan) reserve() state {
	s := p.start()
	for _, more := range extras(p.sale.Currency) {
		s = s.plus(more)
	}
	return s
}

// Exact reports whether the values are worked out to the cent.
func (p *Plan) Exact() bool { return p.exact != nil }

// Stop returns today's bid on a lot with that much left before it.
func (p *Plan) Stop(lot int, left Purse) (money.Amount, bool) {
	n := p.stop(lot, p.state(lot, left))
	if n == 0 {
		return 0, false
	}
	return p.offers[lot].bids[n-1], true
}

// stop returns how many of the legal bids are won under the best bid. Of bids worth the same it is the highest at which winning
// pays, 0 where there is none.
func (p *Plan) stop(i int, s state) int {
	o := &p.offers[i]
	n := o.affordable(s)
	if n == 0 {
		return 0
	}
	base := p.value.at(i+1, s)
	slack := 1e-9 * (1 + math.Abs(base))
	pays := func(k int) float64 { return o.gain[k] + p.value.at(i+1, s.after(o, k)) - base }
	sum, top, stop := 0.0, 0.0, 0
	for k := o.first; k < min(n, o.last); k++ {
		g := pays(k)
		sum += o.chance[k] * g
		if g > slack && sum >= top-slack {
			stop = k + 1
		}
		top = max(top, sum)
	}
	if sum >= top-slack { // prices above those that can come add nothing
		for k := n - 1; k >= max(o.last, stop); k-- {
			if pays(k) > slack {
				return k + 1
			}
		}
	}
	if stop == 0 && top <= slack { // and so do those below
		for k := min(n, o.first) - 1; k >= 0; k-- {
			if pays(k) > slack {
				return k + 1
			}
		}
	}
	return stop
}

// Follow returns the mean sum of profits that a policy brings from here, over every course the sale can take. It looks at each
// of them: for small sales. A policy's bid beyond what cash, hours, bays or the walk-away bid allow is lowered to that.
func (p *Plan) Follow(policy Policy) float64 {
	return (&follower{p, policy, make([]map[state]float64, len(p.offers))}).at(0, p.start())
}

// follower works a policy's value out over the states that it reaches.
type follower struct {
	plan   *Plan
	policy Policy
	known  []map[state]float64
}

func (f *follower) at(i int, s state) float64 {
	if i == len(f.plan.offers) {
		return 0
	}
	if f.known[i] == nil {
		f.known[i] = map[state]float64{}
	}
	v, known := f.known[i][s]
	if known {
		return v
	}
	o := &f.plan.offers[i]
	base := f.at(i+1, s)
	v = base
	for k := range f.plan.count(f.policy, i, s) {
		if o.chance[k] > 0 {
			v += o.chance[k] * (o.gain[k] + f.at(i+1, s.after(o, k)) - base)
		}
	}
	f.known[i][s] = v
	return v
}

// count returns how many legal bids a policy's bid wins, within what the state allows.
func (p *Plan) count(policy Policy, i int, s state) int {
	o := &p.offers[i]
	bid, ok := policy.Stop(i, p.purse(i, s))
	if !ok {
		return 0
	}
	return min(o.affordable(s), sort.Search(len(o.bids), func(k int) bool { return o.bids[k] > bid }))
}
