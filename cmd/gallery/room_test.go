package main

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/theme"
)

// Larger text scrolls a page: it never makes the window grow past a screen of 1280 by 720 points.
func TestLargerTextDoesNotGrowTheWindow(t *testing.T) {
	for _, scale := range []float32{1.5, 2} {
		l := look{"light-text", fyne.Size{Width: 1280, Height: 720}, theme.Light, scale}
		s := openedIn(t, l, task.Inline{})
		s.window.LoadDemo()
		id, err := s.lot(side)
		if err != nil {
			t.Fatal(err)
		}
		s.window.Do(desk.OpenLot(id))
		fits := func(where string) {
			t.Helper()
			if least := s.screen.Content().MinSize(); least.Width > l.size.Width || least.Height > l.size.Height-40 {
				t.Errorf("text %.1f: %s asks for %v", scale, where, least)
			}
		}
		for _, place := range []desk.Place{desk.Board, desk.Listing, desk.Worksheet, desk.Why, desk.Live, desk.SalePlan, desk.Builds, desk.Record,
			desk.Bench} {
			s.window.Do(desk.Go(place))
			fits(string(place))
		}
		s.window.Do(desk.OpenLot(id))
		for _, key := range []fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5, fyne.Key6, fyne.Key7, fyne.Key8} {
			s.press(key)
			fits("section " + string(key))
		}
		s.window.Shop()
		if least := s.screen.Canvas().Overlays().Top().MinSize(); least.Width > l.size.Width || least.Height > l.size.Height {
			t.Errorf("text %.1f: the shopping list asks for %v", scale, least)
		}
	}
}
