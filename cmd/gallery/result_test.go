package main

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation/lot"
)

// What a lot went for is asked on the Board: without a price nothing is recorded, and undo there takes the result back.
func TestAResultIsToldOnTheBoard(t *testing.T) {
	s, id := worksheet(t, "14", '1')
	before := s.lotOf(t, id)
	s.window.Do(desk.Go(desk.Board))
	seen.Press(seen.All[*table.Table](s.screen.Content())[0], fyne.KeyHome, fyne.KeyDown, fyne.KeyHome)
	s.window.Do(desk.WantFor(desk.ResultOfLot, id))
	s.tap(t, "Another got it")
	s.says(t, "Type the hammer price first.")
	if l := s.lotOf(t, id); l.State != before.State || l.Build.Hammer != nil {
		t.Fatalf("recorded without a price: %s, %v", l.State, l.Build.Hammer)
	}
	seen.All[*widgets.NumberEntry](s.top())[0].SetValue(widgets.Known(4200))
	s.tap(t, "Another got it")
	if l := s.lotOf(t, id); l.State != lot.Lost || l.Build.Hammer == nil || *l.Build.Hammer != 420000 {
		t.Fatalf("recorded: %s, %v", l.State, l.Build.Hammer)
	}
	s.window.Do(desk.Undo())
	if l := s.lotOf(t, id); l.State != before.State || l.Build.Hammer != nil {
		t.Errorf("taken back: %s, %v", l.State, l.Build.Hammer)
	}
}
