package repair

import (
	"math"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Known is what a line that is needed takes on average, given the lot's common factor: its money with own hours at their rates,
// its hours, and the mean lead time of its last critical part.
type Known struct {
	Money, Hours prob.Given
	Lead         float64
}

// Foreknown returns what the line takes on average where it is needed. What can be had is not known: a part costs the mean over its
// options in their order and its fallback. spreads are the log standard deviations of the lot's ratios by kind.
func (l Line) Foreknown(s Setting, spreads map[string]float64) Known {
	k := knower{rho: Or(l.Loading, s.Loading), rates: s.Rates, spreads: spreads}
	for _, trade := range lot.Trades {
		k.spell(l.Hours[trade], trade, 1)
	}
	k.spend(l.Materials, "materials", 1)
	k.spend(l.Outside, "outside", 1)
	for _, p := range l.Parts {
		k.part(p, l.ChiefTrade(), s.HoldingPerDay)
	}
	return k.Known
}

// knower gathers a line's means.
type knower struct {
	Known
	rho     float64
	rates   map[string]float64
	spreads map[string]float64
}

// ratio returns the mean of a lognormal ratio of median 1.
func (k *knower) ratio(kind string) float64 { return math.Exp(k.spreads[kind] * k.spreads[kind] / 2) }

func (k *knower) spend(t prob.Three, kind string, chance float64) {
	k.Money.Add(t, k.rho, chance*k.ratio(kind))
}

func (k *knower) spell(t prob.Three, trade string, chance float64) {
	scale := chance * k.ratio("hours/"+trade)
	k.Hours.Add(t, k.rho, scale)
	k.Money.Add(t, k.rho, scale*k.rates[trade])
}

// part adds the mean over a part's options in their order, and its fallback.
func (k *knower) part(p Part, chief string, holding float64) {
	left, lead := 1.0, 0.0
	for _, j := range p.Order(k.rates[chief], holding) {
		o := p.Options[j]
		taken := left * Or(o.Chance, 1)
		left -= taken
		k.spend(o.Price, o.kind(), taken)
		k.spend(o.Freight, o.kind(), taken)
		k.Money.Const(-taken * o.CoreBack.Mean())
		k.spell(o.ExtraHours, chief, taken)
		lead += taken * o.LeadDays.Mean()
	}
	if f := p.Fallback; f != nil && left > 0 {
		k.spend(f.Price, "", left)
		k.spell(f.Hours, chief, left)
		lead += left * f.LeadDays.Mean()
	}
	if p.Critical == nil || *p.Critical {
		k.Lead = math.Max(k.Lead, lead)
	}
}
