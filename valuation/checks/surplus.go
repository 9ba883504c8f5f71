package checks

import (
	"slices"

	"walkline/valuation/prob"
)

// Surplus is what being allowed to pay so much brings a risk-neutral buyer over the guess of the hammer price.
type Surplus struct {
	cost prob.Table // money out when the lot is won
}

// hammerKnots and hammerSpan set the even grid of normal scores at which the guess of the hammer price is read.
const (
	hammerKnots = 97
	hammerSpan  = 4.25
)

// NewSurplus returns the surplus over a guess of the hammer price; cost gives the money out when the lot is won at a
// price, and may fall where the price rises. Units: money in major units.
func NewSurplus(hammer prob.Three, cost func(hammer float64) float64) Surplus {
	if hammer.Sure() {
		return Surplus{prob.CertainTable(cost(hammer.Likely))}
	}
	chances, costs := make([]float64, hammerKnots), make([]float64, hammerKnots)
	guess := hammer.Score()
	for i := range chances {
		z := -hammerSpan + 2*hammerSpan*float64(i)/(hammerKnots-1)
		chances[i], costs[i] = prob.NormCDF(z), cost(guess.At(z))
	}
	chances[0], chances[hammerKnots-1] = 0, 1
	slices.Sort(costs)
	return Surplus{prob.NewTable(chances, costs)}
}

// At returns E[(most - cost)+]: the mean of what is kept when every lot that costs less than most is bought. It is
// convex in most, and 0 where no hammer price leaves anything.
func (s Surplus) At(most float64) float64 {
	chance, partial := s.cost.Lower(most)
	return most*chance - partial
}
