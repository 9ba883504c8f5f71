package desk_test

import (
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/learn"
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
