package valuation_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// plainDraws is the size of the plain Monte Carlo that the engine is held against.
const plainDraws = 2_000_000

// betaTable is a PERT by its density alone: the cumulated density on a fine grid, read backwards.
type betaTable struct {
	low, width float64
	cum        []float64
}

func newBetaTable(t prob.Three) betaTable {
	const grid = 20000
	b := betaTable{t.Low, t.High - t.Low, make([]float64, grid+1)}
	if b.width == 0 {
		return b
	}
	p, q := 4*(t.Likely-t.Low)/b.width, 4*(t.High-t.Likely)/b.width // alpha-1, beta-1 of the lambda-4 beta
	density := func(x float64) float64 { return math.Pow(x, p) * math.Pow(1-x, q) }
	for i := 1; i <= grid; i++ {
		x := float64(i-1) / grid
		b.cum[i] = b.cum[i-1] + density(x) + 4*density(x+.5/grid) + density(x+1./grid) // Simpson
	}
	for i := range b.cum {
		b.cum[i] /= b.cum[grid]
	}
	return b
}

func (b betaTable) at(u float64) float64 {
	if b.width == 0 {
		return b.low
	}
	i, _ := slices.BinarySearch(b.cum, u)
	i = max(i, 1)
	return b.low + b.width*(float64(i-1)+(u-b.cum[i-1])/(b.cum[i]-b.cum[i-1]))/float64(len(b.cum)-1)
}

// phi is the normal distribution function, tabulated.
func phi(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }

// uncertain is a case in which everything is unsure: two lines, parts that may not be had, a line that may not be
// needed, two risks, waiting times. Invented.
func uncertain(seed int64, rules bid.Rules) valuation.Case {
	half, third, most, mild := 0.5, 0.3, 0.7, 0.5
	c := valuation.Defaults()
	c.Lot.ModelYear, c.Lot.Title.Document, c.Lot.OdometerStatus = 2019, "salvage", "actual"
	c.Currency, c.ValuedOn = "USD", "2026-11-20"
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue, c.Run.WinnersAllowance = false, false, false
	c.Run.Seed = seed
	c.Resale.Guess = &prob.Three{Low: 11500, Likely: 14000, High: 16000}
	c.Repair.Lines = []repair.Line{
		{ID: "a", Job: "front", Hours: map[string]prob.Three{"body": {Low: 6, Likely: 10, High: 24}},
			Materials: prob.Three{Low: 80, Likely: 120, High: 400},
			Parts: []repair.Part{{Name: "lamp", Options: []repair.Option{
				{Price: prob.Three{Low: 150, Likely: 220, High: 400}, Freight: prob.Certain(40), LeadDays: prob.Three{Low: 2, Likely: 5, High: 30},
					Chance: &most, ExtraHours: prob.Three{Low: 0, Likely: 1, High: 3}},
				{Price: prob.Three{Low: 500, Likely: 650, High: 800}, LeadDays: prob.Three{Low: 5, Likely: 14, High: 45}, Chance: &half}},
				Fallback: &repair.Fallback{Price: prob.Certain(900), LeadDays: prob.Three{Low: 30, Likely: 45, High: 90}}}}},
		{ID: "b", Job: "rail", Chance: &third, Loading: &mild, Hours: map[string]prob.Three{"structure": {Low: 4, Likely: 9, High: 20}},
			Outside: prob.Three{Low: 200, Likely: 400, High: 1500}},
	}
	c.Hidden.Risks = []hidden.Risk{
		{ID: "h", Name: "mount", Chance: hidden.Beta{A: 2, B: 6}, Cost: prob.Three{Low: 150, Likely: 300, High: 900},
			Hours: map[string]prob.Three{"structure": {Low: 1, Likely: 3, High: 8}}, Days: prob.Certain(2)},
		{ID: "g", Name: "gearbox", Chance: hidden.Beta{A: 1, B: 11}, Cost: prob.Three{Low: 700, Likely: 1200, High: 3500},
			Days: prob.Three{Low: 5, Likely: 10, High: 30}, Loading: &mild},
	}
	c.Labour.Rates = map[string]float64{"body": 35, "structure": 42}
	c.Time = valuation.Time{HoursPerWeek: 12, InspectionQueueDays: prob.Three{Low: 7, Likely: 14, High: 35},
		DaysToSell: prob.Three{Low: 7, Likely: 21, High: 60}, HoldingPerDay: 6, CapitalRate: .12}
	c.Selling = valuation.Selling{Percent: .02, Flat: 150}
	c.Buying = valuation.Buying{BidSteps: []invoice.Step{{Step: 2500}, {From: 100000, Step: 5000}, {From: 500000, Step: 10000}},
		Terms: invoice.Terms{Fees: []invoice.Schedule{{Name: "fee", Mode: "whole",
			Rows: []invoice.Row{{Flat: 10000}, {From: 100000, Flat: 15000}, {From: 300000, Flat: 35000}, {From: 600000, Flat: 55000}}}},
			Tax: invoice.Tax{Base: "hammer"}},
		Freight: prob.Three{Low: 150, Likely: 180, High: 240}, Storage: valuation.Storage{PerDay: 30, FreeDays: 3,
			Days: prob.Three{Low: 2, Likely: 3, High: 6}}}
	c.Rules = rules
	return c
}

