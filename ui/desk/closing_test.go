package desk_test

import (
	"slices"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

func TestClosingABuildAsksBeforeItTeaches(t *testing.T) {
	u := newUser(t)
	c := sound("27")
	none := &repair.Fallback{Price: prob.Certain(10), LeadDays: prob.Certain(1)}
	c.Repair.Lines = []repair.Line{{ID: "r1", Job: "Bumper", Hours: map[string]prob.Three{"body": prob.Certain(2)},
		Parts: []repair.Part{{Name: "cover", Fallback: none}}}}
	id := u.add(c)[0]
	u.well(desk.MarkLots("won", id), desk.Go(desk.Builds), desk.ShowBuild(id))
	price, hammer := money.Amount(900000), money.Amount(400000)
	s := u.well(desk.SetHammer(&hammer), desk.EditBuild("sold", func(b *build.Build) {
		b.Outcome, b.Sale.Price, b.Dates.Sold = build.Sold, &price, "2026-11-20"
	}))
	about := func() (list []desk.Unsettled) {
		for _, q := range s.Build.Questions() {
			list = append(list, q.About)
		}
		return list
	}
	if got := about(); s.Build.Build.Closing != build.Asking || len(got) != 2 || got[0] != desk.OpenLines || got[1] != desk.OpenHours {
		t.Fatalf("%q %q", s.Build.Build.Closing, got)
	}
	if past := desk.Learnt(s.Bought); past[0].Ending != learn.Open {
		t.Errorf("it teaches as %q with questions open", past[0].Ending)
	}
	s = u.well(desk.AnswerAll(s.Build.Questions()[0]))
	if got := about(); len(got) != 2 || got[0] != desk.OpenBills {
		t.Fatalf("%q", got)
	}
	partly := u.well(desk.CloseAsItIs())
	if past := desk.Learnt(partly.Bought); past[0].Ending != learn.Sold || past[0].Came.Repair != nil {
		t.Errorf("closed as it is: %q, repair %v", past[0].Ending, past[0].Came.Repair)
	}
	s = u.well(desk.Undo(), desk.AnswerAll(s.Build.Questions()[0]), desk.EditBuild("hours", func(b *build.Build) {
		b.Hours = []build.Work{{Trade: "body", Hours: 3}}
	}))
	if s.Build.Build.Closing != "" || len(about()) > 0 || desk.Learnt(s.Bought)[0].Ending != learn.Sold {
		t.Errorf("all answered: %q %q", s.Build.Build.Closing, about())
	}
}

// What the forecast counts and no bill does is asked for at closing; either answer closes the question, and undo opens it again.
func TestClosingAsksForCostsThatTheForecastCounts(t *testing.T) {
	o := desk.OpenBuild{}
	price, hammer := money.Amount(900000), money.Amount(400000)
	o.Currency = "USD"
	o.Foretold = &learn.Prediction{Money: learn.Ledger{Freight: 18500, Selling: 25000}}
	o.Build = build.Build{Outcome: build.Sold, Hammer: &hammer, Sale: build.Sale{Price: &price}, Dates: build.Dates{Sold: "2026-11-20"}}
	q := o.Questions()
	if len(q) != 1 || q[0].About != desk.OpenCosts || !slices.Equal(q[0].Names, []string{"freight 185.00", "selling 250.00"}) {
		t.Fatalf("%+v", q)
	}
	o.Build.Receipts = []build.Receipt{{Kind: "freight", Amount: 20000}}
	o.Build.MeanAll([]string{"selling"}, build.AsForecast)
	if q := o.Questions(); len(q) > 0 {
		t.Errorf("%+v", q)
	}
	if got := desk.PastOf(o.Bought).Account().Unsaid(); len(got) != 1 || got[0].Amount != 25000 {
		t.Errorf("as forecast counts %+v", got)
	}
	o.Build.Outcome, o.Build.Unbilled = build.AsIs, nil
	if q := o.Questions(); len(q) > 0 {
		t.Errorf("a vehicle sold as it stands is asked for the selling of a finished one: %+v", q)
	}
}

// A lot is bought on the day of its sale, also where it is marked before; a day of the sale that is still to come is asked about, and may
// be right.
func TestADaySoldThatIsStillToComeIsAsked(t *testing.T) {
	u := newUser(t)
	c := sound("27")
	c.Lot.SaleDate = u.Today().Plus(4)
	id := u.add(c)[0]
	price, hammer := money.Amount(900000), money.Amount(400000)
	s := u.well(desk.MarkLots("won", id), desk.Go(desk.Builds), desk.ShowBuild(id), desk.SetHammer(&hammer))
	if got := s.Build.Build.Dates.Bought; got != c.Lot.SaleDate {
		t.Errorf("bought on %s", got)
	}
	sold := func(day lot.Date) []desk.Question {
		s := u.well(desk.EditBuild("sold", func(b *build.Build) {
			b.Outcome, b.Sale.Price, b.Dates.Sold, b.Dates.Bought, b.NoMoreBills = build.Sold, &price, day, u.Today().Plus(-40), true
			b.MeanAll(build.AskedFor, build.AsForecast)
		}))
		return slices.DeleteFunc(s.Build.Questions(), func(q desk.Question) bool { return q.About != desk.OpenDay })
	}
	if q := sold(u.Today()); len(q) > 0 {
		t.Errorf("sold today: %+v", q)
	}
	q := sold(u.Today().Plus(60))
	if len(q) != 1 || u.s.Build.Build.Teaches() {
		t.Fatalf("sold in two months: %+v, teaches %v", q, u.s.Build.Build.Teaches())
	}
	u.well(desk.AnswerAll(q[0]))
	if q := sold(u.Today().Plus(60)); len(q) > 0 {
		t.Errorf("said to be right: %+v", q)
	}
	if q := sold(u.Today().Plus(61)); len(q) != 1 {
		t.Errorf("another day to come: %+v", q)
	}
}
