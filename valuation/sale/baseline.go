package sale

import (
	"sort"

	"walkline/valuation/money"
)

// InOrder is the rule of thumb that bids the walk-away bid on each lot as it comes, as far as the cash goes (common practice, no source).
func InOrder(s Sale) Policy { return inOrder{layOut(s)} }

type inOrder struct{ plan *Plan }

func (r inOrder) Stop(lot int, left Purse) (money.Amount, bool) {
	o := &r.plan.offers[lot]
	n := o.affordable(r.plan.state(lot, left))
	if n == 0 {
		return 0, false
	}
	return o.bids[n-1], true
}

// ByReturn is the rule of thumb that picks, of the lots to come, those of the best return on cash whose walk-away bids all fit in what
// is left, and bids the walk-away bid on them (common practice, no source).
func ByReturn(s Sale) Policy {
	r := byReturn{plan: layOut(s)}
	for i := range r.plan.offers {
		o := &r.plan.offers[i]
		profit, chance := o.mean(len(o.bids))
		cash := 0.0
		for k := range o.need {
			cash += o.chance[k] * float64(o.need[k])
		}
		if chance > 0 && profit > 0 && cash > 0 {
			r.order = append(r.order, i)
			r.rate = append(r.rate, profit/cash)
		}
	}
	sort.Stable(r)
	return r
}

type byReturn struct {
	plan  *Plan
	order []int // lots, best return first
	rate  []float64
}

func (r byReturn) Len() int           { return len(r.order) }
func (r byReturn) Less(a, b int) bool { return r.rate[a] > r.rate[b] }
func (r byReturn) Swap(a, b int) {
	r.order[a], r.order[b] = r.order[b], r.order[a]
	r.rate[a], r.rate[b] = r.rate[b], r.rate[a]
}

func (r byReturn) Stop(lot int, left Purse) (money.Amount, bool) {
	s := r.plan.state(lot, left)
	for _, i := range r.order {
		o := &r.plan.offers[i]
		if i < lot || o.affordable(s) < len(o.bids) {
			continue
		}
		if i == lot {
			return o.bids[len(o.bids)-1], true
		}
		s = state{s.cash - o.most[len(o.most)-1], s.hours - o.hours, s.bays - 1}
	}
	return 0, false
}
