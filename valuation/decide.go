package valuation

import (
	"math"

	"walkline/valuation/bid"
	"walkline/valuation/checks"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/scenario"
	"walkline/valuation/ways"
)

// option is one plan with its walk-away bid.
type option struct {
	name    string
	problem bid.Problem
	found   bid.Answer
	stopped bool // no bid may be made on this plan whatever it brings
}

// walk returns the plan's walk-away bid; nil: do not bid.
func (o option) walk() *money.Amount {
	if o.stopped {
		return nil
	}
	return o.found.Bid
}

// stopping is the option to stop in the rebuild plan.
type stopping struct {
	way    string // that stopping leads to; empty: no way out has money, or the option is off
	choice ways.Choice
	plain  bid.Answer  // without the option
	worse  *bid.Answer // with it, where that lowers the bid and no stop is planned; nil elsewhere
	taken  bool        // some scenario stops, and no bid is lost by it
}

// decide prices every plan and takes the one with the highest bid, the first of those alike.
func (w *work) decide(m *Memory) {
	scene := w.scene()
	w.grows = w.growing()
	w.finish = w.pose(ways.Whole(w.played))
	w.finish.Grown = w.related(w.grown(m, scene))
	out := w.wayColumns(m, scene)
	w.rebuilt = option{name: Rebuild, stopped: w.forbidden(Rebuild)}
	w.rebuilt.problem, w.rebuilt.found = w.rebuild(m, scene, out)
	for _, plan := range w.c.Priced() {
		o := w.rebuilt
		if plan != Rebuild {
			o = option{name: plan, stopped: w.forbidden(plan), problem: w.alone(out[plan], plan)}
			o.found = bid.Find(&o.problem)
		}
		w.options = append(w.options, o)
	}
	w.best = best(w.options)
	w.problem, w.found = w.options[w.best].problem, w.options[w.best].found
}

// best returns the position of the highest bid, the first of those alike; the first where no plan has one.
func best(options []option) int {
	at := 0
	for i, o := range options {
		if b := o.walk(); b != nil && (options[at].walk() == nil || *b > *options[at].walk()) {
			at = i
		}
	}
	return at
}

// forbidden reports whether a stop stands against a plan: a title that forbids the road stands against the rebuild alone.
func (w *work) forbidden(plan string) bool {
	for _, i := range w.items {
		if i.Kind == "stop" && (plan == Rebuild || !checks.RoadOnly(i)) {
			return true
		}
	}
	return false
}

// wayColumns returns the ways out as drawn, by name. Random: the columns "way/NAME/hours" and "way/NAME/days".
func (w *work) wayColumns(m *Memory, l scenario.Lot) map[string]ways.Way {
	out := map[string]ways.Way{}
	for _, x := range w.c.ways() {
		out[x.name] = ways.Way{Name: x.name, Money: x.money.Mean(), Rate: x.rate, MeanHours: x.hours.Mean(), MeanDays: x.days.Mean(),
			Hours: w.drawn(m, l, "way/"+x.name+"/hours", x.hours), Days: w.drawn(m, l, "way/"+x.name+"/days", x.days)}
	}
	return out
}

// rebuild returns the question of the rebuild plan and its answer: with the option to stop where that is no worse.
func (w *work) rebuild(m *Memory, l scenario.Lot, out map[string]ways.Way) (bid.Problem, bid.Answer) {
	w.common(&w.finish)
	found := bid.Find(&w.finish)
	w.stops.plain = found
	if !w.c.WaysOut.Stop || len(out) == 0 {
		return w.finish, found
	}
	lot := w.stripped(m, l, out)
	w.stops.way, w.stops.choice = lot.Way.Name, w.choose(lot)
	if w.stops.choice.Chance == 0 {
		return w.finish, found
	}
	p := w.pose(lot.Stop(w.played, w.stops.choice))
	p.Grown, p.At = w.finish.Grown, w.stops.choice.Stops
	for _, x := range w.c.ways() {
		if x.name == lot.Way.Name {
			p.Ways = []prob.Table{x.money.Table()}
		}
	}
	w.common(&p)
	stopping := bid.Find(&p)
	if amount(stopping.Bid) < amount(found.Bid) {
		w.stops.worse = &stopping
		return w.finish, found
	}
	w.stops.taken = true
	return p, stopping
}

