package desk_test

import (
	"errors"
	"strings"
	"testing"

	"walkline/ui/desk"
)

func TestARunListIsTakenInOnceAndTakenBack(t *testing.T) {
	d, b := newDesk()
	s := d.EditShop(t.Context(), d.Load(t.Context()), "yard", func(shop *desk.Shop) {
		shop.Buying = fees(1000)
		shop.Yards = []desk.Yard{{Sale: "North yard", Buying: fees(2000)}}
	})
	sheet, err := d.OpenList(t.Context(), []byte("lot\n14\nbad\n15\n"))
	if err != nil || len(sheet.Doubts) != 1 {
		t.Fatalf("%+v, %v", sheet, err)
	}
	sheet.Stated.Sale, sheet.Stated.SaleDate = "North yard", "2026-11-28"
	e, err := d.Enlist(t.Context(), s, sheet)
	s = d.ListArrived(t.Context(), s, e, err)
	if len(s.Entries) != 2 || len(e.Refused) != 1 || s.Notice != "3 rows read: 2 new, 0 the same, 0 changed, 1 refused." {
		t.Fatalf("%d lots, %q %q", len(s.Entries), s.Notice, s.Trouble)
	}
	if c := b.cases[s.Entries[0].ID]; c.Buying.Fixed[0].Amount != 2000 || c.ValuedOn != "2026-11-20" || c.Lot.Number != "14" {
		t.Errorf("the first lot is %+v", c)
	}
	e, err = d.Enlist(t.Context(), s, sheet)
	s = d.ListArrived(t.Context(), s, e, err)
	if len(s.Entries) != 2 || !strings.HasPrefix(s.Notice, "3 rows read: 0 new, 2 the same, 0 changed, 1 refused. 2 facts differ") {
		t.Errorf("the same list again: %d lots, %q", len(s.Entries), s.Notice)
	}
	s = d.Undo(t.Context(), d.Undo(t.Context(), s)) // the second list was a step of nothing in this book
	if len(s.Entries) != 0 {
		t.Errorf("taken back, %d lots", len(s.Entries))
	}
	again, err := d.OpenList(t.Context(), []byte("lot\n20\n"))
	if err != nil || again.Stated.Sale != "North yard" || again.Stated.SaleDate != "" || len(again.Doubts) != 0 {
		t.Errorf("the next list with these columns: %+v, %v", again, err)
	}
	b.broken = errors.New("the disk is full")
	e, err = d.Enlist(t.Context(), s, sheet)
	if after := d.ListArrived(t.Context(), s, e, err); !strings.Contains(after.Trouble, "the disk is full") {
		t.Errorf("%q", after.Trouble)
	}
}
