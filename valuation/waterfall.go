package valuation

import (
	"math"

	"walkline/valuation/bid"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/scenario"
)

// planBars name what a plan without a rebuild brings, stopBar what the option to stop puts to the mean profit.
var planBars = map[string]string{AsItStands: "Sold as it stands", ForParts: "Sold for parts"}

const stopBar = "Option to stop"

// waterfall returns the bars from the resale price to the bid: every bar but the profit is an expected figure rounded to
// the minor unit, the profit is what is left, so that the bars add up exactly.
func (w *work) waterfall(at, total money.Amount, buys bool) []Bar {
	bars := w.rebuildBars(at)
	if plan := w.options[w.best].name; plan != Rebuild {
		bars = w.planBars(plan, at)
	}
	bars = append(bars, bar("Fees and tax", at-total))
	left := -at
	for _, b := range bars {
		left += b.Amount
	}
	last := "Walk-away bid"
	if !buys {
		last = "Lowest legal bid"
	}
	return append(bars, bar("Expected profit", -left), bar(last, at))
}

// cost returns a bar of money out.
func (w *work) cost(name string, x float64) Bar { return bar(name, -w.currency.FromMajor(x)) }

// rebuildBars are those of a rebuild that is finished, and what the option to stop puts to it.
func (w *work) rebuildBars(at money.Amount) []Bar {
	m, o := w.finish.Means(at), w.played
	bars := []Bar{
		bar("Resale", w.currency.FromMajor(m.Resale)), w.cost("Growing older", -m.Growing), w.cost("Selling", m.Selling),
		w.cost("Repair", prob.Mean(o.Repair)),
		w.cost("Hidden damage", prob.Mean(o.Hidden)), w.cost("Freight", prob.Mean(o.Freight)), w.cost("Storage", prob.Mean(o.Storage)),
		w.cost("Holding", prob.Mean(o.Holding)), w.cost("Capital", m.Capital), w.cost("Winner's allowance", w.problem.Allowance),
	}
	if w.stops.taken {
		finished := w.finish.Judge(at).Mean + w.finish.Allowance - w.problem.Allowance
		bars = append(bars, w.cost(stopBar, finished-w.problem.Judge(at).Mean))
	}
	return bars
}

// planBars are those of a plan without a rebuild.
func (w *work) planBars(plan string, at money.Amount) []Bar {
	m, o := w.problem.Means(at), w.played
	return []Bar{
		bar(planBars[plan], w.currency.FromMajor(m.Resale)), w.cost("My hours", m.Labour), w.cost("Freight", prob.Mean(o.Freight)),
		w.cost("Storage", prob.Mean(o.Storage)), w.cost("Holding", m.Days*w.c.Time.HoldingPerDay), w.cost("Capital", m.Capital),
	}
}

// drivers returns the shares of the profit's variance, largest first; what is below half a percent stands together. Those of the
// rebuild are of the vehicle that is finished.
func (w *work) drivers(total money.Amount) []Driver {
	perDay := w.currency.Major(total) * w.c.Time.CapitalRate / 365
	shares := w.played.Shares(square(w.finish.Resale.SD()*(1-w.c.Selling.Percent)*w.finish.MeanMultiple()), perDay)
	switch plan := w.options[w.best].name; {
	case plan != Rebuild:
		shares = w.planShares(plan, perDay)
	case w.parts != nil:
		shares = w.guessedShares()
	}
	var out []Driver
	rest := 0.0
	for _, s := range shares {
		if math.Abs(s.Part) < 0.005 {
			rest += s.Part
			continue
		}
		out = append(out, Driver{s.Name, s.Part, s.Kind})
	}
	if rest != 0 {
		out = append(out, Driver{"Everything else", rest, scenario.OfRest})
	}
	return out
}

func square(x float64) float64 { return x * x }

// planShares returns the shares of a plan without a rebuild, whose causes do not lean on each other.
func (w *work) planShares(plan string, perDay float64) []scenario.Share {
	p := w.problem
	days := w.c.Time.HoldingPerDay + perDay
	share := func(name, kind string, part float64) scenario.Share {
		return scenario.Share{Name: name, Part: part, Kind: kind}
	}
	return scenario.Parts([]scenario.Share{share(planBars[plan], scenario.OfResale, square(p.Resale.SD())),
		share("My hours", scenario.OfHours, prob.Variance(p.Labour)),
		share("Freight", scenario.OfFreight, prob.Variance(w.played.Freight)),
		share("Storage", scenario.OfStorage, prob.Variance(w.played.Storage)),
		share("Time", scenario.OfTime, days*days*prob.Variance(p.Days))})
}

// exits returns the plans and the option to stop.
func (w *work) exits() Exits {
	e := Exits{Plan: w.options[w.best].name, Plans: map[string]*money.Amount{}}
	for _, o := range w.options {
		e.Plans[o.name] = o.walk()
	}
	if w.stops.way == "" || w.stops.worse != nil || w.rebuilt.stopped {
		return e
	}
	line := w.stops.choice.Line
	e.StopWay, e.StopLine, e.StopChance = w.stops.way, &line, w.stops.choice.Chance
	e.WayOutWorth = amount(w.rebuilt.found.Bid) - amount(w.stops.plain.Bid)
	return e
}

// winning returns how a walk-away bid does against where the hammer falls.
func (w *work) winning(walk *money.Amount) Winning {
	law, basis := w.falls()
	if basis == "" {
		return Winning{}
	}
	var chance, gain float64
	if walk != nil && w.parts != nil && basis == ByResults { // a price tells of the survey
		chance = law.CDF(w.currency.Major(*walk))
		gain = w.mean(func(p part) float64 { return p.kept.Gain(&p.options[w.best].problem, *walk) })
	} else if walk != nil {
		chance, gain = bid.Win(&w.problem, law, *walk)
	}
	return Winning{&chance, &gain, basis, w.from(basis)}
}
