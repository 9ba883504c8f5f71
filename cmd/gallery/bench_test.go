package main

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/task"
	"walkline/valuation"
)

func TestTheBenchSetsWhatANewLotBeginsWith(t *testing.T) {
	s := opened(t, task.Inline{})
	s.press(fyne.KeyK)
	s.wants(t, "House rules", "Starter values, from memory")
	s.retyped("2,750")
	s.wants(t, "Yours.")
	s.window.NewLot()
	id := s.book.lots[0].id
	if got := s.kept(t, id).Rules.MinProfit; got == nil || *got != 275000 {
		t.Errorf("a new lot's least profit is %v", got)
	}
	s.press(fyne.Key5)
	s.wants(t, "The terms of this lot are the Bench's.")
	s.window.Edit("rivals", func(c *valuation.Case) { c.Market.Rivals = 9 })
	s.wants(t, "not the Bench's, in: who else bids.")
	s.tap(t, "Take the Bench's terms")
	if got := s.kept(t, id).Market.Rivals; got != 4 {
		t.Errorf("with the Bench's terms %d rivals", got)
	}
	s.press(fyne.KeyK)
	s.undo()
	s.wants(t, "Undone: Least expected profit.")
}

// retyped puts words in the place of what the field with the keyboard says.
func (s *stage) retyped(words string) {
	field := s.screen.Canvas().Focused()
	field.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	for _, r := range words {
		field.TypedRune(r)
	}
}
