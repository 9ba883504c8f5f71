package desk_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
)

func TestNewLotOpensWithTheShopsTerms(t *testing.T) {
	u := newUser(t)
	s := u.well(desk.NewLot())
	if s.Open == nil || s.Open.Case.ValuedOn != "2026-11-20" || len(s.Entries) != 1 || s.Notice == "" {
		t.Fatalf("%+v", s)
	}
	if len(s.Open.Faults) == 0 || s.Open.Valued != nil {
		t.Errorf("a new lot has faults %v, valued %v", s.Open.Faults, s.Open.Valued)
	}
	s = u.well(desk.EditLot("rate", func(c *valuation.Case) { c.Selling.Percent, c.Lot.Make = .07, "Tarn" }), desk.NewLot())
	if c := s.Open.Case; c.Selling.Percent != 0 || c.Lot.Make != "" || len(s.Entries) != 2 {
		t.Errorf("the second lot took from the first: selling %g, make %q", c.Selling.Percent, c.Lot.Make)
	}
	u.well(desk.EditShop("selling", func(shop *desk.Shop) { shop.Selling.Percent, shop.OdometerUnit = .06, "km" }))
	u.start()
	if c := u.well(desk.NewLot()).Open.Case; c.Selling.Percent != .06 || c.Lot.OdometerUnit != "km" {
		t.Errorf("a lot after the shop's change: selling %g, unit %q", c.Selling.Percent, c.Lot.OdometerUnit)
	}
}

func TestEditUndoRedo(t *testing.T) {
	u := newUser(t)
	id := u.newLot()
	first := u.s
	s := u.well(rename("make", "Tarn"), rename("make again", "Orrin"))
	if first.Open.Case.Lot.Make != "" {
		t.Error("an edit reached back into an earlier state")
	}
	if s.Reach != (book.Reach{Undo: "make again"}) || u.lot(id).Case.Lot.Make != "Orrin" {
		t.Errorf("reach %+v, kept %q", s.Reach, u.lot(id).Case.Lot.Make)
	}
	revision := s.Open.Revision
	s = u.well(desk.Undo())
	if s.Open.Case.Lot.Make != "Tarn" || s.Reach != (book.Reach{Undo: "make", Redo: "make again"}) ||
		s.Notice != "Undone: make again." || s.Open.Revision <= revision {
		t.Errorf("after undo: %q, %+v, %q", s.Open.Case.Lot.Make, s.Reach, s.Notice)
	}
	s = u.well(desk.Redo())
	if s.Open.Case.Lot.Make != "Orrin" || s.Reach != (book.Reach{Undo: "make again"}) || s.Notice != "Done again: make again." {
		t.Errorf("after redo: %q, %+v, %q", s.Open.Case.Lot.Make, s.Reach, s.Notice)
	}
	if again := u.well(desk.Redo()); again.Open.Case.Lot.Make != "Orrin" || again.Notice == "" || again.Open.Revision != s.Open.Revision {
		t.Errorf("nothing to redo: %q, %q", again.Open.Case.Lot.Make, again.Notice)
	}
}

func TestAnEditThatCannotBeSavedIsNotShown(t *testing.T) {
	u := newUser(t)
	u.newLot()
	before := u.s
	u.kept.broken = errors.New("the disk is full")
	if s := u.do(rename("make", "Tarn")); !strings.Contains(s.Trouble, "the disk is full") || s.Open.Case.Lot.Make != "" ||
		s.Open.Revision != before.Open.Revision {
		t.Errorf("%q, make %q", s.Trouble, s.Open.Case.Lot.Make)
	}
}

