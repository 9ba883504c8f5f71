package valuation_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// doubtful is the uncertain case with damage that may make stopping right, and both ways out. Invented.
func doubtful(seed int64, rules bid.Rules) valuation.Case {
	c := uncertain(seed, rules)
	heavy := .5
	c.Hidden.Risks[1] = hidden.Risk{ID: "g", Name: "engine", Chance: hidden.Beta{A: 3, B: 5},
		Cost:  prob.Three{Low: 2500, Likely: 6000, High: 11000},
		Hours: map[string]prob.Three{"body": {Low: 10, Likely: 40, High: 90}}, Days: prob.Three{Low: 5, Likely: 10, High: 30}, Loading: &heavy}
	c.Resale.YearlyChange = &prob.Three{Low: -.2, Likely: -.12, High: -.05}
	stands, parts := prob.Three{Low: 3500, Likely: 4600, High: 6000}, prob.Three{Low: 2500, Likely: 5200, High: 6500}
	c.WaysOut.Strip = valuation.Strip{Hours: prob.Three{Low: 4, Likely: 6, High: 12}, Days: prob.Three{Low: 2, Likely: 4, High: 9}}
	c.WaysOut.AsItStands = valuation.Standing{Money: &stands, Days: prob.Three{Low: 5, Likely: 14, High: 40}}
	c.WaysOut.ForParts = valuation.Parting{Money: &parts, Hours: prob.Three{Low: 15, Likely: 30, High: 60}, Trade: "structure",
		Days: prob.Three{Low: 20, Likely: 50, High: 120}}
	c.Market.Rivals = others(4)
	return c
}

// exitDraws is the size of the plain Monte Carlo of the ways out.
const exitDraws = 300_000

// player draws the doubtful case plainly, from decision.md's words alone: one run after another.
type player struct {
	c      valuation.Case
	rng    *rand.Rand
	tables map[prob.Three]betaTable
	given  map[any][]float64
	price  prob.Table
}

func (p *player) table(t prob.Three) betaTable {
	if _, ok := p.tables[t]; !ok {
		p.tables[t] = newBetaTable(t)
	}
	return p.tables[t]
}

// meanAt returns the mean of a judgement given the factor, from a grid of plain averages.
func (p *player) meanAt(t prob.Three, rho, z float64) float64 {
	type key struct {
		t   prob.Three
		rho float64
	}
	const nodes, inner = 120, 400
	k := key{t, rho}
	if p.given[k] == nil {
		p.given[k] = make([]float64, nodes+1)
		for i := range p.given[k] {
			at := -6 + 12*float64(i)/nodes
			for j := range inner {
				e := prob.NormQuantile((float64(j) + .5) / inner)
				p.given[k][i] += p.table(t).at(phi(rho*at+math.Sqrt(1-rho*rho)*e)) / inner
			}
		}
	}
	x := (min(max(z, -5.99), 5.99) + 6) / 12 * nodes
	i := int(x)
	return p.given[k][i] + (x-float64(i))*(p.given[k][i+1]-p.given[k][i])
}

// run is what one run comes to.
type run struct {
	z, cost, cash, days, hours, labour float64
	kept, way                          float64 // multiple of the price that is kept; mean money of the way, as drawn: got
	got                                float64
	stops                              bool
}

// known gathers one run's money and days, as drawn and at their means at the strip-down.
type known struct{ cash, labour, hours, lead, added, meanMoney, meanHours, meanLead, meanAdded float64 }

func (p *player) line(k *known, i int, z float64) {
	l, c := p.c.Repair.Lines[i], p.c
	rho := c.Hidden.SharedLoading
	if l.Loading != nil {
		rho = *l.Loading
	}
	score := func() float64 { return rho*z + math.Sqrt(1-rho*rho)*p.rng.NormFloat64() }
	draw := func(t prob.Three) float64 { return p.table(t).at(phi(score())) }
	if l.Chance != nil && phi(score()) < 1-*l.Chance {
		return
	}
	for trade, h := range l.Hours {
		x := draw(h)
		k.hours, k.labour = k.hours+x, k.labour+x*c.Labour.Rates[trade]
		k.meanHours, k.meanMoney = k.meanHours+p.meanAt(h, rho, z), k.meanMoney+p.meanAt(h, rho, z)*c.Labour.Rates[trade]
	}
	k.cash += draw(l.Materials) + draw(l.Outside)
	k.meanMoney += p.meanAt(l.Materials, rho, z) + p.meanAt(l.Outside, rho, z)
	for _, part := range l.Parts {
		cost, extra, wait := simulatePart(part, rho, p.rng, func(t prob.Three, r float64) float64 {
			if r == 0 {
				return p.table(t).at(p.rng.Float64())
			}
			return draw(t)
		})
		k.cash, k.hours, k.labour, k.lead = k.cash+cost, k.hours+extra, k.labour+extra*c.Labour.Rates["body"], max(k.lead, wait)
		left, lead := 1.0, 0.0
		for _, o := range part.Options {
			taken := left * *o.Chance
			left -= taken
			k.meanMoney += taken * (p.meanAt(o.Price, rho, z) + p.meanAt(o.Freight, rho, z) + p.meanAt(o.ExtraHours, rho, z)*c.Labour.Rates["body"])
			k.meanHours += taken * p.meanAt(o.ExtraHours, rho, z)
			lead += taken * o.LeadDays.Mean()
		}
		k.meanMoney += left * p.meanAt(part.Fallback.Price, rho, z)
		k.meanLead = max(k.meanLead, lead+left*part.Fallback.LeadDays.Mean())
	}
}

