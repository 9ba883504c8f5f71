package desk_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/build"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// workshop is a case with one line of body work, one risk and a guess, so that hours that run over move its bid.
func workshop() valuation.Case {
	c := valuation.Defaults()
	least := money.Amount(50000)
	c.Currency, c.ValuedOn, c.Run.Scenarios = "USD", "2026-11-20", 512
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue = false, false
	c.Repair.Lines = []repair.Line{{ID: "a", Job: "front", Hours: map[string]prob.Three{"body": {Low: 20, Likely: 30, High: 50}}}}
	c.Hidden.Risks = []hidden.Risk{{ID: "h", Name: "mount", Chance: hidden.Beta{A: 2, B: 6}, Cost: prob.Certain(300)}}
	c.Resale.Guess = &prob.Three{Low: 9000, Likely: 10000, High: 11000}
	c.Labour.Rates = map[string]float64{"body": 40}
	c.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	c.Rules = bid.Rules{MinProfit: &least}
	return c
}

// finished is a buy whose hours ran over by half.
func finished() build.Build {
	return build.Build{Outcome: build.Sold, Hammer: at(300000), Dates: build.Dates{Bought: "2026-01-01", Sold: "2026-04-01"},
		Sale:  build.Sale{Price: at(1000000)},
		Hours: []build.Work{{Trade: "body", Line: "a", Hours: 47.5}}, Receipts: []build.Receipt{{Kind: "freight", Amount: 1}}}
}

// buy keeps a lot that was won or lost, and what was foretold of it, without the user's doing.
func (u *user) buy(state lot.State, came build.Build, figures learn.Prediction) int64 {
	u.t.Helper()
	id := u.add(workshop())[0]
	before := u.lot(id)
	after := before.Clone()
	after.State, after.Build = state, came
	step := book.Step{Subject: book.Buys, Label: "buy", Lots: []book.Change{{Before: before, After: after,
		Freeze: &book.Prediction{Case: workshop(), Figures: figures}}}}
	if _, err := u.kept.Do(u.t.Context(), step); err != nil {
		u.t.Fatal(err)
	}
	return id
}

// taught returns a user with eight finished buys whose hours ran over by half, on the track record, and a lot still to be bid for.
func taught(t *testing.T) (*user, int64) {
	t.Helper()
	u := newUser(t)
	figures, err := valuation.Foretell(workshop(), u.Know, at(300000))
	if err != nil {
		t.Fatal(err)
	}
	for range 8 {
		u.buy(lot.Won, finished(), figures)
	}
	open := u.add(workshop())[0]
	u.learn()
	return u, open
}

// learn has the track record worked out.
func (u *user) learn() {
	u.t.Helper()
	s := u.well(desk.Go(desk.Record))
	r, err := u.Learn(u.t.Context(), s.Bought)
	if err != nil {
		u.t.Fatal(err)
	}
	u.s = s.Learned(r, nil)
}

// body returns the proposal on the hours of body work.
func body(t *testing.T, s desk.State) learn.Proposal {
	t.Helper()
	for _, p := range s.Record.Proposals {
		if p.Key == "hours/body" {
			return p
		}
	}
	t.Fatalf("no proposal on body hours among %+v", s.Record.Proposals)
	return learn.Proposal{}
}

func TestPastBuysProposeFactorsWithWhatTheyWouldChange(t *testing.T) {
	u, _ := taught(t)
	p := body(t, u.s)
	if u.s.Record.Buys != 8 || u.s.Record.Currency != "USD" || !(p.Proposed.At > 1.1 && p.Proposed.At < 1.55) || len(p.Evidence) != 8 {
		t.Fatalf("%d buys in %s, proposed %+v", u.s.Record.Buys, u.s.Record.Currency, p)
	}
	effects, err := u.Effects(t.Context(), *u.s.Record, p)
	if err != nil || len(effects) != 1 || effects[0].Before == nil || effects[0].Moved() >= 0 {
		t.Fatalf("%+v %v", effects, err)
	}
	if s := u.s.Shown(*u.s.Record, p.Key, effects, nil); len(s.Record.Effects[p.Key]) != 1 {
		t.Error("the effects were lost")
	}
}

