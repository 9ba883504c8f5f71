package desk_test

import (
	"testing"

	"walkline/ui/desk"
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
