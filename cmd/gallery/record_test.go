package main

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets/seen"
	"walkline/valuation/lot"
)

func TestAFactorIsAcceptedByKeyboardAndMovesTheNextBid(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	s.press(fyne.KeyT)
	s.wants(t, "No buy to learn from yet")
	if err := s.past(side); err != nil {
		t.Fatal(err)
	}
	s.press(fyne.KeyB)
	s.press(fyne.KeyT)
	s.wants(t, "14 outcomes", "Only lots that you won are seen")
	s.press(fyne.Key4)
	list := s.screen.Canvas().Focused()
	seen.Press(list, fyne.KeyDown)
	s.wants(t, "Accept this factor", "What it would do to open lots", "Lot 14")
	s.tap(t, "Accept this factor")
	s.wants(t, "is in force", "in force")
	decided := func() []book.Decision {
		list, err := s.book.Decisions(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		return list
	}
	if d := decided(); len(d) != 1 || d[0].After.Empty() {
		t.Fatalf("%+v", d)
	}
	id, err := s.lot("14")
	if err != nil {
		t.Fatal(err)
	}
	s.window.Do(desk.OpenLot(id))
	s.wants(t, "Learned from your own past buys")
	s.press(fyne.KeyT)
	s.press(fyne.Key5)
	s.wants(t, "accepted")
	seen.Press(s.screen.Canvas().Focused(), fyne.KeyDown)
	s.tap(t, "Restore the factors from before this decision")
	s.wants(t, "restored")
	if d := decided(); !d[len(d)-1].After.Empty() {
		t.Errorf("%+v", d)
	}
	frozen, _, err := s.book.FrozenCases(t.Context())
	if err != nil || len(frozen) != pastBuys {
		t.Errorf("%d are frozen, %v", len(frozen), err)
	}
	for _, c := range frozen {
		if c.Factors != nil {
			t.Error("a frozen case carries factors that came later")
		}
	}
	entries, err := s.book.Entries(t.Context())
	if err != nil || entries[0].State != lot.ToLookAt {
		t.Error(entries, err)
	}
}
