package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"walkline/assets"
	"walkline/cmd/truth"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hammer"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/patterns"
	"walkline/valuation/prob"
	"walkline/valuation/sale"
)

var usd, _ = money.Lookup("USD")

// What a buyer may have learned before the season, and the looks behind a figure.
const (
	pastBuilds = 100 // builds that a shop has learned from
	trueLives  = 24  // lives whose mean the rivals' opinion lies about
	margin     = 0.6 // of what a lot is truly worth that a rival bids without error
)

// world is the pool of lots with what each buyer thinks of them.
type world struct {
	start learn.Starter
	truth truth.Truth
	lots  []entry
}

// entry is one lot of the pool.
type entry struct {
	at    valuation.Case // with its damage seen
	said  learn.Prediction
	worth float64    // truly, on average, before its invoice
	clean float64    // price with a clear title
	fixed float64    // visible work, money and own hours
	parts float64    // bill for the parts of it
	views [4]opinion // by view
	guess [2]guess   // by learning
}

// guess is what is thought of a lot that nobody has looked at.
type guess struct {
	opinion
	rate float64 // worth of a look, a minute
}

// opinion is what a buyer thinks of a lot.
type opinion struct {
	walk   *money.Amount
	worth  money.Amount
	beside money.Amount
	hours  float64
	gain   float64 // expected, before anything is known of the day
	law    sale.Law
	plan   string
	line   *float64 // of what is still to spend, beyond which it stops; nil: never
	way    string   // that stopping leads to
}

// view is the place of an opinion with or without what was learned and the ways out.
func view(learned, ways bool) int {
	at := 0
	if learned {
		at++
	}
	if ways {
		at += 2
	}
	return at
}

// newWorld invents the pool.
func newWorld(n int, seed uint64) (*world, error) {
	c, k, err := truth.Template()
	if err != nil {
		return nil, err
	}
	parts, faults := casefile.Assemblies(assets.Assemblies())
	if len(faults) > 0 {
		return nil, faults[0]
	}
	k.Parts = parts
	c.Run.WinnersAllowance = true
	profit, chance := usd.FromMajor(400), .3
	c.Rules = bid.Rules{MinProfit: &profit, MaxLossChance: &chance}
	w := &world{start: k.Starter()}
	w.truth = truth.New(w.start)
	rng := rand.New(rand.NewPCG(seed, 7))
	if err := w.invent(c, k, n, rng); err != nil {
		return nil, err
	}
	return w, w.judge(k, rng)
}

// invent draws the lots and what they truly come to.
func (w *world) invent(c valuation.Case, k valuation.Knowledge, n int, rng *rand.Rand) error {
	all := patterns.Likely(patterns.Row{Age: -1}, patterns.Counts{})
	m := valuation.NewMemory()
	for i := range n {
		l := another(c, i, rng)
		p := drawn(all, rng.Float64())
		l.Damage, l.Lot.Loss, l.Lot.Airbags, l.Lot.Condition, l.Lot.Keys, l.Survey = p.Damage, p.Loss, p.Airbags, p.Condition, &p.Keys, p.Survey
		made, err := valuation.ProposeWays(l, k, false)
		if err != nil {
			return err
		}
		l.WaysOut = made.WaysOut
		said, err := m.Foretell(l, k, nil)
		if err != nil {
			return err
		}
		e := entry{at: l, said: said, clean: l.Resale.Guess.Mean() / (1 - c.Resale.BrandDiscount.Mean()), fixed: said.Visible()}
		for _, x := range said.Items {
			if x.Line != "" && x.Kind == learn.PartKind {
				e.parts += x.Chance * x.Mean
			}
		}
		means := map[string]float64{}
		for range trueLives {
			for way, l := range w.lives(&e, rng) {
				means[way] += l.worth() / trueLives
			}
		}
		e.worth = max(means[valuation.Rebuild], means[valuation.ForParts]) // as it stands is what a rival pays
		w.lots = append(w.lots, e)
	}
	return nil
}

// another returns a lot like the template without its damage and findings, of an age and a price of its own.
func another(c valuation.Case, i int, rng *rand.Rand) valuation.Case {
	c = c.Clone()
	c.Lot.Number, c.Lot.VIN, c.Lot.ModelYear = fmt.Sprint(i+1), "", 2012+rng.IntN(10)
	c.Damage, c.Findings, c.WaysOut, c.Market.HammerGuess, c.Survey = nil, nil, valuation.WaysOut{Stop: true}, nil, nil
	mid, spread := 11000*math.Exp(.35*rng.NormFloat64()), .08+.1*rng.Float64()
	c.Resale.Guess = &prob.Three{Low: mid * math.Exp(-spread), Likely: mid, High: mid * math.Exp(spread)}
	return c
}

// drawn returns the pattern that a chance falls on.
func drawn(all []patterns.Pattern, u float64) patterns.Pattern {
	for _, p := range all {
		if u -= p.Chance; u < 0 {
			return p
		}
	}
	return all[len(all)-1]
}

