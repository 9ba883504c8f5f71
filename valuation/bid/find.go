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
	Whole    bool         // no legal bid above Bid can hold; false where there were too many to look at
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
	bids, whole := invoice.Ladder(p.Steps, max(top, p.Steps[0].Step))
	totals := make([]money.Amount, len(bids))
	for i, b := range bids {
		totals[i] = p.Terms.Total(b, p.Currency).Total
	}
	a := Answer{Lowest: p.Steps[0].Step}
	for i, r := range rules {
		c := ceiling(r.name, bids, totals, caps[i])
		c.Any = caps[i] > top || !whole && c.Bid != nil && *c.Bid == bids[len(bids)-1]
		a.Ceilings = append(a.Ceilings, c)
	}
	a.decide(bids, totals, caps, rules)
	a.Whole = whole || a.Bid == nil || *a.Bid < bids[len(bids)-1]
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

// decide finds the largest legal bid within every cap, the rule that binds, and a gap below it.
func (a *Answer) decide(bids, totals, caps []money.Amount, rules []rule) {
	tight := 0
	for i := range caps {
		if caps[i] < caps[tight] {
			tight = i
		}
	}
	a.Binding, a.Most = rules[tight].name, caps[tight]
	at := last(totals, caps[tight])
	if at < 0 {
		return
	}
	a.Bid = &bids[at]
	for i := range at {
		if totals[i] > caps[tight] {
			a.Gap = &Gap{bids[i], bids[at]}
			return
		}
	}
}

// ceiling returns the largest legal bid whose invoice stays within limit.
func ceiling(rule string, bids, totals []money.Amount, limit money.Amount) Ceiling {
	at := last(totals, limit)
	if at < 0 {
		return Ceiling{Rule: rule}
	}
	return Ceiling{Rule: rule, Bid: &bids[at]}
}

// last returns the position of the last total within limit, -1 where there is none.
func last(totals []money.Amount, limit money.Amount) int {
	for i := len(totals) - 1; i >= 0; i-- {
		if totals[i] <= limit {
			return i
		}
	}
	return -1
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
