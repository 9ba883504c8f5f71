package bid

import "walkline/valuation/prob"

// EvenBelow returns the chance that the lot breaks even only at an invoice total below the given one. That is the chance of
// a loss there, read from the groups of scenarios, as quantiles are. Limits: after Find.
func (p *Problem) EvenBelow(total float64) float64 {
	chance, _ := p.lower(0, total)
	return chance
}

// Even returns the invoice total at which the chance of a loss reaches q. Units: money in major units. Limits: after Find;
// negative where the lot loses even when it costs nothing.
func (p *Problem) Even(q float64) float64 {
	lo, hi := p.span(0)
	lo, hi = min(lo, 0)-1, max(hi, 0)+1 // capital only brings the break-even nearer to nothing
	for hi-lo > prob.Tie {
		mid := (lo + hi) / 2
		if mid == lo || mid == hi {
			break
		}
		if p.EvenBelow(mid) < q {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
