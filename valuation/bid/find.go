package bid

import (
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// Ceiling is the largest legal bid that one rule allows by itself: nil where none can hold. Any says that the rule holds
// at every bid that was looked at.
type Ceiling struct {
	Rule string
	Bid  *money.Amount
	Any  bool
}

// Answer is what Find says.
type Answer struct {
	Bid      *money.Amount // the walk-away bid; nil: do not bid
	Lowest   money.Amount  // the lowest legal bid
	Binding  string        // the rule with the lowest ceiling; the first that fails when there is no bid
	Ceilings []Ceiling
	Gap      *Gap         // a smaller legal bid that fails while the walk-away bid passes
	Most     money.Amount // greatest invoice total at which every rule holds; -1: not even at nothing
}

// Gap is a smaller legal bid that breaks a rule while a larger one holds them all.
type Gap struct {
	Fails, Passes money.Amount
}

// Find returns the walk-away bid and each rule's ceiling. Limits: the problem has passed the case's checks and at least
// one rule is on that a high bid must break (Rules.Bounding).
func Find(p *Problem) Answer {
	p.prepare()
	rules := p.on()
	caps := make([]money.Amount, len(rules))
	for i, r := range rules {
		caps[i] = p.greatest(r)
	}
	top := p.top(caps)
	reach := p.Terms.NewReach(p.Steps, max(top, p.Steps[0].Step), p.Currency)
	a := Answer{Lowest: p.Steps[0].Step}
	for i, r := range rules {
		c := Ceiling{Rule: r.name, Any: caps[i] > top}
		if b, ok := reach.Last(caps[i]); ok {
			c.Bid = &b
		}
		a.Ceilings = append(a.Ceilings, c)
	}
	a.decide(reach, caps)
	return a
}

// top returns the greatest bid to look at: as far as any rule goes, but not past twice the highest price that the sale may
// bring, unless even the tightest rule goes further.
func (p *Problem) top(caps []money.Amount) money.Amount {
	tight, most := boundless, money.Amount(0)
	for _, c := range caps {
		tight = min(tight, c)
		if c != boundless {
			most = max(most, c)
		}
	}
	return max(min(tight, most), min(most, 2*p.Currency.FromMajor(p.highest())))
}

// decide takes the tightest rule's ceiling for the bid, and finds a gap below it.
func (a *Answer) decide(reach invoice.Reach, caps []money.Amount) {
	tight := 0
	for i := range caps {
		if caps[i] < caps[tight] {
			tight = i
		}
	}
	a.Binding, a.Most, a.Bid = a.Ceilings[tight].Rule, caps[tight], a.Ceilings[tight].Bid
	if a.Bid == nil {
		return
	}
	if fails, ok := reach.Above(caps[tight], *a.Bid); ok {
		a.Gap = &Gap{fails, *a.Bid}
	}
}

// boundless is the cap of a rule that no bid breaks.
const boundless = money.Amount(1) << 52

// greatest returns the greatest invoice total at which the rule holds: -1 when it fails at nothing, boundless when no
// invoice breaks it.
func (p *Problem) greatest(r rule) money.Amount {
	lack := func(minor float64) float64 { return -r.slack(p.read(p.Currency.Major(money.Amount(minor)))) }
	if lack(0) > 0 {
		return -1
	}
	hi := float64(p.Currency.FromMajor(p.highest() + p.labour + r.limit + 1))
	if lack(hi) <= 0 {
		return boundless
	}
	return money.Amount(turn(0, hi, 1, lack))
}
