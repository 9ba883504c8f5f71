package bid

import (
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// Kept reads what is left on average of the most money that may go out for a lot, over where the hammer falls.
type Kept struct {
	Prices [keptKnots]money.Amount // evenly likely hammer prices, rising
	totals [keptKnots]float64      // what each comes to
	growth float64
}

// keptKnots is at how many evenly likely hammer prices what is left is read.
const keptKnots = 32

// Outlay is what a hammer price takes.
type Outlay struct {
	Terms    invoice.Terms
	Steps    []invoice.Step
	Currency money.Currency
	Growth   float64 // what a unit of money out costs with its capital
}

// NewKept returns a reading over the law of the hammer price.
func (o Outlay) NewKept(law Law) *Kept {
	k := &Kept{growth: o.Growth}
	for i := range k.Prices {
		at := law.Quantile((float64(i) + 0.5) / keptKnots)
		k.Prices[i] = invoice.After(o.Steps, o.Currency.FromMajor(at)-1)
		k.totals[i] = o.Currency.Major(o.Terms.Total(k.Prices[i], o.Currency).Total)
	}
	return k
}

// Left returns what is left of most at each of the prices, each with its share of the chance counted in.
func (k *Kept) Left(most float64) (left [keptKnots]float64) {
	for i := range left {
		left[i] = (most - k.growth*k.totals[i]) / keptKnots
	}
	return left
}

// Mean returns the mean of what is left of most where the lot is bought whenever that leaves something, and where it is bought at prices up
// to walk (nil: never); what is not bought leaves nothing. The first is never below the second. Units: money in major units.
func (k *Kept) Mean(most float64, walk *money.Amount) (best, under float64) {
	for i, left := range k.Left(most) {
		best += max(0, left)
		if walk != nil && k.Prices[i] <= *walk {
			under += left
		}
	}
	return best, under
}

// Gain returns the mean profit of a question where the lot is bought at prices up to walk, nothing where it is not. Limits: after Find.
func (k *Kept) Gain(p *Problem, walk money.Amount) float64 {
	sum := 0.0
	for i, price := range k.Prices {
		if price <= walk {
			sum += p.mean(k.totals[i]) / keptKnots
		}
	}
	return sum
}
