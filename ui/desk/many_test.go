package desk_test

import (
	"context"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Many lots are archived and moved at once, and one step of undo takes all of it back.
func TestManyLotsAreOneStep(t *testing.T) {
	u := newUser(t)
	ids := u.add(sound("14"), sound("27"), sound("33"))
	u.well(desk.Go(desk.Board))
	sale := u.lot(ids[0]).Case.Lot.Sale
	s := u.well(desk.MoveLots("Lower Pans", "2026-12-11", ids[0], ids[2]), desk.ArchiveLots(true, ids...))
	for i, e := range s.Entries {
		if moved := e.Number != "27"; moved != (e.Sale == "Lower Pans" && e.SaleDate == "2026-12-11") || !e.Archived {
			t.Errorf("%d: lot %s at %q on %s, archived %v", i, e.Number, e.Sale, e.SaleDate, e.Archived)
		}
	}
	if s = u.do(desk.Undo()); s.Notice != "Undone: archive 3 lots." {
		t.Errorf("undo says %q", s.Notice)
	}
	for _, e := range u.do(desk.Undo()).Entries {
		if e.Archived || e.Sale != sale {
			t.Errorf("lot %s is at %q, archived %v", e.Number, e.Sale, e.Archived)
		}
	}
}

// Many lots are marked in one step, and copied in one; what can't be forecast of them is said once.
func TestManyLotsAreMarkedAndCopiedInOneStep(t *testing.T) {
	u := newUser(t)
	bare := valuation.Defaults()
	bare.Lot.Number = "16"
	ids := u.add(sound("14"), sound("15"), bare)
	s := u.well(desk.MarkLots(lot.Lost, ids...))
	if s.Reach.Undo != "mark 3 lots as lost" || s.Notice != "Marked 3 lots: lost. What it went for, you tell under Lot > Went for." {
		t.Errorf("%q, %q", s.Reach.Undo, s.Notice)
	}
	for _, e := range s.Entries {
		if e.State != lot.Lost {
			t.Errorf("lot %s is %s", e.Number, e.State)
		}
	}
	for _, e := range u.well(desk.Undo()).Entries {
		if e.State != lot.ToLookAt {
			t.Errorf("taken back, lot %s is %s", e.Number, e.State)
		}
	}
	s = u.well(desk.MarkLots(lot.Bid, ids...))
	if u.frozen() != 2 || !strings.HasPrefix(s.Notice, "Marked 3 lots: bid. No prediction was frozen: ") {
		t.Errorf("%d frozen, %q", u.frozen(), s.Notice)
	}
	if s = u.well(desk.MarkLots(lot.Bid, ids[2])); !strings.HasPrefix(s.Notice, "Marked: bid. No new prediction was frozen: ") {
		t.Errorf("marked once more: %q", s.Notice)
	}
	s = u.well(desk.DuplicateLots(ids[:2]...))
	if len(s.Entries) != 5 || s.Reach.Undo != "duplicate 2 lots" || s.Notice != "Copied 2 lots. Each copy has its own history." {
		t.Errorf("%d lots, %q, %q", len(s.Entries), s.Reach.Undo, s.Notice)
	}
	if s = u.well(desk.Undo()); len(s.Entries) != 3 {
		t.Errorf("taken back, %d lots", len(s.Entries))
	}
}

// Marking many lots as bid values each of them: that part is done ahead, away from the window, and keeps nothing. What was changed
// meanwhile stays, and undo takes back the marks alone.
func TestManyLotsAreValuedBeforeTheyAreMarked(t *testing.T) {
	u := newUser(t)
	ids := u.add(sound("14"), sound("15"))
	mark := desk.MarkLots(lot.Bid, ids...)
	if mark.Bar(u.s) == "" || desk.MarkLots(lot.Bid, ids[0]).Bar(u.s) != "" || desk.MarkLots(lot.Passed, ids...).Bar(u.s) != "" {
		t.Error("the wrong marks are slow")
	}
	var far []float64
	rest, err := u.Ahead(desk.Watched(t.Context(), func(x float64) { far = append(far, x) }), u.s, mark)
	if err != nil || rest.Bar(u.s) != "" || len(far) != 2 || u.frozen() != 0 {
		t.Fatalf("%v, %q, %v, %d frozen", err, rest.Bar(u.s), far, u.frozen())
	}
	u.well(desk.OpenLot(ids[0]), rename("make", "Tarn"), desk.Go(desk.Board))
	if s := u.well(rest); u.frozen() != 2 || s.Reach.Undo != "mark 2 lots as bid" || u.lot(ids[0]).Case.Lot.Make != "Tarn" {
		t.Errorf("%d frozen, %q, make %q", u.frozen(), s.Reach.Undo, u.lot(ids[0]).Case.Lot.Make)
	}
	u.well(desk.Undo())
	if l := u.lot(ids[0]); l.State != lot.ToLookAt || l.Case.Lot.Make != "Tarn" {
		t.Errorf("taken back: %s, %q", l.State, l.Case.Lot.Make)
	}
	ended, end := context.WithCancel(t.Context())
	end()
	if _, err := u.Ahead(ended, u.s, mark); err == nil {
		t.Error("marking that was cancelled has a rest to do")
	}
}