// judge values every lot as each buyer does.
func (w *world) judge(k valuation.Knowledge, rng *rand.Rand) error {
	factors := [2]learn.Factors{}
	models := [2]hammer.Model{hammer.Starter(), hammer.Starter()}
	factors[1], models[1] = w.past(rng)
	for learned := range 2 {
		k.Hammer = &models[learned]
		m, g := valuation.NewMemory(), valuation.NewGuesser(k)
		for i := range w.lots {
			e := &w.lots[i]
			c := e.at.With(factors[learned])
			for ways := range 2 {
				seen := c
				if ways == 0 {
					seen.WaysOut = valuation.WaysOut{}
				}
				a, err := m.Value(seen, k)
				if err != nil {
					return err
				}
				e.views[view(learned == 1, ways == 1)] = opine(a, seen, models[learned])
			}
			row := unseen(c)
			a, err := g.Value(row)
			if err != nil {
				return err
			}
			e.guess[learned].opinion = opine(a, row, models[learned])
			if f := a.FirstGuess; f != nil && f.LookRate != nil {
				e.guess[learned].rate = *f.LookRate
			}
		}
	}
	return nil
}

// unseen returns the lot as the run list has it: cause of loss, areas, running state.
func unseen(c valuation.Case) valuation.Case {
	listed := lot.Listed{}
	for _, d := range c.Damage {
		if !slices.Contains(listed.Areas, d.Area) {
			listed.Areas = append(listed.Areas, d.Area)
		}
	}
	c.Lot.Listed, c.Lot.Keys, c.Lot.Airbags = &listed, nil, nil
	c.Damage, c.Survey, c.WaysOut = nil, nil, valuation.WaysOut{}
	c.Run.Scenarios = valuation.ListScenarios
	return c
}

// besideShare is how far cash is reserved beyond its mean.
const besideShare = 1.25

// opine reads an answer as the plan does.
func opine(a valuation.Answer, c valuation.Case, m hammer.Model) opinion {
	o := opinion{walk: a.WalkAway, worth: a.Acquisition.Total + usd.FromMajor(a.Profit.Mean), hours: a.Hours.Mean, plan: a.Plan,
		way: a.StopWay, line: a.StopLine}
	cash := a.Repair.Mean + a.Hidden.Mean - a.Labour.Mean + c.Buying.Freight.Mean() + c.Time.HoldingPerDay*a.Days.Mean
	if a.Plan != valuation.Rebuild {
		cash = c.Buying.Freight.Mean() + c.Time.HoldingPerDay*a.Days.Mean
	}
	o.beside = usd.FromMajor(besideShare * max(0, cash))
	if a.ExpectedGain != nil {
		o.gain = *a.ExpectedGain
	}
	law, err := m.Law(hammer.Kind{Loss: c.Lot.Loss, Condition: c.Lot.Condition}, a.Resale.Mean, min(a.Repair.Mean, .9*a.Resale.Mean))
	if err != nil {
		o.walk = nil
	}
	o.law = kept{law, map[float64]float64{}}
	if a.FirstGuess != nil && o.walk != nil && a.ExpectedGain != nil {
		l := sale.Lot{Worth: o.worth, WalkAway: o.walk, Hammer: o.law, Steps: c.Buying.BidSteps, Terms: c.Buying.Terms}
		o.worth = l.WorthOf(*a.ExpectedGain, usd)
	}
	return o
}

// kept remembers the chances of a law: the sales ask for the same ones again and again.
type kept struct {
	hammer.Law
	at map[float64]float64
}

func (k kept) CDF(x float64) float64 {
	p, known := k.at[x]
	if !known {
		p = k.Law.CDF(x)
		k.at[x] = p
	}
	return p
}

// past returns what builds and results before the season teach.
func (w *world) past(rng *rand.Rand) (learn.Factors, hammer.Model) {
	var builds []learn.Build
	var results []hammer.Result
	for i := range pastBuilds {
		e := &w.lots[i%len(w.lots)]
		price := usd.FromMajor(w.asked(e, rng))
		builds = append(builds, truth.Buy(int64(i), &e.said, e.at, w.truth.Live(&e.said, w.start, rng), price))
		results = append(results, hammer.Result{Kind: hammer.Kind{Loss: e.at.Lot.Loss, Condition: e.at.Lot.Condition},
			Finished: e.said.Resale.Mean, Work: min(e.fixed, .9*e.said.Resale.Mean), Price: usd.Major(price)})
	}
	f, _ := truth.Learned(builds, w.start)
	m, _ := hammer.Starter().Learn(results)
	return f, m
}

// What rivals get wrong: log standard deviations of what they share and of what each adds; the least that any wreck is worth to one.
const (
	sharedError, ownError = .12, .22
	scrap                 = 350
	rivals                = 4
)

// asked draws the best bid of the rivals.
func (w *world) asked(e *entry, rng *rand.Rand) float64 {
	best := math.Inf(-1)
	for range rivals {
		best = max(best, ownError*rng.NormFloat64())
	}
	return margin * max(scrap, e.worth) * math.Exp(best+sharedError*rng.NormFloat64())
}
