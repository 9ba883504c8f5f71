package desk_test

import (
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
)

// enlist takes a run list of a sale in.
func (u *user) enlist(table, sale string) desk.Enlisted {
	u.t.Helper()
	sheet, err := u.OpenList(u.t.Context(), []byte(table))
	if err != nil {
		u.t.Fatal(err)
	}
	sheet.Stated.Sale, sheet.Stated.SaleDate = sale, "2026-11-28"
	e, err := u.Enlist(u.t.Context(), u.s, sheet)
	u.s = u.ListArrived(u.t.Context(), u.s, e, err)
	return e
}

const runList = "Lot,Year,Make,Model,Odometer (mi)\n14,2019,Ostrane,Pell,61200\n16,20x7,Ostrane,Pell,61200\n15,2017,Kettrick,Dunlin,98000\n"

func TestARunListIsTakenInOnceAndTakenBack(t *testing.T) {
	u := newUser(t)
	u.well(desk.EditShop("yard", func(shop *desk.Shop) {
		shop.Buying = fees(1000)
		shop.Yards = []desk.Yard{{Sale: "North yard", Buying: fees(2000)}}
	}))
	undone := u.s.Reach // the edit above, made on the Board
	e := u.enlist(runList, "North yard")
	if len(u.s.Entries) != 2 || len(e.Refused) != 1 || u.s.Notice != "3 rows read: 2 new, 0 the same, 0 changed, 1 refused." {
		t.Fatalf("%d lots, %q %q", len(u.s.Entries), u.s.Notice, u.s.Trouble)
	}
	if c := u.lot(u.s.Entries[0].ID).Case; c.Buying.Fixed[0].Amount != 2000 || c.ValuedOn != "2026-11-20" || c.Lot.Number != "14" {
		t.Errorf("the first lot is %+v", c)
	}
	if u.enlist(runList, "North yard"); len(u.s.Entries) != 2 || !strings.HasPrefix(u.s.Notice,
		"3 rows read: 0 new, 2 the same, 0 changed, 1 refused.") {
		t.Errorf("the same list again: %d lots, %q", len(u.s.Entries), u.s.Notice)
	}
	if s := u.well(desk.Undo()); len(s.Entries) != 0 || s.Notice != "Undone: run list." || s.Reach.Undo != undone.Undo {
		t.Errorf("taken back, %d lots, %q, %+v", len(s.Entries), s.Notice, s.Reach)
	}
	again, err := u.OpenList(t.Context(), []byte(runList))
	if err != nil || again.Stated.Sale != "North yard" || again.Stated.SaleDate != "" || len(again.Doubts) != 0 {
		t.Errorf("the next list with these columns: %+v, %v", again, err)
	}
	u.kept.broken = errors.New("the disk is full")
	if u.enlist(runList, "South yard"); !strings.Contains(u.s.Trouble, "the disk is full") {
		t.Errorf("%q", u.s.Trouble)
	}
}

// What a list says beside the facts is kept with the lot and read on the Board; a later list stands above an earlier one, what it leaves
// out stays, and nothing is priced or marked from it.
func TestWhatTheListSaysIsKeptWithTheLot(t *testing.T) {
	u := newUser(t)
	u.enlist("Lot,Make,Model,Damage,Value before (USD),Repair estimate (USD),Note\n"+
		"14,Ostrane,Pell,front left,\"12,500\",4200,keys in office\n15,Kettrick,Dunlin,,,,\n", "North yard")
	if len(u.s.Entries) != 2 {
		t.Fatalf("%d lots, %q", len(u.s.Entries), u.s.Trouble)
	}
	first, second := u.lot(u.s.Entries[0].ID).Case, u.lot(u.s.Entries[1].ID).Case
	says := first.Lot.Listed
	if says == nil || !slices.Equal(says.Areas, []string{"11"}) || *says.ValueBefore != 12500 || *says.RepairEstimate != 4200 ||
		says.Currency != "USD" || says.Note != "keys in office" || says.RunOrder != 1 {
		t.Fatalf("the first lot has %+v", says)
	}
	if second.Lot.Listed.Said() || second.Lot.Listed.RunOrder != 2 || len(first.Damage) > 0 || first.Resale.Guess != nil {
		t.Errorf("the second has %+v; the first is marked %v", second.Lot.Listed, first.Damage)
	}
	if e := u.s.Entries[0]; !reflect.DeepEqual(e.Listed, says) {
		t.Errorf("the Board has %+v", e.Listed)
	}
	u.enlist("Lot,Make,Model,Repair estimate (USD)\n14,Ostrane,Pell,5100\n", "North yard")
	if now := u.lot(u.s.Entries[0].ID).Case.Lot.Listed; *now.RepairEstimate != 5100 || *now.ValueBefore != 12500 || now.Note == "" {
		t.Errorf("after a later list: %+v", now)
	}
	u.well(desk.Undo())
	if now := u.lot(u.s.Entries[0].ID).Case.Lot.Listed; !reflect.DeepEqual(now, says) {
		t.Errorf("taken back: %+v", now)
	}
}