func (p *player) risk(k *known, r hidden.Risk, z float64) {
	rho := p.c.Hidden.SharedLoading
	if r.Loading != nil {
		rho = *r.Loading
	}
	score := func() float64 { return rho*z + math.Sqrt(1-rho*rho)*p.rng.NormFloat64() }
	if phi(score()) < 1-r.Chance.Mean() {
		return
	}
	k.cash, k.meanMoney = k.cash+p.table(r.Cost).at(phi(score())), k.meanMoney+p.meanAt(r.Cost, rho, z)
	k.added, k.meanAdded = k.added+p.table(r.Days).at(phi(score())), k.meanAdded+p.meanAt(r.Days, rho, z)
	for trade, h := range r.Hours {
		x, mean, rate := p.table(h).at(phi(score())), p.meanAt(h, rho, z), p.c.Labour.Rates[trade]
		k.hours, k.labour, k.meanHours, k.meanMoney = k.hours+x, k.labour+x*rate, k.meanHours+mean, k.meanMoney+mean*rate
	}
}

// play draws one run with the choice at the strip-down.
func (p *player) play() run {
	c := p.c
	plain := func(t prob.Three) float64 { return p.table(t).at(p.rng.Float64()) }
	z := p.rng.NormFloat64()
	var k known
	for i := range c.Repair.Lines {
		p.line(&k, i, z)
	}
	for _, r := range c.Hidden.Risks {
		p.risk(&k, r, z)
	}
	week, hold := 7/c.Time.HoursPerWeek, c.Time.HoldingPerDay
	home := plain(c.Buying.Freight) + max(0, plain(c.Buying.Storage.Days)-c.Buying.Storage.FreeDays)*c.Buying.Storage.PerDay
	days := max(k.lead, k.hours*week) + k.added + plain(c.Time.InspectionQueueDays) + plain(c.Time.DaysToSell)
	meanDays := max(k.meanLead, k.meanHours*week) + k.meanAdded + c.Time.InspectionQueueDays.Mean() + c.Time.DaysToSell.Mean()
	o := c.WaysOut
	net := p.price.Mean()*math.Pow(1+c.Resale.YearlyChange.Mean(), meanDays/365)*(1-c.Selling.Percent) - c.Selling.Flat
	left := k.meanMoney - o.Strip.Hours.Mean()*c.Labour.Rates["body"] + hold*(meanDays-o.Strip.Days.Mean())
	out := o.AsItStands.Money.Mean() - o.AsItStands.Days.Mean()*hold // as it stands is the better way here
	y := plain(*c.Resale.YearlyChange)
	if net-left >= out {
		cash := k.cash + home + days*hold
		return run{z: z, cost: cash + k.labour, cash: cash, days: days, hours: k.hours, labour: k.labour,
			kept: math.Pow(1+y, days/365) * (1 - c.Selling.Percent)}
	}
	hours, gone := plain(o.Strip.Hours), plain(o.Strip.Days)+plain(o.AsItStands.Days)
	labour := hours * c.Labour.Rates["body"]
	return run{z: z, cost: home + gone*hold + labour, cash: home + gone*hold, days: gone, hours: hours, labour: labour,
		way: o.AsItStands.Money.Mean(),
		got: plain(*o.AsItStands.Money), stops: true}
}

