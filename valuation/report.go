package valuation

import (
	"math"
	"slices"

	"walkline/valuation/checks"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/scenario"
)

// answer writes the valuation down.
func (w *work) answer() Answer {
	a := Answer{Format: AnswerFormat, Currency: w.c.Currency, Decision: "bid", BindingRule: w.found.Binding, Ceilings: w.found.Ceilings}
	for _, c := range a.Ceilings {
		if c.Any {
			a.NoCeiling = append(a.NoCeiling, c.Rule)
		}
	}
	stops := checks.Stops(w.items)
	at := w.found.Lowest
	switch {
	case len(stops) > 0:
		a.Decision, a.BindingRule, a.Reasons = "do_not_bid", Stopped, stops
	case w.found.Bid == nil:
		a.Decision, a.Reasons = "do_not_bid", w.refusal()
	default:
		at = *w.found.Bid
		a.WalkAway = &at
		a.Reasons = w.grounds()
	}
	a.Warnings = w.warnings()
	a.Resale = w.market.answer()
	a.Repair = w.repairFigures()
	a.Hidden = w.hiddenFigures()
	a.Days, a.Hours, a.Labour = spread(w.played.Days), spread(w.played.Hours), spread(w.played.Labour)
	inv := w.c.Buying.Total(at, w.currency)
	a.Acquisition = Acquisition{Bid: at, Lines: inv.Lines, Total: inv.Total}
	a.Waterfall = w.waterfall(at, inv.Total, a.WalkAway != nil)
	a.Profit = w.profit(at, inv.Total, a.Waterfall)
	a.Ladder = w.ladder(at)
	a.Drivers = w.drivers(inv.Total)
	a.Checklist, a.Looks, a.TotalLoss = w.items, w.looks, w.totalLoss()
	if missing := w.missing(); len(missing) > 0 {
		a.unready(missing)
	}
	return a
}

func spread(xs []float64) Spread {
	q := prob.Quantiles(xs, 0.1, 0.9)
	return Spread{prob.Mean(xs), q[0], q[1]}
}

func (w *work) repairFigures() RepairFigures {
	f := RepairFigures{Spread: spread(w.played.Repair)}
	for i, l := range w.lines {
		p := w.played.Lines[i]
		f.Lines = append(f.Lines, LineFigure{ID: l.ID, Job: l.Job, Area: l.Area, Mean: p.Cost, Hours: p.Hours, Why: l.Why, Caution: l.Caution})
	}
	return f
}

func (w *work) hiddenFigures() HiddenFigures {
	f := HiddenFigures{Spread: spread(w.played.Hidden)}
	for i, r := range w.risks {
		p := w.played.Risks[i]
		mean := 0.0
		if p.Present > 0 {
			mean = p.Cost / p.Present
		}
		f.Risks = append(f.Risks, RiskFigure{ID: r.ID, Name: r.Name, Chance: w.chances[i], MeanIfPresent: mean, Why: r.Why, Caution: r.Caution})
	}
	return f
}

// waterfall returns the bars from the resale price to the bid: every bar but the profit is an expected figure rounded to
// the minor unit, the profit is what is left, so that the bars add up exactly.
func (w *work) waterfall(at, total money.Amount, buys bool) []Bar {
	m := w.problem.Means(at)
	o := w.played
	cost := func(name string, x float64) Bar { return bar(name, -w.currency.FromMajor(x)) }
	bars := []Bar{
		bar("Resale", w.currency.FromMajor(m.Resale)), cost("Selling", m.Selling), cost("Repair", prob.Mean(o.Repair)),
		cost("Hidden damage", prob.Mean(o.Hidden)), cost("Freight", prob.Mean(o.Freight)), cost("Storage", prob.Mean(o.Storage)),
		cost("Holding", prob.Mean(o.Holding)), cost("Capital", m.Capital), cost("Winner's allowance", m.Allowance),
		bar("Fees and tax", at-total),
	}
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

// profit returns the figures at a bid; its mean is the waterfall's, to the minor unit.
func (w *work) profit(at, total money.Amount, bars []Bar) Profit {
	f := w.problem.Judge(at)
	a := w.currency.Major(total)
	q := func(p float64) float64 { return w.problem.Quantile(p, a) }
	return Profit{Mean: -w.currency.Major(bars[len(bars)-2].Amount), P05: q(.05), P10: q(.1), P50: q(.5), P90: q(.9),
		LossChance: f.LossChance, WorstTenth: f.WorstTenth, Margin: f.Margin, PerHour: f.PerHour}
}

// rungs is about how many bids the ladder shows.
const rungs = 16

// ladder returns bids from the lowest legal one to well past at, evenly spread, at and its neighbours among them.
func (w *work) ladder(at money.Amount) []Rung {
	legal := w.legal(at)
	k, _ := slices.BinarySearch(legal, at)
	stride := max(1, len(legal)/rungs)
	var out []Rung
	for i, b := range legal {
		if i == 0 || i == len(legal)-1 || i%stride == 0 || i >= k-1 && i <= k+1 {
			f := w.problem.Judge(b)
			out = append(out, Rung{Bid: b, Acquisition: f.Total, MeanProfit: f.Mean, LossChance: f.LossChance,
				WorstTenth: f.WorstTenth, Margin: f.Margin, PerHour: f.PerHour, Holds: f.Holds})
		}
	}
	return out
}

// drivers returns the shares of the profit's variance, largest first; what is below half a percent stands together.
func (w *work) drivers(total money.Amount) []Driver {
	sell := 1 - w.c.Selling.Percent
	sd := w.problem.Resale.SD() * sell
	perDay := w.currency.Major(total) * w.c.Time.CapitalRate / 365
	var out []Driver
	rest := 0.0
	for _, s := range w.played.Shares(sd*sd, perDay) {
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
