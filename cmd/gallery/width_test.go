package main

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/task"
	"walkline/ui/widgets/seen"
)

// At 1280 points and in text of one and a half, whatever scrolls down only is no wider than its pane: nothing is cut at the right.
func TestNoFormOfTheBenchIsCut(t *testing.T) {
	for _, l := range looks() {
		if l.size.Width > 1280 || l.name[:4] == "dark" {
			continue
		}
		s, err := openWith(l, task.Inline{})
		if err != nil {
			t.Fatal(err)
		}
		s.window.LoadDemo()
		s.press(fyne.KeyK)
		for _, name := range s.window.BenchSections() {
			s.window.GoBench(name)
			if f := s.screen.Canvas().Focused(); f != nil && name != "Backup" {
				f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			}
			for _, scroll := range seen.All[*container.Scroll](s.screen.Content()) {
				if least := scroll.Content.MinSize().Width; scroll.Direction == container.ScrollVerticalOnly && least > scroll.Size().Width+1 {
					t.Errorf("%s, %s: a pane of %.0f holds what is %.0f wide", l.name, name, scroll.Size().Width, least)
				}
			}
		}
		if err := s.close(); err != nil {
			t.Error(err)
		}
	}
}
