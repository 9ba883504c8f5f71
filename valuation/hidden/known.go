package hidden

import (
	"math"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Known is what damage that is there takes on average, given the lot's common factor: money with own hours at their rates, hours,
// and the days that it adds.
type Known struct {
	Money, Hours, Days prob.Given
}

// Foreknown returns what the risk takes on average where it is there. spreads are the log standard deviations of the lot's ratios
// by kind.
func (r Risk) Foreknown(s Setting, spreads map[string]float64) Known {
	rho := s.Loading
	if r.Loading != nil {
		rho = *r.Loading
	}
	ratio := func(kind string) float64 { return math.Exp(spreads[kind] * spreads[kind] / 2) }
	var k Known
	k.Money.Add(r.Cost, rho, ratio("hidden"))
	k.Days.Add(r.Days, rho, 1)
	for _, trade := range lot.Trades {
		scale := ratio("hours/" + trade)
		k.Hours.Add(r.Hours[trade], rho, scale)
		k.Money.Add(r.Hours[trade], rho, scale*s.Rates[trade])
	}
	return k
}
