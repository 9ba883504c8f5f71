package desk_test

import (
	"fmt"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
)

// odometer returns the edit of the open lot's odometer.
func odometer(miles int) desk.Action {
	return desk.EditLot("odometer", func(c *valuation.Case) { c.Lot.Odometer = &miles })
}

// A run list that came in while a lot was open is not undone by the next edit on the page, which began with the case as it was: fields
// that do not clash are merged, one that does is asked about.
func TestARunListIsNotUndoneByTheOpenLotsNextEdit(t *testing.T) {
	u := newUser(t)
	c := sound("14")
	c.Lot.Sale, c.Lot.SaleDate, c.Lot.ModelYear, c.Lot.Make, c.Lot.Model = "North yard", "2026-11-28", 2019, "Ostrane", "Pell"
	id := u.add(c)[0]
	page := u.well(desk.OpenLot(id))
	u.start()
	if u.enlist(runList, "North yard"); u.lot(id).Case.Lot.Odometer == nil || *u.lot(id).Case.Lot.Odometer != 61200 {
		t.Fatalf("%q %q: the list did not reach the lot", u.s.Notice, u.s.Trouble)
	}
	u.s = page
	u.well(rename("make", "Tarn"))
	if l := u.lot(id).Case.Lot; l.Make != "Tarn" || l.Odometer == nil || *l.Odometer != 61200 || *u.s.Open.Case.Lot.Odometer != 61200 {
		t.Errorf("kept %+v, shown %+v", l, u.s.Open.Case.Lot)
	}
	u.s = page
	s := u.do(odometer(70000))
	if s.Clash == nil || !strings.Contains(s.Clash.Words, "lot.odometer") || s.Trouble == "" || *u.lot(id).Case.Lot.Odometer != 61200 ||
		*s.Open.Case.Lot.Odometer != 61200 {
		t.Fatalf("%+v, %q, kept %v", s.Clash, s.Trouble, *u.lot(id).Case.Lot.Odometer)
	}
	if s = u.well(s.Clash.Mine); *u.lot(id).Case.Lot.Odometer != 70000 || *s.Open.Case.Lot.Odometer != 70000 || s.Reach.Undo != "odometer" {
		t.Errorf("forced, kept %v, %+v", *u.lot(id).Case.Lot.Odometer, s.Reach)
	}
	if u.well(desk.Undo()); *u.lot(id).Case.Lot.Odometer != 61200 {
		t.Errorf("undone, kept %v", *u.lot(id).Case.Lot.Odometer)
	}
}

// On Builds with a lot open in the background, undo leaves a run list alone.
func TestUndoOnBuildsLeavesARunListAlone(t *testing.T) {
	u := newUser(t)
	u.enlist(runList, "North yard")
	id := u.s.Entries[0].ID
	u.well(desk.OpenLot(id), desk.Go(desk.Builds))
	if s := u.well(desk.Undo()); s.Notice != "There is nothing to undo or redo on this page." || len(s.Entries) != 2 {
		t.Errorf("%q, %d lots", s.Notice, len(s.Entries))
	}
}

// An answer that comes late is filed with the revision that it answers: the Board shows it as that of an older case.
func TestAnAnswerToAnOlderCaseIsStaleOnTheBoard(t *testing.T) {
	u := newUser(t)
	id := u.add(sound("14"))[0]
	page := u.well(desk.OpenLot(id))
	v, err := u.Value(t.Context(), page.Open.Case)
	if err != nil {
		t.Fatal(err)
	}
	u.well(desk.EditLot("guess", func(c *valuation.Case) { c.Resale.Guess = nil })) // from another page
	u.Arrived(t.Context(), page, id, page.Open.Revision, v, nil)
	if u.start(); u.s.Entries[0].Answer == nil || !u.s.Entries[0].Answer.Stale {
		t.Errorf("the Board shows %+v as the answer to a lot that has a fault now", u.s.Entries[0].Answer)
	}
}

// What is typed in one field is one step, whatever it is in; a tick is one each.
func TestTypingIsOneStep(t *testing.T) {
	u, id := won(t)
	for i := range 40 {
		u.well(note(strings.Repeat("x", i+1)).Typed("note"))
	}
	for _, done := range []string{"paid", "sent"} {
		u.well(desk.EditBuild("tick", func(b *build.Build) { b.Done = append(b.Done, done) }))
	}
	for _, want := range []string{"[paid] 40", "[] 40", "[] 0"} {
		u.well(desk.Undo())
		if b := u.lot(id).Build; fmt.Sprint(b.Done, len(b.Note)) != want {
			t.Errorf("%q: kept %v and %d letters, want %s", u.s.Notice, b.Done, len(b.Note), want)
		}
	}
	if u.s.Reach != (book.Reach{Redo: "note"}) {
		t.Errorf("%+v", u.s.Reach)
	}
}
