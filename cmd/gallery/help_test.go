package main

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
)

// TestAFieldSaysWhatItMeans goes to a field and to the header of a column by keyboard: the foot of the window explains them,
// and is silent when they are left.
func TestAFieldSaysWhatItMeans(t *testing.T) {
	s, _ := worksheet(t, "27", '4')
	guess := seen.All[*widgets.ThreeEntry](s.screen.Content())[0].Focus()
	s.screen.Canvas().Focus(guess)
	s.wants(t, "1 in 10 would bring less than low")
	rows := seen.All[*table.Table](s.screen.Content())[0]
	s.screen.Canvas().Focus(rows)
	s.lacks(t, "1 in 10 would bring less than low")
	for range 4 { // to the column that says it
		seen.Press(rows, fyne.KeyRight)
	}
	s.wants(t, "How far the price would move back")
	s.screen.Canvas().Unfocus()
	s.lacks(t, "How far the price would move back")
}

// TestAChoiceSaysWhatItMeans goes to a field of several words; the page that is gone to next says nothing of it.
func TestAChoiceSaysWhatItMeans(t *testing.T) {
	s, _ := worksheet(t, "27", '1')
	for _, field := range seen.All[*widgets.Select](s.screen.Content()) {
		if slices.Contains(field.Options, "drives") {
			s.screen.Canvas().Focus(field)
		}
	}
	s.wants(t, "What does not run may hide engine work.")
	s.press(fyne.KeyB)
	s.lacks(t, "What does not run may hide engine work.")
}

func (s *stage) lacks(t *testing.T, words string) {
	t.Helper()
	if strings.Contains(strings.Join(seen.Texts(s.screen.Content()), " "), words) {
		t.Errorf("%q is still in view", words)
	}
}
