package view_test

import (
	"errors"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// planned returns the state of a lot that is called, with a plan whose bid on it is that.
func planned(o desk.Open, at money.Amount, bid sale.Bid) desk.State {
	s := called(o, at)
	s.Day.Has, s.Entries = &desk.SaleDay{Cash: 1_000_000}, []book.Entry{{ID: o.ID}}
	of, _ := s.PlanDue()
	return s.DayPlanned(of, desk.DayPlan{Lots: []desk.DayLot{{ID: o.ID}}, Answer: sale.Answer{Lots: []sale.Bid{bid}}}, nil)
}

// Where the plan of the day bids less than the walk-away bid, the figure, the steps and STOP go by the plan, with what binds it.
func TestLiveStopsAtTodaysBid(t *testing.T) {
	o := weighed(t)
	walk := *o.Valued.Answer.WalkAway
	today := walk - 4*2500
	for at, want := range map[money.Amount]string{0: "left", today - 2500: "1 step left", today: "no step left", today + 1: "STOP",
		walk: "STOP"} {
		v := view.NewLive(planned(o, at, sale.Bid{Bid: &today, By: sale.NoCash}))
		if !strings.HasSuffix(v.Steps, want) || v.Stop != (want == "STOP") || v.Name != "Today's bid" ||
			v.Limit != view.NewPurse("USD").Exact(today) || v.Beside != "; walk-away "+view.NewPurse("USD").Exact(walk) ||
			v.Binds != "Set by: cash. What is left pays no more." {
			t.Errorf("at %d of today's %d: %+v", at, today, v)
		}
	}
	if v := view.NewLive(planned(o, walk+2500, sale.Bid{Bid: &today, By: sale.NoCash})); !v.Stop || !strings.HasPrefix(v.Binds, "Breaks: ") {
		t.Errorf("past the walk-away bid: %+v", v)
	}
	v := view.NewLive(planned(o, 0, sale.Bid{By: sale.NoBay}))
	if v.Limit != "leave it" || !v.Stop || v.Steps != "STOP" || !strings.Contains(v.Binds, "bays") {
		t.Errorf("nothing bid today: %+v", v)
	}
}

// A plan that bids as much, one that cannot be worked out, and none leave the walk-away bid as it is; one on its way says so.
func TestLiveKeepsTheWalkAwayBidWithoutALowerOne(t *testing.T) {
	o := weighed(t)
	walk := *o.Valued.Answer.WalkAway
	plain := view.NewLive(called(o, walk))
	broken := planned(o, walk, sale.Bid{})
	failed, coming := broken, broken
	failed.Entries, coming.Entries = nil, append([]book.Entry{{ID: 99}}, broken.Entries...)
	of, _ := failed.PlanDue()
	failed = failed.DayPlanned(of, desk.DayPlan{}, errors.New("lot 14 is won, and what it takes is not known"))
	higher := walk + 2500
	for name, s := range map[string]desk.State{"": called(o, walk), "; today's bid ": planned(o, walk, sale.Bid{Bid: &walk}),
		"; today's bid higher": planned(o, walk, sale.Bid{Bid: &higher}), "; no plan of the day": failed,
		"; today's bid is being worked out": coming} {
		v := view.NewLive(s)
		if v.Name != "Walk-away bid" || v.Limit != plain.Limit || v.Steps != plain.Steps || v.Stop || v.Binds != plain.Binds ||
			!strings.HasPrefix(v.Beside, strings.TrimSuffix(name, "higher")) {
			t.Errorf("%q: %+v, without a plan %+v", name, v, plain)
		}
	}
}
