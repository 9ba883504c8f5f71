package bid

// Even returns the invoice total at which the chance of a loss reaches q. Units: money in major units. Limits: after Find;
// negative where the lot loses even when it costs nothing.
func (p *Problem) Even(q float64) float64 {
	lo, hi := p.span(0)
	lo, hi = min(lo, 0)-1, max(hi, 0)+1 // capital only brings the break-even nearer to nothing
	return turn(lo, hi, tie, func(total float64) float64 { return p.LossChance(total) - q })
}