// A lot that was frozen before figures were kept with it is foretold anew from its frozen case, with
// what was in force then: such forecasts are the first engine's.
func TestALotFrozenBeforeFiguresWereKeptIsForetoldAnew(t *testing.T) {
	u, _ := taught(t)
	cases, _, err := u.kept.FrozenCases(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	list, then := slices.Clone(u.s.Bought), slices.Clone(u.s.Bought)
	for i := range list {
		list[i].Foretold = nil
		p, err := valuation.NewMemory().Foretell(cases[list[i].ID].InForce(valuation.FirstEngine), u.Knowledge(), list[i].Build.Hammer)
		if err != nil {
			t.Fatal(err)
		}
		then[i].Foretold = &p
	}
	expected, err := u.Learn(t.Context(), then)
	if err != nil {
		t.Fatal(err)
	}
	want := body(t, u.s.Learned(expected, nil))
	r, err := u.Learn(t.Context(), list)
	if err != nil {
		t.Fatal(err)
	}
	if got := body(t, u.s.Learned(r, nil)); got.Proposed.At != want.Proposed.At || r.Judged.Buys != 8 {
		t.Errorf("%+v, want %+v, %d buys", got.Proposed, want.Proposed, r.Judged.Buys)
	}
	for i := range list {
		list[i].ID += 1000 // of which nothing is frozen
	}
	if r, err = u.Learn(t.Context(), list); err != nil || r.Judged.Buys != 0 || len(r.Judged.LeftOut) == 0 {
		t.Errorf("with nothing frozen %d buys are judged: %q, %v", r.Judged.Buys, r.Judged.LeftOut, err)
	}
}

func TestAcceptedFactorsReachTheNextBidAndNoFrozenPrediction(t *testing.T) {
	u, open := taught(t)
	record := u.s
	u.well(desk.OpenLot(open), desk.Go(desk.Record))
	u.s.Record = record.Record
	revision := u.s.Open.Revision
	effects, err := u.Effects(t.Context(), *u.s.Record, body(t, u.s))
	if err != nil {
		t.Fatal(err)
	}
	s := u.well(desk.Accept("hours/body"))
	if !s.Record.Stale || s.Open.Case.Factors == nil || s.Open.Revision <= revision || s.Open.Fresh ||
		s.Reach.Undo != "Hours, body accepted" {
		t.Fatalf("%+v %+v", s.Open, s.Reach)
	}
	v, err := u.Value(t.Context(), s.Open.Case)
	if err != nil || *v.Answer.WalkAway != *effects[0].After {
		t.Fatalf("the bid is %v, forecast was %v, %v", v.Answer.WalkAway, effects[0].After, err)
	}
	if cases, _, err := u.kept.FrozenCases(t.Context()); err != nil || len(cases) != 8 || cases[1].Factors != nil {
		t.Errorf("a frozen case was changed: %v", err)
	}
	if s = u.well(desk.OpenLot(open)); s.Open.Case.Factors == nil {
		t.Error("a lot that is opened later has no factors")
	}
	if s = u.well(rename("make", "x"), desk.Undo()); s.Open.Case.Factors == nil {
		t.Error("undo took the factors off")
	}
	u.learn()
	if h := u.s.Record.History; len(h) != 1 || h[0].What != book.Accepted || !strings.Contains(h[0].Words, "Hours, body: 1.00 to ") {
		t.Fatalf("%+v", h)
	}
	if p := body(t, u.s); p.Now.At != p.Proposed.At {
		t.Errorf("learned twice: now %v, proposed %v", p.Now.At, p.Proposed.At)
	}
	accepted := u.s.Record.History[0]
	u.well(desk.Restore(accepted.ID))
	u.learn()
	got := u.s.Record.History[1].Words
	if want := "All factors as they were before Hours, body was accepted on " + string(desk.Day(accepted.At)) + "."; got != want {
		t.Errorf("%q, not %q", got, want)
	}
	if s = u.well(desk.OpenLot(open)); s.Open.Case.Factors != nil {
		t.Errorf("restored, the lot has %+v", s.Open.Case.Factors)
	}
}

// An accepted factor is a step of the track record, which takes back nothing else, and nothing else takes it back.
func TestAnAcceptedFactorIsTakenBackOnItsPage(t *testing.T) {
	u, open := taught(t)
	u.well(desk.Accept("hours/body"), desk.Go(desk.Board), desk.MarkLots(lot.Passed, open))
	if s := u.well(desk.Undo()); s.Factors.Empty() || s.Notice != "Undone: mark the lot as passed." {
		t.Errorf("undo on the Board: %q, factors %+v", s.Notice, s.Factors)
	}
	u.learn()
	s := u.well(desk.Undo())
	if s.Notice != "Undone: Hours, body accepted." || !s.Factors.Empty() || !s.Record.Stale || u.lot(open).State != lot.ToLookAt {
		t.Errorf("%q: factors %+v", s.Notice, s.Factors)
	}
	if s = u.well(desk.Undo()); s.Notice != "There is nothing to undo or redo on this page." || len(s.Bought) != 8 {
		t.Errorf("%q: %d buys", s.Notice, len(s.Bought))
	}
	if s = u.well(desk.Redo()); s.Factors.Empty() {
		t.Errorf("%q: done again, no factor is in force", s.Notice)
	}
}

func TestARefusedProposalIsRememberedAndChangesNothing(t *testing.T) {
	u, _ := taught(t)
	p := body(t, u.s)
	if u.s.Record.Seen(p) != "" {
		t.Error("decided before anyone did")
	}
	u.well(desk.Refuse(p.Key))
	u.learn()
	if got := u.s.Record.Seen(body(t, u.s)); !strings.HasPrefix(got, "refused on 20") || !u.s.Record.Now.Empty() {
		t.Errorf("%q %+v", got, u.s.Record.Now)
	}
	u.kept.broken = errors.New("full")
	if s := u.do(desk.Accept(p.Key)); !strings.Contains(s.Trouble, "full") || !s.Factors.Empty() {
		t.Errorf("%q", s.Trouble)
	}
}

func TestReplayTriesTodaysFactorsOnPastLots(t *testing.T) {
	u, _ := taught(t)
	u.buy(lot.Lost, build.Build{Hammer: at(100000)}, learn.Prediction{})
	u.learn()
	reports, s := 0, u.s
	r, err := u.Again(t.Context(), s.Bought, s.Record.Now, "USD", func(float64, string) { reports++ })
	if err != nil || len(r.Lots) != 9 || reports != 9 || r.Sum.Bought+r.Sum.Refused != 8 || r.Sum.WouldBuy != 1 {
		t.Fatalf("%+v %v, %d reports", r.Sum, err, reports)
	}
	if s = s.Replayed(*s.Record, r, nil); s.Record.Replay == nil || s.Record.Replay.Sum.Selection == "" {
		t.Error("the replay was lost")
	}
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := u.Again(gone, s.Bought, s.Record.Now, "USD", func(float64, string) {}); err == nil {
		t.Error("a cancelled replay went on")
	}
}

// Answers that were ordered before a decision are of the factors before it: they are dropped, and a share is not taken from them.
func TestAnswersOfAnOlderTrackRecordAreDropped(t *testing.T) {
	u, _ := taught(t)
	of := *u.s.Record
	p := body(t, u.s)
	other := ""
	for _, x := range of.Proposals {
		if x.Key != p.Key {
			other = x.Key
		}
	}
	u.well(desk.Accept(p.Key))
	late := func(s desk.State) {
		t.Helper()
		s = s.Shown(of, other, []desk.Effect{{Share: 0}}, nil).Replayed(of, desk.Replay{}, nil)
		if s.Record == nil || len(s.Record.Effects) > 0 || s.Record.Replay != nil {
			t.Errorf("what is of the record before is in the new one: %+v", s.Record)
		}
		if failed := s.Shown(of, other, nil, errors.New("late")); failed.Trouble != s.Trouble {
			t.Errorf("a late failure is said: %q", failed.Trouble)
		}
	}
	late(u.s)
	u.learn()
	late(u.s)
	if s := u.s.Shown(*u.s.Record, other, []desk.Effect{{Share: 1}}, nil); len(s.Record.Effects) != 1 {
		t.Error("what is of this record is dropped")
	}
}
