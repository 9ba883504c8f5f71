package desk_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// won returns a user with one lot that was won at 4,200 on Live, its build open, and the lot's id.
func won(t *testing.T) (*user, int64) {
	t.Helper()
	u := newUser(t)
	c := sound("27")
	c.Resale.Guess = nil
	id := u.add(c)[0]
	u.well(desk.OpenLot(id), desk.Go(desk.Live), desk.Call(420000), desk.RecordResult(lot.Won), desk.Go(desk.Builds), desk.ShowBuild(id))
	return u, id
}

// bill returns the edit that enters a bill.
func bill(words string, amount money.Amount) desk.Action {
	return desk.EditBuild(words, func(b *build.Build) {
		b.Receipts = append(b.Receipts, build.Receipt{Kind: "part", What: "Hood", Amount: amount})
	})
}

// note returns the edit of a build's note.
func note(words string) desk.Action {
	return desk.EditBuild("note", func(b *build.Build) { b.Note = words })
}

func TestAWonLotBecomesABuild(t *testing.T) {
	u, _ := won(t)
	b := u.s.Build.Build
	if b.Outcome != build.Open || *b.Hammer != 420000 || b.Dates.Bought != "2026-11-01" ||
		!slices.Equal(b.Charges, []build.Charge{{Name: "Gate", Amount: 7500}}) {
		t.Errorf("%+v", b)
	}
	if u.s.Bought[0].Build.Dates.Bought != b.Dates.Bought || !u.s.Bought[0].Ours() {
		t.Errorf("%+v", u.s.Bought)
	}
}

func TestALostLotKeepsItsHammerPriceAndNothingElse(t *testing.T) {
	u := newUser(t)
	id := u.add(sound("27"))[0]
	u.well(desk.OpenLot(id), desk.Go(desk.Live), desk.Call(510000), desk.RecordResult(lot.Lost))
	if got := u.lot(id).Build; *got.Hammer != 510000 || got.Outcome != "" || got.Dates.Bought != "" || len(got.Charges) > 0 {
		t.Errorf("%+v", got)
	}
	if s := u.well(desk.Go(desk.Builds)); s.Bought[0].Ours() {
		t.Error("a lost lot is ours")
	}
}

func TestEditsOfABuildAreSavedAndUndone(t *testing.T) {
	u, id := won(t)
	s := u.well(bill("bill", 18000))
	if u.lot(id).Build.Spent() != 18000 || s.Bought[0].Build.Spent() != 18000 || s.Reach.Undo != "bill" || s.Build.Fresh {
		t.Fatal(u.lot(id).Build, s.Reach)
	}
	revision := s.Build.Revision
	if s = u.well(desk.Undo()); s.Notice != "Undone: bill." || s.Build.Build.Spent() != 0 || s.Build.Revision <= revision {
		t.Fatalf("%q %+v", s.Notice, s.Build.Build)
	}
	if s = u.well(desk.Redo()); s.Build.Build.Spent() != 18000 {
		t.Fatalf("%+v", s.Build.Build)
	}
	if s = u.well(desk.CloseBuild()); s.Build != nil || s.Bought[0].Build.Spent() != 18000 {
		t.Errorf("%+v", s.Bought)
	}
	u.well(desk.EditBuild("bill", func(*build.Build) { t.Error("edited with no build open") }))
}

func TestWhatCannotBeOfABuildIsNotSaved(t *testing.T) {
	u, id := won(t)
	s := u.do(desk.EditBuild("day", func(b *build.Build) { b.Dates.Sold = "2020-01-01" }))
	if !strings.Contains(s.Trouble, "Sold on 2020-01-01 comes before Bought") || u.lot(id).Build.Dates.Sold != "" {
		t.Errorf("%q %+v", s.Trouble, u.lot(id).Build)
	}
	u.kept.broken = errors.New("full")
	if s = u.do(note("n")); !strings.Contains(s.Trouble, "full") || s.Build.Build.Note != "" {
		t.Errorf("%q %+v", s.Trouble, s.Build.Build)
	}
}

func TestTheInvoiceFollowsTheHammerPriceUntilItIsChangedByHand(t *testing.T) {
	u, _ := won(t)
	s := u.well(desk.EditBuild("x", func(b *build.Build) { b.Charges = nil }), desk.SetHammer(at(500000)))
	if *s.Build.Build.Hammer != 500000 || len(s.Build.Build.Charges) != 1 {
		t.Fatalf("%+v", s.Build.Build)
	}
	s = u.well(desk.EditBuild("charge", func(b *build.Build) { b.Charges[0].Amount = 8000 }), desk.SetHammer(at(600000)))
	if s.Build.Build.Charges[0].Amount != 8000 {
		t.Errorf("a charge entered by hand became %+v", s.Build.Build.Charges)
	}
	if s = u.well(desk.SetHammer(nil)); s.Build.Build.Hammer != nil {
		t.Error("the hammer price cannot be taken back")
	}
}