func TestLateAnswersAreDropped(t *testing.T) {
	u := newUser(t)
	id := u.newLot()
	old := u.s.Open.Revision
	v := desk.Valued{Answer: valuation.Answer{Decision: "bid"}}
	s := u.well(rename("make", "Tarn"))
	for name, late := range map[string]desk.State{
		"older revision": u.Arrived(t.Context(), s, id, old, v, nil),
		"other lot":      u.Arrived(t.Context(), s, id+1, s.Open.Revision, v, nil),
		"closed lot":     u.Arrived(t.Context(), u.Do(t.Context(), s, desk.Go(desk.Board)), id, s.Open.Revision, v, nil),
		"late failure":   u.Arrived(t.Context(), s, id, old, v, errors.New("no price")),
	} {
		if late.Open != nil && (late.Open.Valued != nil || late.Open.Problem != "" || late.Open.Fresh) {
			t.Errorf("%s: taken: %+v", name, late.Open)
		}
	}
	if a := u.Load(t.Context()).Entries[0].Answer; a != nil {
		t.Errorf("a late answer was kept: %+v", a)
	}
	u.s = u.Arrived(t.Context(), s, id, s.Open.Revision, v, nil)
	if a := u.Load(t.Context()).Entries[0].Answer; u.s.Open.Valued == nil || !u.s.Open.Fresh || a == nil || a.Decision != "bid" || a.Stale {
		t.Errorf("the answer in time: %+v, kept %+v", u.s.Open, a)
	}
	if s = u.well(rename("make", "Orrin")); s.Open.Fresh || s.Open.Valued == nil {
		t.Error("after an edit the old answer stays, but is not fresh")
	}
	if s = u.Arrived(t.Context(), s, id, s.Open.Revision, desk.Valued{}, errors.New("no price")); s.Open.Problem != "no price" ||
		s.Open.Fresh {
		t.Errorf("a failure in time: %+v", s.Open)
	}
}

const prices = "price,mileage,kind\n9000,81000,sold\n9500,82000,sold\ncall,83000,sold\n9500,82000,sold\n"

func TestApplyReconcilesAndRemembers(t *testing.T) {
	u := newUser(t)
	u.newLot()
	sheet, err := u.OpenSheet(t.Context(), []byte(prices), desk.Opening{Currency: "USD"})
	if err != nil || len(sheet.Doubts) == 0 {
		t.Fatalf("%+v, %v", sheet, err)
	}
	sheet.Stated.Unit = "km"
	refused := u.takeIn(sheet)
	if len(refused) != 1 || len(u.s.Open.Case.Resale.Rows) != 3 ||
		u.s.Notice != "4 rows read: 3 new, 0 the same, 0 changed, 1 refused." || u.s.Reach.Undo != "import comparables" {
		t.Errorf("%d refused, %d rows, %q %q, %+v", len(refused), len(u.s.Open.Case.Resale.Rows), u.s.Notice, u.s.Trouble, u.s.Reach)
	}
	if u.takeIn(sheet); len(u.s.Open.Case.Resale.Rows) != 3 ||
		u.s.Notice != "4 rows read: 0 new, 3 the same, 0 changed, 1 refused." {
		t.Errorf("the same table again: %d rows, %q", len(u.s.Open.Case.Resale.Rows), u.s.Notice)
	}
	again, err := u.OpenSheet(t.Context(), []byte(prices), desk.Opening{Currency: "USD"})
	if err != nil || again.Stated.Unit != "km" || len(again.Doubts) != 0 {
		t.Errorf("the next table with these columns: %+v, %v", again, err)
	}
	other, err := u.OpenSheet(t.Context(), []byte(strings.Replace(prices, "price", "asking price", 1)), desk.Opening{Currency: "USD"})
	if err != nil || other.Stated.Unit == "km" || len(other.Doubts) == 0 {
		t.Errorf("a table with other columns: %+v, %v", other, err)
	}
}

func TestTheBoardUndoesMarksArchivesRemovalsAndCopies(t *testing.T) {
	u := newUser(t)
	id := u.newLot()
	s := u.well(desk.Go(desk.Board), desk.MarkLots(lot.Passed, id), desk.ArchiveLots(true, id), desk.DuplicateLots(id), desk.RemoveLots(id))
	if len(s.Entries) != 1 || s.Reach != (book.Reach{Undo: "remove the lot"}) {
		t.Fatalf("after all: %+v %+v", s.Entries, s.Reach)
	}
	for _, want := range []string{"Undone: remove the lot.", "Undone: duplicate the lot.", "Undone: archive the lot.",
		"Undone: mark the lot as passed."} {
		if s = u.well(desk.Undo()); s.Notice != want {
			t.Errorf("%q, want %q", s.Notice, want)
		}
	}
	if len(s.Entries) != 1 || s.Entries[0].State != lot.ToLookAt || s.Entries[0].Archived {
		t.Errorf("all undone: %+v", s.Entries)
	}
	if s = u.well(desk.Redo()); s.Entries[0].State != lot.Passed || s.Notice != "Done again: mark the lot as passed." {
		t.Errorf("redone: %+v", s)
	}
	if s = u.well(desk.Undo(), desk.Undo(), desk.Undo()); s.Notice != "There is nothing to undo or redo on this page." || len(s.Entries) != 0 {
		t.Errorf("undo before the first step: %+v", s)
	}
}

