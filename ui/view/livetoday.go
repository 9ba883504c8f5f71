package view

import (
	"walkline/ui/desk"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// The two names of the limit.
const (
	walkAwayBid = "Walk-away bid"
	todaysBid   = "Today's bid"
)

// boundWords says what keeps today's bid below the walk-away bid.
var boundWords = map[sale.Bound]string{
	sale.NoBay: "bays. None is left.", sale.NoHours: "hours. What is left does not cover this build.",
	sale.NoCash: "cash. What is left pays no more.", sale.KeepCash: "cash. Later lots bring more for it.",
	sale.KeepHours: "hours. Later lots bring more for them.", sale.KeepBay: "bays. A later lot brings more in it.",
	sale.KeepAll: "cash, hours and bays together. Later lots bring more.", sale.NextSale: "what you keep for the next sale.",
	sale.Loss: "the plan. A win at more would bring nothing on average.",
}

// plan writes what the plan of the day says of the lot: where its bid is lower, the figure and the steps go by that.
func (v *Live) plan(s desk.State, p Purse) {
	o, plan := *s.Open, s.Planned()
	switch {
	case s.Awaits(o.ID):
		v.Beside = "; today's bid is being worked out"
		return
	case plan == nil:
		if s.Day.Has != nil && s.Day.Problem != "" {
			v.Beside = "; no plan of the day"
		}
		return
	}
	b, in := plan.TodaysBid(o.ID)
	switch walk := walkAway(o); {
	case !in:
	case walk == nil && b.Bid == nil:
		v.Beside = "; today: leave it"
	case walk == nil || b.Bid != nil && *b.Bid >= *walk:
		v.Beside = "; today's bid " + p.Exact(*b.Bid)
	default:
		v.Name, v.Beside, v.Limit = todaysBid, "; walk-away "+p.Exact(*walk), "leave it"
		if o.Current <= *walk {
			v.Binds = "Set by: " + boundWords[b.By]
			if o.Valued.Answer.FirstGuess != nil {
				v.Binds = unseen + v.Binds
			}
		}
		if b.Bid == nil {
			v.Steps, v.Stop = "STOP", true
			return
		}
		v.Limit = p.Exact(*b.Bid)
		v.left(o, *b.Bid)
	}
}

// walkAway returns the walk-away bid of a lot that is known as it stands, nil: none.
func walkAway(o desk.Open) *money.Amount {
	if unknown(o) != "" {
		return nil
	}
	return o.Valued.Answer.WalkAway
}