// plain is one plain sample: what is left before the invoice, how the invoice grows, labour, hours, cash and days.
type plain struct{ left, growth, labour, hours, cash, days []float64 }

// simulate draws the uncertain case independently: plain pseudo-random numbers, no strata, no tables of the engine.
func simulate(c valuation.Case, price prob.Table) plain {
	rng := rand.New(rand.NewPCG(99, 7))
	s := plain{}
	tables := map[prob.Three]betaTable{}
	table := func(t prob.Three) betaTable {
		if _, ok := tables[t]; !ok {
			tables[t] = newBetaTable(t)
		}
		return tables[t]
	}
	for range plainDraws {
		factor := rng.NormFloat64()
		score := func(rho float64) float64 { return rho*factor + math.Sqrt(1-rho*rho)*rng.NormFloat64() }
		draw := func(t prob.Three, rho float64) float64 { return table(t).at(phi(score(rho))) }
		var cash, labour, hours, lead, hiddenDays, work float64
		for _, l := range c.Repair.Lines {
			rho := repair.Or(l.Loading, c.Hidden.SharedLoading)
			if phi(score(rho)) < 1-repair.Or(l.Chance, 1) {
				continue
			}
			for trade, h := range l.Hours {
				x := draw(h, rho)
				work, labour = work+x, labour+x*c.Labour.Rates[trade]
			}
			cash += draw(l.Materials, rho) + draw(l.Outside, rho)
			for _, p := range l.Parts {
				cost, extra, wait := simulatePart(p, rho, rng, draw)
				cash, lead, work, labour = cash+cost, max(lead, wait), work+extra, labour+extra*c.Labour.Rates["body"]
			}
		}
		hours = work
		for _, r := range c.Hidden.Risks {
			rho := repair.Or(r.Loading, c.Hidden.SharedLoading)
			if phi(score(rho)) < 1-r.Chance.A/(r.Chance.A+r.Chance.B) {
				continue
			}
			cash, hiddenDays = cash+draw(r.Cost, rho), hiddenDays+draw(r.Days, rho)
			for trade, h := range r.Hours {
				x := draw(h, rho)
				hours, labour = hours+x, labour+x*c.Labour.Rates[trade]
			}
		}
		days := max(lead, hours/c.Time.HoursPerWeek*7) + hiddenDays + draw(c.Time.InspectionQueueDays, 0) + draw(c.Time.DaysToSell, 0)
		cash += draw(c.Buying.Freight, 0) + max(0, draw(c.Buying.Storage.Days, 0)-c.Buying.Storage.FreeDays)*c.Buying.Storage.PerDay +
			days*c.Time.HoldingPerDay
		s.left = append(s.left, price.Quantile(rng.Float64())*(1-c.Selling.Percent)-c.Selling.Flat-cash-labour)
		s.growth = append(s.growth, 1+c.Time.CapitalRate*days/365)
		s.labour, s.hours = append(s.labour, labour), append(s.hours, hours)
		s.cash, s.days = append(s.cash, cash), append(s.days, days)
	}
	return s
}