func TestRemovingTheOpenLotShowsTheBoard(t *testing.T) {
	u := newUser(t)
	if s := u.well(desk.RemoveLots(u.newLot())); s.Open != nil || s.Place != desk.Board || len(s.Entries) != 0 {
		t.Errorf("after removing: %+v", s)
	}
	if s := u.well(desk.Undo()); len(s.Entries) != 1 {
		t.Errorf("after undo: %+v", s)
	}
}

func TestMarksAndCopies(t *testing.T) {
	u := newUser(t)
	id := u.newLot()
	if s := u.well(desk.MarkLots(lot.Passed, id)); s.Open.State != lot.Passed || s.Entries[0].State != lot.Passed {
		t.Errorf("marked: %+v", s)
	}
	if s := u.well(desk.ArchiveLots(true, id)); !s.Entries[0].Archived {
		t.Error("not archived")
	}
	if s := u.well(desk.ArchiveLots(false, id), desk.DuplicateLots(id)); len(s.Entries) != 2 || s.Entries[0].Archived {
		t.Errorf("taken out of the archive and copied: %+v", s.Entries)
	}
	u.kept.broken = errors.New("locked")
	for name, after := range map[string]desk.State{"mark": u.do(desk.MarkLots(lot.Won, id)), "archive": u.do(desk.ArchiveLots(true, id)),
		"copy": u.do(desk.DuplicateLots(id)), "remove": u.do(desk.RemoveLots(id)), "load": u.Load(t.Context())} {
		if !strings.Contains(after.Trouble, "locked") {
			t.Errorf("%s: trouble %q", name, after.Trouble)
		}
	}
}

// A lot that can be valued has its prediction kept when it is marked as bid, and not when it is passed.
func TestBidFreezesThePrediction(t *testing.T) {
	u := newUser(t)
	id := u.add(sound("14"))[0]
	if u.well(desk.OpenLot(id), desk.MarkLots(lot.Passed, id)); u.frozen() != 0 {
		t.Error("a lot passed over was forecast")
	}
	if u.well(desk.MarkLots(lot.Bid, id)); u.frozen() != 1 {
		t.Errorf("%d lots were forecast", u.frozen())
	}
}

func TestNothingOpen(t *testing.T) {
	u := newUser(t)
	if s := u.well(rename("x", "x")); s.Open != nil {
		t.Errorf("an edit of nothing: %+v", s)
	}
	if s := u.well(desk.Redo()); s.Notice == "" {
		t.Error("redo on the Board says nothing")
	}
	if s := u.well(desk.LoadDemo()); len(s.Entries) != 2 {
		t.Errorf("demo: %+v", s)
	}
	if s := u.do(desk.Go(desk.Live)); s.Place != desk.Board || !strings.Contains(s.Notice, "Open a lot first") {
		t.Errorf("Live with no lot: %q at %q", s.Notice, s.Place)
	}
}

func TestValueNamesTheFirstFault(t *testing.T) {
	c := valuation.Defaults()
	c.Currency = "ZZZ"
	if _, err := (&desk.Desk{}).Value(t.Context(), c); err == nil || !strings.Contains(err.Error(), "currency") {
		t.Errorf("%v", err)
	}
}

// Work that was called off while it waited for its turn does not begin, so that of ten edits only the last is worked out.
func TestWorkThatIsCalledOffDoesNotBegin(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	c := sound("14")
	d := &desk.Desk{}
	if v, err := d.Value(ctx, c); !errors.Is(err, context.Canceled) || v.Answer.Format != "" {
		t.Errorf("valued: %v", err)
	}
	c.Resale = valuation.Resale{}
	if _, err := d.Outline(ctx, c); !errors.Is(err, context.Canceled) {
		t.Errorf("outlined: %v", err)
	}
	if _, err := d.Outline(t.Context(), c); err != nil {
		t.Errorf("a work that stands: %v", err)
	}
	if _, err := d.DecisionSheet(ctx, desk.Open{Case: sound("14")}, "a4"); err == nil {
		t.Error("a sheet was printed")
	}
}
