package desk_test

import (
	"errors"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

func newDesk() (*desk.Desk, *book) {
	b := newBook()
	starter := valuation.Defaults()
	starter.Currency = "USD"
	return &desk.Desk{Book: b, Importer: importer{}, Lister: lister{}, Documents: documents{}, Starter: starter, Today: func() lot.Date { return "2026-11-20" },
		Demo: func() []valuation.Case { return []valuation.Case{starter, starter} }}, b
}

func rename(name string) func(*valuation.Case) {
	return func(c *valuation.Case) { c.Lot.Make = name }
}

func TestNewLotOpensWithTheShopsTerms(t *testing.T) {
	d, _ := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	if s.Trouble != "" || s.Open == nil || s.Open.Case.ValuedOn != "2026-11-20" || len(s.Entries) != 1 || s.Notice == "" {
		t.Fatalf("%+v", s)
	}
	if len(s.Open.Faults) == 0 || s.Open.Valued != nil {
		t.Errorf("a new lot has faults %v, valued %v", s.Open.Faults, s.Open.Valued)
	}
	s = d.Edit(t.Context(), s, "rate", func(c *valuation.Case) { c.Selling.Percent, c.Lot.Make = .07, "Tarn" })
	s = d.NewLot(t.Context(), s)
	if c := s.Open.Case; c.Selling.Percent != 0 || c.Lot.Make != "" || len(s.Entries) != 2 {
		t.Errorf("the second lot took from the first: selling %g, make %q", c.Selling.Percent, c.Lot.Make)
	}
	s = d.EditShop(t.Context(), s, "selling", func(shop *desk.Shop) { shop.Selling.Percent, shop.OdometerUnit = .06, "km" })
	s = d.NewLot(t.Context(), d.Load(t.Context()))
	if c := s.Open.Case; c.Selling.Percent != .06 || c.Lot.OdometerUnit != "km" {
		t.Errorf("a lot after the shop's change: selling %g, unit %q", c.Selling.Percent, c.Lot.OdometerUnit)
	}
}

func TestEditUndoRedo(t *testing.T) {
	d, b := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	first := s
	s = d.Edit(t.Context(), s, "make", rename("Tarn"))
	s = d.Edit(t.Context(), s, "make again", rename("Orrin"))
	if first.Open.Case.Lot.Make != "" {
		t.Error("an edit reached back into an earlier state")
	}
	if s.Open.Reach != (desk.Reach{Undo: "make again"}) || b.cases[s.Open.ID].Lot.Make != "Orrin" {
		t.Errorf("reach %+v, kept %q", s.Open.Reach, b.cases[s.Open.ID].Lot.Make)
	}
	revision := s.Open.Revision
	s = d.Undo(t.Context(), s)
	if s.Open.Case.Lot.Make != "Tarn" || s.Open.Reach != (desk.Reach{Undo: "make", Redo: "make again"}) || s.Notice != "Undone: make again." || s.Open.Revision <= revision {
		t.Errorf("after undo: %q, %+v, %q", s.Open.Case.Lot.Make, s.Open.Reach, s.Notice)
	}
	s = d.Redo(t.Context(), s)
	if s.Open.Case.Lot.Make != "Orrin" || s.Open.Reach != (desk.Reach{Undo: "make again"}) || s.Notice != "Done again: make again." {
		t.Errorf("after redo: %q, %+v, %q", s.Open.Case.Lot.Make, s.Open.Reach, s.Notice)
	}
	if again := d.Redo(t.Context(), s); again.Open.Case.Lot.Make != "Orrin" || again.Notice == "" || again.Open.Revision != s.Open.Revision {
		t.Errorf("nothing to redo: %q, %q", again.Open.Case.Lot.Make, again.Notice)
	}
}

func TestAnEditThatCannotBeSavedIsNotShown(t *testing.T) {
	d, b := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	b.broken = errors.New("the disk is full")
	after := d.Edit(t.Context(), s, "make", rename("Tarn"))
	if !strings.Contains(after.Trouble, "the disk is full") || after.Open.Case.Lot.Make != "" || after.Open.Revision != s.Open.Revision {
		t.Errorf("%q, make %q", after.Trouble, after.Open.Case.Lot.Make)
	}
}

func TestLateAnswersAreDropped(t *testing.T) {
	d, b := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	id, old := s.Open.ID, s.Open.Revision
	v := desk.Valued{Answer: valuation.Answer{Decision: "bid"}}
	s = d.Edit(t.Context(), s, "make", rename("Tarn"))
	for name, late := range map[string]desk.State{
		"older revision": d.Arrived(t.Context(), s, id, old, v, nil),
		"other lot":      d.Arrived(t.Context(), s, id+1, s.Open.Revision, v, nil),
		"closed lot":     d.Arrived(t.Context(), d.CloseLot(t.Context(), s), id, s.Open.Revision, v, nil),
		"late failure":   d.Arrived(t.Context(), s, id, old, v, errors.New("no price")),
	} {
		if late.Open != nil && (late.Open.Valued != nil || late.Open.Problem != "" || late.Open.Fresh) {
			t.Errorf("%s: taken: %+v", name, late.Open)
		}
	}
	if len(b.answers) != 0 {
		t.Errorf("late answers were kept: %v", b.answers)
	}
	s = d.Arrived(t.Context(), s, id, s.Open.Revision, v, nil)
	if s.Open.Valued == nil || !s.Open.Fresh || b.answers[id].Decision != "bid" {
		t.Errorf("the answer in time: %+v", s.Open)
	}
	if s = d.Edit(t.Context(), s, "make", rename("Orrin")); s.Open.Fresh || s.Open.Valued == nil {
		t.Error("after an edit the old answer stays, but is not fresh")
	}
	if s = d.Arrived(t.Context(), s, id, s.Open.Revision, desk.Valued{}, errors.New("no price")); s.Open.Problem != "no price" || s.Open.Fresh {
		t.Errorf("a failure in time: %+v", s.Open)
	}
}

func TestApplyReconcilesAndRemembers(t *testing.T) {
	d, _ := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	sheet, err := d.OpenSheet(t.Context(), []byte("price\n100\n200\nbad\n200\n"), "USD")
	if err != nil || len(sheet.Doubts) != 1 {
		t.Fatalf("%+v, %v", sheet, err)
	}
	sheet.Stated.Unit = "km"
	s, refused := d.Apply(t.Context(), s, sheet)
	if len(refused) != 1 || len(s.Open.Case.Resale.Rows) != 2 || s.Notice != "4 rows read: 2 new, 1 the same, 0 changed, 1 refused." {
		t.Errorf("%d refused, %d rows, %q", len(refused), len(s.Open.Case.Resale.Rows), s.Notice)
	}
	if s.Open.Reach.Undo != "import comparables" {
		t.Errorf("undo would take back %q", s.Open.Reach.Undo)
	}
	s, _ = d.Apply(t.Context(), s, sheet)
	if len(s.Open.Case.Resale.Rows) != 2 || s.Notice != "4 rows read: 0 new, 3 the same, 0 changed, 1 refused." {
		t.Errorf("the same table again: %d rows, %q", len(s.Open.Case.Resale.Rows), s.Notice)
	}
	again, err := d.OpenSheet(t.Context(), []byte("price\n300\n"), "USD")
	if err != nil || again.Stated.Unit != "km" || len(again.Doubts) != 0 {
		t.Errorf("the next table with these columns: %+v, %v", again, err)
	}
	other, err := d.OpenSheet(t.Context(), []byte("cost\n300\n"), "USD")
	if err != nil || other.Stated.Unit != "" || len(other.Doubts) != 1 {
		t.Errorf("a table with other columns: %+v, %v", other, err)
	}
}

func TestTheBoardUndoesMarksArchivesRemovalsAndCopies(t *testing.T) {
	d, _ := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	id := s.Open.ID
	s = d.CloseLot(t.Context(), s)
	s = d.SetState(t.Context(), s, id, lot.Passed)
	s = d.Archive(t.Context(), s, id, true)
	s = d.Duplicate(t.Context(), s, id)
	s = d.Remove(t.Context(), s, id)
	if len(s.Entries) != 1 || s.Reach() != (desk.Reach{Undo: "remove"}) {
		t.Fatalf("after all: %+v", s)
	}
	for _, want := range []string{"Undone: remove.", "Undone: new lot.", "Undone: archive.", "Undone: mark as passed."} {
		if s = d.Undo(t.Context(), s); s.Notice != want || s.Trouble != "" {
			t.Errorf("%q %q, want %q", s.Notice, s.Trouble, want)
		}
	}
	if len(s.Entries) != 1 || s.Entries[0].State != lot.ToLookAt || s.Entries[0].Archived {
		t.Errorf("all undone: %+v", s.Entries)
	}
	if s = d.Redo(t.Context(), s); s.Entries[0].State != lot.Passed || s.Notice != "Done again: mark as passed." {
		t.Errorf("redone: %+v", s)
	}
	s = d.Undo(t.Context(), d.Undo(t.Context(), s))
	if s = d.Undo(t.Context(), s); s.Notice != "There is no such step in this history." || len(s.Entries) != 0 {
		t.Errorf("undo before the first step: %+v", s)
	}
}

func TestRemovingTheOpenLotShowsTheBoard(t *testing.T) {
	d, _ := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	if s = d.Remove(t.Context(), s, s.Open.ID); s.Open != nil || s.Place != desk.Board || len(s.Entries) != 0 {
		t.Errorf("after removing: %+v", s)
	}
	if s = d.Undo(t.Context(), s); len(s.Entries) != 1 {
		t.Errorf("after undo: %+v", s)
	}
}

func TestMarksAndCopies(t *testing.T) {
	d, b := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	id := s.Open.ID
	if s = d.SetState(t.Context(), s, id, lot.Passed); s.Open.State != lot.Passed || s.Entries[0].State != lot.Passed {
		t.Errorf("marked: %+v", s)
	}
	if s = d.Archive(t.Context(), s, id, true); !s.Entries[0].Archived {
		t.Error("not archived")
	}
	if s = d.Duplicate(t.Context(), s, id); len(s.Entries) != 2 {
		t.Error("not copied")
	}
	b.broken = errors.New("locked")
	for name, after := range map[string]desk.State{"mark": d.SetState(t.Context(), s, id, lot.Won), "archive": d.Archive(t.Context(), s, id, false),
		"copy": d.Duplicate(t.Context(), s, id), "remove": d.Remove(t.Context(), s, id), "load": d.Load(t.Context())} {
		if !strings.Contains(after.Trouble, "locked") {
			t.Errorf("%s: trouble %q", name, after.Trouble)
		}
	}
}

// A lot that can be valued has its prediction kept when it is marked as bid, and not when it is passed.
func TestBidFreezesThePrediction(t *testing.T) {
	d, b := newDesk()
	d.Starter.ValuedOn, d.Starter.Run.Scenarios = "2026-11-20", 256
	d.Starter.Repair.UseCatalogue, d.Starter.Hidden.UseCatalogue = false, false
	d.Starter.Resale.Guess = &prob.Three{Low: 8000, Likely: 9000, High: 10000}
	d.Starter.Buying.BidSteps = []invoice.Step{{Step: 2500}}
	least := money.Amount(100000)
	d.Starter.Rules.MinProfit = &least
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	s = d.Edit(t.Context(), s, "facts", func(c *valuation.Case) {
		c.Lot.Make, c.Lot.Title.Document, c.Findings = "Kettrick", "salvage", map[string]string{valuation.NothingSeen: "no"}
	})
	if len(s.Open.Faults) > 0 {
		t.Fatal(s.Open.Faults)
	}
	s = d.SetState(t.Context(), s, s.Open.ID, lot.Passed)
	if len(b.foretold) != 0 {
		t.Error("a lot passed over was foretold")
	}
	s = d.SetState(t.Context(), s, s.Open.ID, lot.Bid)
	if kept := b.foretold[s.Open.ID]; s.Trouble != "" || len(kept) != 1 || kept[0].WalkAway == nil {
		t.Errorf("%q, kept %d", s.Trouble, len(kept))
	}
}

func TestNothingOpen(t *testing.T) {
	d, _ := newDesk()
	if s := d.Edit(t.Context(), desk.State{}, "x", rename("x")); s.Open != nil || s.Trouble != "" {
		t.Errorf("an edit of nothing: %+v", s)
	}
	if s := d.Redo(t.Context(), desk.State{}); s.Notice == "" {
		t.Error("redo on the Board says nothing")
	}
	if s := d.LoadDemo(t.Context(), desk.State{}); len(s.Entries) != 2 || s.Trouble != "" {
		t.Errorf("demo: %+v", s)
	}
}

func TestValueNamesTheFirstFault(t *testing.T) {
	d, _ := newDesk()
	c := d.Starter
	c.Currency = "ZZZ"
	if _, err := d.Value(c); err == nil || !strings.Contains(err.Error(), "currency") {
		t.Errorf("%v", err)
	}
}
