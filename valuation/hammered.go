package valuation

import (
	"fmt"
	"math"

	"walkline/valuation/bid"
	"walkline/valuation/hammer"
	"walkline/valuation/prob"
)

// The bases of the chance to win.
const (
	ByGuess   = "guess"   // the buyer's own guess of the hammer price, which stands above all else
	ByResults = "results" // what lots of the kind went for, or the starter values where there are few results
)

// mostWork is the greatest share of the finished value that visible work takes off what a lot may go for: no lot goes for less than the
// rest brings in parts and scrap. Starter value, from memory.
const mostWork = 0.9

// falls returns where the hammer falls on a lot, and on what that rests; nil where nobody can say.
func (w *work) falls() (law bid.Law, basis string) {
	if g := w.c.Market.HammerGuess; g != nil {
		return *g, ByGuess
	}
	if w.k.Hammer == nil {
		return nil, ""
	}
	if w.parts == nil {
		l, known := w.learnedLaw()
		if !known {
			return nil, ""
		}
		return l, ByResults
	}
	var mix mixture
	for _, p := range w.parts {
		l, known := p.learnedLaw()
		if !known {
			return nil, ""
		}
		mix = append(mix, weighed{l, float64(p.times) / guessUnits})
	}
	return mix, ByResults
}

// from says what the chance to win goes by, as it reads after "by"; empty where nobody can say.
func (w *work) from(basis string) string {
	switch {
	case basis == ByGuess:
		return "your guess of the hammer price"
	case basis == "":
		return ""
	case w.k.Hammer.Results() == 0:
		return "starter values"
	case w.k.Hammer.Results() == 1:
		return "1 lot in your file, and starter values"
	}
	return fmt.Sprintf("%d lots in your file", w.k.Hammer.Results())
}

// learnedLaw returns what results say of where the hammer falls, by the price and the visible work of this valuation.
func (w *work) learnedLaw() (hammer.Law, bool) {
	finished := w.market.table.Mean()
	work := math.Min(prob.Mean(w.played.Repair), mostWork*finished)
	l, err := w.k.Hammer.Law(hammer.Kind{Loss: w.c.seen().Loss, Condition: w.c.Lot.Condition}, finished, work)
	return l, err == nil
}

// weighed is one law with its chance; mixture is a price of which one of several laws holds.
type (
	weighed struct {
		law   hammer.Law
		share float64
	}
	mixture []weighed
)

// CDF returns the chance of a price at or below x.
func (m mixture) CDF(x float64) float64 {
	sum := 0.0
	for _, w := range m {
		sum += w.share * w.law.CDF(x)
	}
	return sum
}

// Quantile returns the price that the lot goes below with chance u.
func (m mixture) Quantile(u float64) float64 {
	lo, hi := math.Inf(1), 0.0
	for _, w := range m {
		q := w.law.Quantile(u)
		lo, hi = min(lo, q), max(hi, q)
	}
	for range 60 {
		if !(hi-lo > 1e-9*hi) {
			break
		}
		if mid := (lo + hi) / 2; m.CDF(mid) < u {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}