// simulatePart takes the first option that can be had; the options stand in the order of their expected cost.
func simulatePart(p repair.Part, rho float64, rng *rand.Rand, draw func(prob.Three, float64) float64) (cost, hours, wait float64) {
	for _, o := range p.Options {
		if rng.Float64() < repair.Or(o.Chance, 1) {
			return draw(o.Price, rho) + draw(o.Freight, rho), draw(o.ExtraHours, rho), draw(o.LeadDays, 0)
		}
	}
	return draw(p.Fallback.Price, rho), 0, draw(p.Fallback.LeadDays, 0)
}

// holds reports whether the rules hold in the plain sample at an invoice total.
func (s plain) holds(r bid.Rules, total float64) bool {
	profit := make([]float64, len(s.left))
	var mean, losses, labour, hours float64
	for i := range profit {
		profit[i] = s.left[i] - total*s.growth[i]
		mean += profit[i] / float64(len(profit))
		labour += s.labour[i] / float64(len(profit))
		hours += s.hours[i] / float64(len(profit))
		if profit[i] < 0 {
			losses++
		}
	}
	worst := func() float64 {
		slices.Sort(profit)
		n := len(profit) / 10
		sum := 0.0
		for _, x := range profit[:n] {
			sum += x
		}
		return sum / float64(n)
	}
	ok := true
	ok = ok && (r.MinProfit == nil || mean >= float64(*r.MinProfit)/100)
	ok = ok && (r.MaxLossChance == nil || losses/float64(len(profit)) <= *r.MaxLossChance)
	ok = ok && (r.MaxWorstTenthLoss == nil || -worst() <= float64(*r.MaxWorstTenthLoss)/100)
	ok = ok && (r.MinPerHour == nil || mean+labour >= hours*float64(*r.MinPerHour)/100)
	ok = ok && (r.MaxCash == nil || total+tenth(s.cash) <= float64(*r.MaxCash)/100)
	return ok
}

// tenth returns the 90th percentile.
func tenth(xs []float64) float64 {
	ys := slices.Clone(xs)
	slices.Sort(ys)
	return ys[len(ys)*9/10]
}

func usd(x int64) *money.Amount { a := money.Amount(100 * x); return &a }

// The engine's walk-away bid against plain Monte Carlo with two million draws: within one bid step, rule by rule.
func TestWalkAwayAgreesWithPlainMonteCarlo(t *testing.T) {
	loss := 0.15
	cases := map[string]bid.Rules{
		"min_profit":           {MinProfit: usd(1500)},
		"max_loss_chance":      {MaxLossChance: &loss},
		"max_worst_tenth_loss": {MaxWorstTenthLoss: usd(800)},
		"min_per_hour":         {MinPerHour: usd(90)},
		"max_cash":             {MaxCash: usd(9000)},
	}
	c := uncertain(1, cases["min_profit"])
	market := resale.Fit(nil, resale.Subject{}, resale.Beliefs{Guess: c.Resale.Guess, BrandDiscount: c.Resale.BrandDiscount,
		AskedToSold: c.Resale.AskedToSold,
		Today:       c.ValuedOn, Currency: money.Currency{Code: "USD", Digits: 2}}, prior(t))
	sample := simulate(c, market.Distribution())
	var bids []money.Amount
	for b := c.Buying.BidSteps[0].Step; b <= 2_000_000; b = scanNext(c.Buying.BidSteps, b) {
		bids = append(bids, b)
	}
	for name, rules := range cases {
		c.Rules = rules
		a, err := valuation.Value(c, valuation.Knowledge{Prior: prior(t)})
		if err != nil || a.WalkAway == nil {
			t.Fatal(name, err, a.Reasons)
		}
		lo, hi := 0, len(bids) // the fees only rise here, so the scan may halve
		for hi-lo > 1 {
			mid := (lo + hi) / 2
			total, _ := scanInvoice(c.Buying.Terms, cents(bids[mid])).Float64()
			if sample.holds(rules, total) {
				lo = mid
			} else {
				hi = mid
			}
		}
		at, _ := slices.BinarySearch(bids, *a.WalkAway)
		t.Logf("%s: plain Monte Carlo %d, engine %d", name, bids[lo], bids[at])
		if at < lo-1 || at > lo+1 {
			t.Errorf("%s: plain Monte Carlo %d, engine %d", name, bids[lo], bids[at])
		}
	}
}
