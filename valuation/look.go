package valuation

import (
	"slices"

	"walkline/valuation/checks"
	"walkline/valuation/hidden"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// look works out what the open looks are worth and puts them in order.
//
// What may go out for the lot is read from the house rules as they stand: the greatest invoice total that holds them all,
// with its capital cost. A look moves it by as much as it moves the expected cost of the hidden damage, so what the rules
// ask for beyond the cost (least profit, or the profit that a rule on losses asks for on this lot) is a reserve that stays
// as it is. Taken as what money and hours could earn elsewhere, it makes the surplus convex, and no look worth less than
// nothing. Between the answers to a look only the mean cost moves, not the spread that a rule on losses reads.
func (w *work) look() {
	hammer, basis := w.hammer()
	w.looks.Basis = basis
	if basis == checks.NoBasis {
		return
	}
	growth := 1 + w.c.Time.CapitalRate*prob.Mean(w.played.Days)/365
	cost := func(hammer float64) float64 {
		return growth * w.currency.Major(w.c.Buying.Total(w.currency.FromMajor(hammer), w.currency).Total)
	}
	w.items, w.looks = checks.Rank(w.items, checks.Stakes{Risks: w.risks, Chances: w.chances, IfThere: w.ifThere(), Answers: w.c.Findings,
		Findings: w.findings(), Surplus: checks.NewSurplus(hammer, cost), Most: w.most(growth)})
	w.looks.Basis = basis
}

// The stand-in for a guess of the hammer price, as shares of the walk-away bid: around the place where a look matters
// most, and wide. Starter values, argued in the package comment of checks.
const standInLow, standInHigh = 0.5, 1.5

// hammer returns the guess of the hammer price, or what stands in for it, and which of them it is.
func (w *work) hammer() (prob.Three, string) {
	switch {
	case w.rebuilt.stopped || len(w.missing()) > 0:
		return prob.Three{}, checks.NoBasis
	case w.c.Market.HammerGuess != nil:
		return *w.c.Market.HammerGuess, checks.Guess
	case w.rebuilt.found.Bid != nil:
		at := w.currency.Major(*w.rebuilt.found.Bid)
		return prob.Three{Low: standInLow * at, Likely: at, High: standInHigh * at}, checks.StandIn
	}
	return prob.Three{}, checks.NoBasis
}

// most returns the greatest money out that the rules allow, below nothing where not even a free lot would do.
func (w *work) most(growth float64) float64 { return w.mostOf(w.rebuilt, growth) }

// mostOf is most for any plan.
func (w *work) mostOf(o option, growth float64) float64 {
	if o.found.Most >= 0 {
		return growth * w.currency.Major(o.found.Most)
	}
	f := o.problem.Judge(o.found.Lowest)
	free := f.Mean + growth*w.currency.Major(f.Total)
	least := money.Amount(0)
	if w.c.Rules.MinProfit != nil {
		least = *w.c.Rules.MinProfit
	}
	return min(0, free-w.currency.Major(least))
}

// ifThere returns what each risk costs on average when it is there: money, own hours at their rates, and its days at
// what a day costs.
func (w *work) ifThere() []float64 {
	day := w.c.Time.HoldingPerDay + w.c.Time.CapitalRate/365*w.currency.Major(max(0, w.rebuilt.found.Most))
	out := make([]float64, len(w.risks))
	for i := range w.risks {
		m := w.belief.IfPresent(i, w.c.Labour.Rates)
		out[i] = m.Cash + m.Labour + m.Days*day
	}
	return out
}

// findings returns the catalogue's findings, then those that only a risk of the user knows; without those that cannot be looked at on this
// vehicle, unless they have been answered.
func (w *work) findings() []hidden.Finding {
	unable := w.c.feared().Unable(w.c.Damage)
	all := slices.DeleteFunc(hidden.Findings(w.k.Risks.Findings, w.risks),
		func(f hidden.Finding) bool { return w.c.Findings[f.ID] == "" && !f.Stands(unable) })
	if rate, known := w.c.rate(w.k.Risks.Currency); known && rate != 1 {
		for i := range all {
			all[i].Fee *= rate
		}
	}
	return all
}
