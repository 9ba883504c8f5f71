package bid

import (
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// Kept reads what is left on average of the most money that may go out for a lot, over where the hammer falls.
type Kept struct {
	Law      Law
	Terms    invoice.Terms
	Steps    []invoice.Step
	Currency money.Currency
	Growth   float64 // what a unit of money out costs with its capital
}

// keptKnots is at how many evenly likely hammer prices what is left is read.
const keptKnots = 32

// Mean returns the mean of what is left of most where the lot is bought whenever that leaves something, and where it is bought at prices up
// to walk (nil: never); what is not bought leaves nothing. The first is never below the second. Units: money in major units.
func (k Kept) Mean(most float64, walk *money.Amount) (best, under float64) {
	for i := range keptKnots {
		at := k.Law.Quantile((float64(i) + 0.5) / keptKnots)
		price := invoice.After(k.Steps, k.Currency.FromMajor(at)-1)
		left := most - k.Growth*k.Currency.Major(k.Terms.Total(price, k.Currency).Total)
		best += max(0, left) / keptKnots
		if walk != nil && price <= *walk {
			under += left / keptKnots
		}
	}
	return best, under
}