// Marking a lot won again, on the Board or on Live, leaves what was corrected on its invoice by hand.
func TestMarkingWonAgainKeepsTheInvoice(t *testing.T) {
	u, id := won(t)
	u.well(desk.EditBuild("charge", func(b *build.Build) { b.Charges[0].Amount = 8000 }))
	for _, way := range [][]desk.Action{
		{desk.Go(desk.Board), desk.MarkLots(lot.Lost, id), desk.MarkLots(lot.Won, id)},
		{desk.OpenLot(id), desk.Go(desk.Live), desk.Call(430000), desk.RecordResult(lot.Won)},
	} {
		u.well(way...)
		if got := u.lot(id).Build.Charges; !slices.Equal(got, []build.Charge{{Name: "Gate", Amount: 8000}}) {
			t.Errorf("the invoice has %+v", got)
		}
	}
}

func TestAForecastOfAnOlderBuildIsDropped(t *testing.T) {
	u, id := won(t)
	old := u.s.Build.Revision
	s := u.well(note("n"))
	f := valuation.Foresight{Currency: "USD"}
	if got := s.Foreseen(id, old, f, nil); got.Build.Forecast != nil {
		t.Error("an old forecast was shown")
	}
	if got := s.Foreseen(id, s.Build.Revision, f, nil); got.Build.Forecast == nil || !got.Build.Fresh {
		t.Error("the forecast was dropped")
	}
	_, err := u.Foresee(s.Build.Case, s.Build.Build)
	if err == nil || !strings.Contains(err.Error(), "worksheet has a fault") {
		t.Errorf("a case with faults was foreseen: %v", err)
	}
	if got := s.Foreseen(id, s.Build.Revision, f, err); got.Build.Problem == "" || got.Build.Forecast != nil {
		t.Errorf("%+v", got.Build)
	}
}

// takePast takes past buys in, as the window does.
func (u *user) takePast(sheet desk.Sheet) {
	e, err := u.TakePast(u.t.Context(), u.s, sheet)
	u.s = u.PastArrived(u.t.Context(), u.s, e, err)
}

// The list of builds is whole after every step through a history that changes it.
func TestTheListOfBuildsIsReadAgainAfterUndoAndRedo(t *testing.T) {
	u, id := won(t)
	u.well(desk.CloseBuild())
	const past = "id,make,bought,price_paid,sold_for\n1,Kettrick,2025-03-01,4200,11900\n2,Ostrane,2025-04-01,3100,\n"
	sheet, err := u.OpenPast(t.Context(), []byte(past), desk.Opening{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	if u.takePast(sheet); len(u.s.Bought) != 3 {
		t.Fatalf("%q: %d builds", u.s.Trouble, len(u.s.Bought))
	}
	u.s = u.Do(t.Context(), u.s, desk.Go(desk.Builds))
	if u.s.Reach.Undo != "import past buys" {
		t.Errorf("an import of past buys is no step: %+v", u.s.Reach)
	}
	for _, step := range []struct {
		action desk.Action
		builds int
	}{{desk.Undo(), 1}, {desk.Redo(), 3}, {desk.Undo(), 1}} {
		if s := u.well(step.action); len(s.Bought) != step.builds {
			t.Errorf("%q: %d builds are listed, want %d", s.Notice, len(s.Bought), step.builds)
		}
	}
	u.well(desk.OpenLot(id), desk.Go(desk.Live), desk.Undo())
	if s := u.well(desk.Go(desk.Builds)); len(s.Bought) != 0 || s.Reach.Redo != "import past buys" {
		t.Errorf("with no lot won %d are listed, %+v", len(s.Bought), s.Reach)
	}
}

// A bill that was entered since is left when the result on Live is taken back, and nothing of Live when the build's step is.
func TestTakingAResultBackLeavesABillEnteredSince(t *testing.T) {
	u, id := won(t)
	u.well(bill("bill", 18000), desk.OpenLot(id))
	if s := u.well(desk.Undo()); u.lot(id).State != lot.Won || u.lot(id).Build.Hammer == nil {
		t.Errorf("undo on the worksheet took back what was recorded on Live: %q", s.Notice)
	}
	s := u.well(desk.Go(desk.Live), desk.Undo())
	if l := u.lot(id); l.State != lot.ToLookAt || l.Build.Hammer != nil || l.Build.Outcome != "" || l.Build.Spent() != 18000 {
		t.Errorf("%q: kept %s %+v", s.Notice, l.State, l.Build)
	}
	s = u.well(desk.Redo(), desk.Go(desk.Builds), desk.ShowBuild(id), desk.Undo())
	if l := u.lot(id); s.Notice != "Undone: bill." || l.State != lot.Won || *l.Build.Hammer != 420000 || l.Build.Spent() != 0 {
		t.Errorf("%q: kept %s %+v", s.Notice, l.State, l.Build)
	}
	if s.Reach != (book.Reach{Redo: "bill"}) {
		t.Errorf("%+v", s.Reach)
	}
}
