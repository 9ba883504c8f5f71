package invoice

import (
	"slices"

	"walkline/valuation/money"
)

// Reach looks for legal bids by what they come to, without walking through them: between two edges of the fee schedules a higher
// bid never costs less, so that each stretch needs its two ends and a halving.
type Reach struct {
	steps     []Step
	total     func(money.Amount) money.Amount
	stretches []stretch
}

// stretch is the legal bids between two edges of the schedules, with what its ends come to.
type stretch struct{ first, last, low, high money.Amount }

// NewReach returns the legal bids up to and including most. Limits: terms and steps have passed their checks.
func (t Terms) NewReach(steps []Step, most money.Amount, c money.Currency) Reach {
	r := Reach{steps: steps, total: func(b money.Amount) money.Amount { return t.Total(b, c).Total }}
	edges := []money.Amount{most + 1}
	for _, s := range t.Fees {
		for _, row := range s.Rows {
			if row.From > 0 && row.From <= most {
				edges = append(edges, row.From)
			}
		}
	}
	slices.Sort(edges)
	from := money.Amount(1)
	for _, edge := range slices.Compact(edges) {
		first, last := After(steps, from-1), Before(steps, edge)
		if first <= last {
			r.stretches = append(r.stretches, stretch{first, last, r.total(first), r.total(last)})
		}
		from = edge
	}
	return r
}

// Last returns the highest legal bid that comes to no more than limit, and whether there is one.
func (r Reach) Last(limit money.Amount) (money.Amount, bool) {
	for i := len(r.stretches) - 1; i >= 0; i-- {
		if s := r.stretches[i]; s.low <= limit {
			return r.within(s, limit), true
		}
	}
	return 0, false
}

// Above returns the lowest legal bid below b that comes to more than limit, and whether there is one.
func (r Reach) Above(limit, b money.Amount) (money.Amount, bool) {
	for _, s := range r.stretches {
		if s.first >= b {
			break
		}
		if s.high <= limit {
			continue
		}
		found := s.first
		if s.low <= limit {
			found = After(r.steps, r.within(s, limit))
		}
		return found, found < b
	}
	return 0, false
}

// within returns the last bid of a stretch that comes to no more than limit, as its first does.
func (r Reach) within(s stretch, limit money.Amount) money.Amount {
	if s.high <= limit {
		return s.last
	}
	lo, hi := s.first, s.last // lo holds, hi does not
	for {
		middle, _ := Stand(r.steps, lo+(hi-lo)/2)
		if middle <= lo {
			if middle = After(r.steps, lo); middle >= hi {
				return lo
			}
		}
		if r.total(middle) <= limit {
			lo = middle
		} else {
			hi = middle
		}
	}
}
