package main

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui"
	"walkline/ui/task"
	"walkline/ui/widgets/seen"
)

// The next start has the size of the window, the page and the lot of the last one.
func TestTheWindowComesBackAsItWasLeft(t *testing.T) {
	s, _ := worksheet(t, "27", '3')
	s.screen.Resize(fyne.NewSize(1400, 800))
	s.press(fyne.KeyE)
	again := ui.NewWindow(fyne.CurrentApp(), ui.Parts{Desk: s.desk, First: s.desk.Load(t.Context()), Runner: task.Inline{}})
	again.Show()
	windows := fyne.CurrentApp().Driver().AllWindows()
	screen := windows[len(windows)-1]
	defer screen.Close()
	if size := screen.Canvas().Size(); size.Width != 1400 || size.Height != 800 {
		t.Errorf("the window is %v", size)
	}
	if !seen.Says(screen.Content(), "Lot 27") || !seen.Says(screen.Content(), "Resale") {
		t.Errorf("the window shows %q", seen.Texts(screen.Content()))
	}
}