// sample plays the runs and returns what is left before the invoice, the winner's error counted as section 3 says, with the share that
// stops.
func (p *player) sample(k float64, n int, narrow bool) (s plain, stops float64) {
	runs := make([]run, exitDraws)
	for i := range runs {
		runs[i] = p.play()
	}
	slices.SortFunc(runs, func(a, b run) int { return int(math.Copysign(1, a.z-b.z)) })
	const bins = 150
	price, level := p.price.Mean(), p.price.SD()*math.Sqrt(.5)
	worth, kept := make([]float64, bins), make([]float64, bins)
	all := 0.0
	for i, r := range runs {
		v := price*r.kept + r.way - r.cost
		if !r.stops {
			v -= p.c.Selling.Flat
		}
		at := i * bins / exitDraws
		worth[at], kept[at], all = worth[at]+v/(exitDraws/bins), kept[at]+r.kept/(exitDraws/bins), all+v/exitDraws
	}
	var factor, square float64
	for at := range bins {
		factor, square = factor+(worth[at]-all)*(worth[at]-all)/bins, square+kept[at]*kept[at]/bins
	}
	allowance, share, near := prob.WinnersConstant(n)*k*math.Sqrt(level*level*square+factor), 1.0, 1.0
	if narrow {
		l := 1 - k*k*(1-prob.WinnersVariance(n))
		share, near = math.Sqrt(1-(1-l)/2), math.Sqrt(l)
	}
	for i, r := range runs {
		brought := price + share*(p.price.Quantile(p.rng.Float64())-price)
		v := brought*r.kept + r.got - r.cost - allowance - (worth[i*bins/exitDraws]-all)*(1-near)
		if r.stops {
			stops += 1. / exitDraws
		} else {
			v -= p.c.Selling.Flat
		}
		s.left, s.growth = append(s.left, v), append(s.growth, 1+p.c.Time.CapitalRate*r.days/365)
		s.labour, s.hours, s.cash, s.days = append(s.labour, r.labour), append(s.hours, r.hours), append(s.cash, r.cash), append(s.days, r.days)
	}
	return s, stops
}

// scanned returns the last legal bid at which the rules hold in the plain sample; the fees only rise here, so the scan may halve.
func (s plain) last(c valuation.Case, bids []money.Amount) int {
	lo, hi := -1, len(bids)
	for hi-lo > 1 {
		mid := (lo + hi) / 2
		total, _ := scanInvoice(c.Buying.Terms, cents(bids[mid])).Float64()
		if s.holds(c.Rules, total) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// Ways out, the day of sale and the winner's error at once, rule by rule, against a plain Monte Carlo that draws, chooses and narrows as
// decision.md has it in words: within one bid step.
func TestWaysOutAgreeWithPlainMonteCarlo(t *testing.T) {
	loss := .25
	cases := map[string]bid.Rules{"min_profit": {MinProfit: usd(1500)}, "max_loss_chance": {MaxLossChance: &loss},
		"max_worst_tenth_loss": {MaxWorstTenthLoss: usd(1200)},
		"min_per_hour":         {MinPerHour: usd(90)}, "max_cash": {MaxCash: usd(9000)}}
	for _, allowed := range []bool{false, true} {
		c := doubtful(1, bid.Rules{MinProfit: usd(0)})
		c.Run.WinnersAllowance = allowed
		market := resale.Fit(nil, resale.Subject{}, resale.Beliefs{Guess: c.Resale.Guess, Today: c.ValuedOn,
			Currency: money.Currency{Code: "USD", Digits: 2}}, prior(t))
		p := &player{c, rand.New(rand.NewPCG(5, 77)), map[prob.Three]betaTable{}, map[any][]float64{}, market.Distribution()}
		share := 0.0
		if allowed {
			share = c.Market.OwnShare
		}
		s, stops := p.sample(share, 5, allowed)
		var bids []money.Amount
		for b := c.Buying.BidSteps[0].Step; b <= 2_000_000; b = scanNext(c.Buying.BidSteps, b) {
			bids = append(bids, b)
		}
		for name, rules := range cases {
			c.Rules = rules
			a := value(t, c, valuation.Knowledge{Prior: prior(t)})
			if math.Abs(a.StopChance-stops) > .004 {
				t.Errorf("%s: stops %.4f, plainly %.4f", name, a.StopChance, stops)
			}
			want := s.last(c, bids)
			bidOf := a.Plans[valuation.Rebuild]
			if bidOf == nil {
				t.Fatal(name, a.Reasons)
			}
			at, _ := slices.BinarySearch(bids, *bidOf)
			t.Logf("allowance %v, %s: plain Monte Carlo %d, engine %d, stops %.3f, worth %d", allowed, name, bids[max(0, want)], *bidOf,
				a.StopChance, a.WayOutWorth)
			if a.StopWay != "" && (at < want-1 || at > want+1) {
				t.Errorf("%s: plain Monte Carlo %d, engine %d", name, bids[max(0, want)], *bidOf)
			}
		}
	}
}
