package valuation

import (
	"slices"

	"walkline/valuation/checks"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// answer writes the valuation down.
func (w *work) answer() Answer {
	a := Answer{Format: AnswerFormat, Currency: w.c.Currency, Decision: "bid", BindingRule: w.found.Binding, Ceilings: w.found.Ceilings,
		FirstGuess: w.firstGuess()}
	for _, c := range a.Ceilings {
		if c.Any {
			a.NoCeiling = append(a.NoCeiling, c.Rule)
		}
	}
	at := w.found.Lowest
	switch walk := w.options[w.best].walk(); {
	case walk != nil:
		at = *walk
		a.WalkAway = &at
		a.Reasons = w.grounds()
	case w.options[w.best].stopped:
		a.Decision, a.BindingRule, a.Reasons = "do_not_bid", Stopped, checks.Stops(w.items)
	default:
		a.Decision, a.Reasons = "do_not_bid", w.refusal()
	}
	a.Exits, a.Winning = w.exits(), w.winning(a.WalkAway)
	a.Warnings = w.warnings()
	a.Resale = w.market.answer()
	a.Repair = w.repairFigures()
	a.Hidden = w.hiddenFigures()
	a.Days, a.Hours, a.Labour = spread(w.problem.Days), spread(w.problem.Hours), spread(w.problem.Labour)
	inv := w.c.Buying.Total(at, w.currency)
	a.Acquisition = Acquisition{Bid: at, Lines: inv.Lines, Total: inv.Total}
	a.Waterfall = w.waterfall(at, inv.Total, a.WalkAway != nil)
	a.Profit = w.profit(at, inv.Total, a.Waterfall)
	if !w.brief {
		a.Ladder = w.ladder(at)
	}
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
	if w.parts != nil {
		f.Lines = w.guessedRepair()
		return f
	}
	for i, l := range w.lines {
		p := w.played.Lines[i]
		f.Lines = append(f.Lines, LineFigure{ID: l.ID, Job: l.Job, Area: l.Area, Mean: p.Cost, Hours: p.Hours, Why: l.Why, Caution: l.Caution})
	}
	return f
}

func (w *work) hiddenFigures() HiddenFigures {
	f := HiddenFigures{Spread: spread(w.played.Hidden)}
	if w.parts != nil {
		f.Risks = w.guessedRisks()
		return f
	}
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

// ladder returns bids from the lowest legal one to well past at, evenly spread, at and its neighbors among them: to 1.3 times at,
// and at least to half of the likely price.
func (w *work) ladder(at money.Amount) []Rung {
	steps := w.c.Buying.BidSteps
	top := max(at+at*3/10, w.currency.FromMajor(w.problem.Resale.Quantile(.5)/2))
	_, count := invoice.Stand(steps, top)
	_, k := invoice.Stand(steps, at)
	places := []int64{1, count, k - 1, k, k + 1}
	for n, stride := int64(1), max(1, count/rungs); n <= count; n += stride {
		places = append(places, n)
	}
	slices.Sort(places)
	var out []Rung
	for _, n := range slices.Compact(places) {
		if n < 1 || n > count {
			continue
		}
		f := w.problem.Judge(invoice.Nth(steps, n))
		out = append(out, Rung{Bid: f.Bid, Acquisition: f.Total, MeanProfit: f.Mean, LossChance: f.LossChance,
			WorstTenth: f.WorstTenth, Margin: f.Margin, PerHour: f.PerHour, Holds: f.Holds})
	}
	return out
}
