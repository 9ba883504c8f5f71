package main

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets/seen"
)

// TestAWarningStaysUntilSomethingIsDone warns twice and tells of less: both warnings stay, also where the page is drawn anew.
func TestAWarningStaysUntilSomethingIsDone(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.Warn("It ended in a fault.")
	s.window.Warn("A page is damaged.")
	s.window.Tell("All is sound.")
	s.wants(t, "! It ended in a fault. A page is damaged.")
	s.lacks(t, "All is sound.")
	s.window.Do(desk.NewLot())
	s.lacks(t, "It ended in a fault.")
}

// TestAboutIsCopiedWhole opens About from its menu: it says what it was given, and its button copies all of it.
func TestAboutIsCopiedWhole(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.Describe(ui.About{Version: "Walkline 9.9.9", Engine: "engine/7", File: "/shop/lots.db", Folder: "/shop",
		Licences: "# Notices\n| a module | MIT |"})
	for _, m := range s.screen.MainMenu().Items {
		for _, i := range m.Items {
			if strings.HasPrefix(i.Label, "About Walkline") {
				i.Action()
			}
		}
	}
	shown := strings.Join(seen.Texts(s.top()), " ")
	s.tap(t, "Copy all of it, for a report")
	copied := fyne.CurrentApp().Clipboard().Content()
	for _, want := range []string{"Walkline 9.9.9", "engine/7", "/shop/lots.db", "Data folder, with the log: /shop", "a module"} {
		if !strings.Contains(shown, want) || !strings.Contains(copied, want) {
			t.Errorf("no %q: shown %q, copied %q", want, shown, copied)
		}
	}
}
