package learn

import (
	"math"
	"slices"
)

// resale proposes the bias of the resale forecast and, apart from it, the brand's.
func (p *proposer) resale() {
	var all []saleFact
	for _, b := range guessed(p.builds) {
		if f, ok := b.sale(p.now); ok {
			if f.weight = b.strength() * faded(b.day(), p.today, p.half); f.weight > 0 {
				all = append(all, f)
			}
		}
	}
	s := fitSales(steadySales(all))
	if len(s.facts) == 0 {
		return
	}
	p.bias(s)
	p.brand(s)
}

func (p *proposer) bias(s sales) {
	q := s.proposal("resale", "Resale price", []float64{1, 0}, func(saleFact) bool { return true })
	spread, one := s.spread(), 1.0
	q.Starter.Spread, q.Proposed.Spread = &one, &spread
	q.Now = q.Starter
	if r := p.now.Resale; r != nil {
		q.Now = Value{At: r.Factor, Low: r.Factor, High: r.Factor, Spread: &r.Spread}
	}
	bias := Bias{Factor: q.Proposed.At, Spread: spread, When: p.today, From: len(q.Evidence)}
	q.put = func(f *Factors) { f.Resale = &bias }
	q.Why = append(q.Why, whySpread(spread), "What the winner's allowance takes off was taken off first: the two are not counted twice.")
	q.Why = append(q.Why, s.slips()...)
	p.out = append(p.out, q)
}

func (p *proposer) brand(s sales) {
	q := s.proposal("brand_discount", "What a branded title leaves of the price", []float64{0, 1},
		func(f saleFact) bool { return f.brand > 0 })
	if len(q.Evidence) == 0 {
		return
	}
	q.Now = q.Starter
	if r := p.now.BrandDiscount; r != nil {
		q.Now = r.value()
	}
	after := s.post.Of([]float64{0, 1})
	r := Ratio{Factor: q.Proposed.At, LogSD: math.Sqrt(after.Variance()), Known: q.Pull, When: p.today,
		From: len(q.Evidence)}
	q.put = func(f *Factors) { f.BrandDiscount = &r }
	if branded, clear := len(q.Evidence), len(s.facts)-len(q.Evidence); clear == 0 {
		q.Why = append(q.Why, buys(branded)+", all branded: the brand's part and the forecast's own bias cannot be told apart, so the two "+
			"share what was seen.")
	}
	p.out = append(p.out, q)
}

// proposal returns the proposal of one combination of the sales' coefficients; of says which sales speak for it.
func (s sales) proposal(key, name string, x []float64, of func(saleFact) bool) Proposal {
	before, after := s.prior.Of(x), s.post.Of(x)
	q := Proposal{Key: key, Name: name, Unit: RatioUnit, Starter: ratioValue(before), Proposed: ratioValue(after),
		Pull: 1 - after.Relative/before.Relative}
	sum := 0.0
	for _, f := range s.facts {
		if of(f) {
			q.Evidence = append(q.Evidence, Evidence{f.build.ID, f.build.Name, f.build.day(), math.Exp(f.log), f.weight})
			q.Weight += f.weight
			sum += f.weight * f.log
		}
	}
	slices.SortStableFunc(q.Evidence, func(x, y Evidence) int { return compareDates(x.On, y.On) })
	if q.Weight > 0 {
		alone := math.Exp(sum / q.Weight)
		q.Alone = &alone
	}
	q.Why = append([]string{counted(q)}, moves(q)...)
	return q
}
