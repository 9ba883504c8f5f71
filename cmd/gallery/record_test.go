package main

import (
	"context"
	"testing"

	"fyne.io/fyne/v2"

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
	if len(s.book.decided) != 1 || s.book.decided[0].After.Empty() {
		t.Fatalf("%+v", s.book.decided)
	}
	id, err := s.lot("14")
	if err != nil {
		t.Fatal(err)
	}
	s.window.Open(id)
	s.wants(t, "Learned from your own past buys")
	s.press(fyne.KeyT)
	s.press(fyne.Key5)
	s.wants(t, "accepted")
	seen.Press(s.screen.Canvas().Focused(), fyne.KeyDown)
	s.tap(t, "Restore the factors from before this decision")
	s.wants(t, "restored")
	if last := s.book.decided[len(s.book.decided)-1]; !last.After.Empty() {
		t.Errorf("%+v", last)
	}
	for _, f := range s.book.foretold {
		if f.c.Factors != nil {
			t.Error("a frozen case carries factors that came later")
		}
	}
	entries, err := s.book.Entries(context.Background())
	if err != nil || entries[0].State != lot.ToLookAt {
		t.Error(entries, err)
	}
}