// stripped returns what the choice at the strip-down is made for. Random: the columns "strip/hours" and "strip/days".
func (w *work) stripped(m *Memory, l scenario.Lot, out map[string]ways.Way) ways.Lot {
	c := w.c
	var all []ways.Way
	for _, x := range c.ways() {
		all = append(all, out[x.name])
	}
	s := c.WaysOut.Strip
	if w.parts == nil {
		w.strip = m.scenes.Strip(l, w.played)
	}
	return ways.Lot{Stripped: w.strip, Holding: c.Time.HoldingPerDay, Way: all[ways.Best(all, c.Time.HoldingPerDay)],
		Strip: ways.Way{Hours: w.drawn(m, l, "strip/hours", s.Hours), Days: w.drawn(m, l, "strip/days", s.Days), Rate: c.ownRate(s.Trade),
			MeanHours: s.Hours.Mean(), MeanDays: s.Days.Mean()},
		Sale: ways.Sale{Price: w.market.table.Mean(), Percent: c.Selling.Percent, Flat: c.Selling.fixed(), Multiple: w.grows.multiple}}
}

// choose returns where the buyer stops: with several surveys each is known by then.
func (w *work) choose(l ways.Lot) ways.Choice {
	if w.parts == nil {
		return l.Choose()
	}
	var all ways.Choice
	w.spans(func(p part, _, _ int) {
		l.Stripped, l.Sale.Price = p.strip, p.market.table.Mean()
		one := l.Choose()
		all.Stops = append(all.Stops, one.Stops...)
		all.Chance += one.Chance / guessUnits
		all.Line += one.Line / guessUnits
	})
	return all
}

// alone returns the question of a plan without a rebuild: no strip-down, no allowance.
func (w *work) alone(by ways.Way, plan string) bid.Problem {
	p := w.pose(by.Alone(w.played, w.c.Time.HoldingPerDay))
	p.SellPercent, p.SellFlat = 0, 0
	for _, x := range w.c.ways() {
		if x.name == plan {
			p.Resale = x.money.Table()
		}
	}
	return p
}

// amount returns a bid, nothing where there is none.
func amount(b *money.Amount) money.Amount {
	if b == nil {
		return 0
	}
	return *b
}

// pose puts the scenarios' columns, the price and the terms together as the question of the bid.
func (w *work) pose(o ways.Columns) bid.Problem {
	c := w.c
	return bid.Problem{
		Cost: o.Cost, Days: o.Days, Cash: o.Cash, Hours: o.Hours, Labour: o.Labour,
		Resale: w.market.table, SellPercent: c.Selling.Percent, SellFlat: c.Selling.fixed(), CapitalRate: c.Time.CapitalRate,
		Terms: c.Buying.Terms, Steps: c.Buying.BidSteps, Currency: w.currency, Rules: c.Rules,
	}
}

// common puts to a question what the bidders' common doubt takes: the allowance, and what winning draws the doubt in by.
// The doubt lies in the level of prices and in the lot's common factor; s is the standard deviation, over both, of the mean value of
// the plan, and the error of one bidder's own is that times the own share k. Source: Milgrom and Weber 1982: the allowance is
// c(n) k s; of the variance 1 - k^2 (1 - v(n)) is left.
func (w *work) common(p *bid.Problem) {
	n := w.c.Market.rivals() + 1
	if !w.c.Run.WinnersAllowance || n < 2 {
		return
	}
	k := w.c.OwnShare()
	level, factor, survey, off := w.doubt(p)
	p.Allowance = prob.WinnersConstant(n) * math.Sqrt(k*k*(level*level+factor)+survey)
	if !w.c.Market.Narrowing {
		return
	}
	left := 1 - k*k*(1-prob.WinnersVariance(n))
	for i := range off {
		off[i] *= 1 - math.Sqrt(left)
	}
	p.Drawn = off
	if sd := p.Resale.SD(); sd > 0 {
		part := math.Min(1, w.market.level*w.market.level/(sd*sd))
		p.Resale = p.Resale.Narrowed(math.Sqrt(1 - (1-left)*part))
	}
}

// doubt returns the standard deviation that the level of prices puts to the mean value of a plan, the variance that the common factor
// does and the one that a survey does which only the others know, and by how much each scenario's factor lifts the mean value.
func (w *work) doubt(p *bid.Problem) (level, factor, survey float64, off []float64) {
	kept, worth := make([]float64, len(p.Cost)), make([]float64, len(p.Cost))
	price := p.Resale.Mean()
	for i, cost := range p.Cost {
		k := p.End(i)
		if k > 0 {
			worth[i] = p.Ways[k-1].Mean() - cost
			continue
		}
		kept[i] = p.Multiple(i) * (1 - p.SellPercent)
		worth[i] = price*kept[i] - p.SellFlat - cost
	}
	factor, off = w.played.Shared(worth)
	survey = w.between(worth)
	return w.market.level * math.Sqrt(w.played.Square(kept)), factor, survey, off
}
