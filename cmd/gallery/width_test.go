package main

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
)

// atBoth runs a test over the demo sale in both sizes of text, in a window of 1280 points.
func atBoth(t *testing.T, play func(s *stage)) {
	t.Helper()
	for _, l := range looks() {
		if l.size.Width > 1280 || strings.HasPrefix(l.name, "dark") {
			continue
		}
		s := openedIn(t, l, task.Inline{})
		s.window.LoadDemo()
		play(s)
	}
}

// uncut checks that whatever scrolls down only is no wider than its pane: nothing is cut at the right.
func (s *stage) uncut(t *testing.T, where string) {
	t.Helper()
	for _, scroll := range seen.All[*container.Scroll](s.screen.Content()) {
		if len(seen.All[*table.Table](scroll)) > 0 { // a table has a bar of its own
			continue
		}
		if least := scroll.Content.MinSize().Width; scroll.Direction == container.ScrollVerticalOnly && least > scroll.Size().Width+1 {
			t.Errorf("%s, %s: a pane of %.0f holds what is %.0f wide", s.look.name, where, scroll.Size().Width, least)
		}
	}
}

func TestNoFormOfTheBenchIsCut(t *testing.T) {
	atBoth(t, func(s *stage) {
		s.press(fyne.KeyK)
		for _, name := range s.window.BenchSections() {
			s.window.GoBench(name)
			if f := s.screen.Canvas().Focused(); f != nil && name != "Backup" {
				f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			}
			s.uncut(t, name)
		}
	})
}

func TestTheDonorVehicleIsNotCut(t *testing.T) {
	atBoth(t, func(s *stage) {
		id, err := s.lot(side)
		if err != nil {
			t.Fatal(err)
		}
		s.window.Do(desk.OpenLot(id))
		s.press(fyne.Key3)
		s.click("Plan with a donor vehicle")
		s.pick("donor vehicle")
		s.uncut(t, "donor vehicle")
		s.pick("left front door")
		s.click("Parts")
		s.uncut(t, "parts of a line")
	})
}
