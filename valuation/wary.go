package valuation

import (
	"maps"
	"slices"

	"walkline/valuation/bid"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// wary takes bids down where those who have looked leave only the worst of the lots at a price: of the prices at which the hammer may fall
// under each survey, a bid goes as far as what is left under all of them together still grows. Where a price tells nothing of the survey,
// as the buyer's own guess does, that is as far as the rules go. Source: the value of a lot given the price at which it can be had,
// Milgrom and Weber, Econometrica 50 (1982) (from memory).
func (w *work) wary() {
	for i := range w.parts {
		p := &w.parts[i]
		law, basis := p.falls()
		if basis == "" {
			return
		}
		_, growth := p.reach(p.best)
		p.kept = bid.Outlay{Terms: w.c.Buying.Terms, Steps: w.c.Buying.BidSteps, Currency: w.currency, Growth: growth}.NewKept(law)
	}
	if w.c.Market.HammerGuess != nil {
		return
	}
	for i := range w.options {
		if o := &w.options[i]; o.walk() != nil {
			at := w.wariest(i, *o.walk())
			w.guarded = w.guarded || at == nil || *at < *o.walk()
			o.found.Bid = at
		}
	}
	w.best = best(w.options)
	w.problem, w.found = w.options[w.best].problem, w.options[w.best].found
}

// wariest returns the bid on a plan up to which what is left grows, no higher than most; nil: nothing is ever left.
func (w *work) wariest(plan int, most money.Amount) *money.Amount {
	left := map[money.Amount]float64{}
	for _, p := range w.parts {
		reach, _ := p.reach(plan)
		for i, x := range p.kept.Left(reach) {
			left[p.kept.Prices[i]] += x * float64(p.times) / guessUnits
		}
	}
	sum, top := 0.0, 0.0
	at := &most
	for _, price := range slices.Sorted(maps.Keys(left)) {
		if price > most {
			break
		}
		if sum += left[price]; sum > top {
			top, at = sum, &price
		}
	}
	switch {
	case sum < 0 && top == 0:
		return nil
	case sum >= top: // it still grows where the prices end
		return &most
	}
	return at
}

// lookGain returns what knowing the survey before the bid brings on average: over the surveys, what is kept below the most that the
// rules allow for each, less what is kept under the one bid. What the rules ask for beyond the cost is taken as what money and hours earn
// elsewhere (see look), so that nothing is worth less than nothing; a bid that would bring less counts as none.
// Source: expected value of perfect information, Raiffa and Schlaifer 1961 (from memory).
func (w *work) lookGain() (gain float64, known bool) {
	if w.parts == nil {
		return 0, true
	}
	walk := w.options[w.best].walk()
	var with, without float64
	for _, p := range w.parts {
		if p.kept == nil {
			return 0, false
		}
		share := float64(p.times) / guessUnits
		most, _ := p.reach(p.best)
		best, under := p.kept.Mean(most, walk)
		with, without = with+share*best, without+share*under
	}
	return with - max(0, without), true
}

// reach returns the greatest money out that the rules allow on a plan of a survey, its capital counted in, and what a unit of money out
// costs with its capital.
func (p part) reach(plan int) (most, growth float64) {
	o := p.options[plan]
	growth = 1 + p.c.Time.CapitalRate*prob.Mean(o.problem.Days)/365
	if o.stopped {
		return 0, growth
	}
	return p.mostOf(o, growth), growth
}
