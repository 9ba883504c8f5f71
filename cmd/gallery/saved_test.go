package main

import (
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
)

// TestATableIsCopiedForASpreadsheet copies the Board by its key, and what the clipboard then has is rows of cells between tabs.
func TestATableIsCopiedForASpreadsheet(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	copied := func() string {
		s.screen.Canvas().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutCopy{})
		return fyne.CurrentApp().Clipboard().Content()
	}
	s.screen.Canvas().Unfocus()
	if got := copied(); got != "" {
		t.Errorf("%q was copied without a table", got)
	}
	s.wants(t, "Click a row of the table first, then copy.")
	s.screen.Canvas().Focus(seen.All[*table.Table](s.screen.Content())[0])
	lines := strings.Split(strings.TrimRight(copied(), "\n"), "\n")
	if len(lines) != 4 || strings.Count(lines[0], "\t") == 0 || strings.Count(lines[0], "\t") != strings.Count(lines[3], "\t") ||
		!strings.Contains(lines[1]+lines[2]+lines[3], "Ostrane Pell") {
		t.Errorf("%q", lines)
	}
	s.wants(t, "Copied: the headings and 3 rows. Paste them into any spreadsheet.")
}

// TestWhatWasSavedIsOpenedFromItsNotice offers the file that was written until something else is said, and by the menu after that.
func TestWhatWasSavedIsOpenedFromItsNotice(t *testing.T) {
	s, _ := worksheet(t, "27", '1')
	offered := func() bool { return seen.Says(s.screen.Content(), "Show its folder") }
	if offered() {
		t.Error("a file is offered before any was saved")
	}
	s.press(fyne.KeyO)
	s.wants(t, "Nothing was saved to a file yet.")
	s.press(fyne.KeyP)
	to := filepath.Join(t.TempDir(), "sheet 1.pdf")
	seen.All[*widgets.TextEntry](s.top())[0].SetText(to)
	s.tap(t, "Save")
	if !offered() {
		t.Fatal("the saved file is not offered")
	}
	s.tap(t, "Open it")
	s.press(fyne.KeyG)
	s.press(fyne.KeyO)
	if offered() && seen.Says(s.screen.Content(), "Nothing was saved") {
		t.Error("what was saved is forgotten")
	}
}

// TestALongNoticeNeverWidensTheWindow says more at the foot than a line holds: it wraps, and the window keeps its size.
func TestALongNoticeNeverWidensTheWindow(t *testing.T) {
	s := opened(t, task.Inline{})
	least := func() fyne.Size { return s.screen.Content().MinSize() }
	before := least()
	s.window.Warn(strings.TrimSpace(strings.Repeat("a table that could not be read in row 14, ", 40)))
	if got := least(); got.Width > before.Width {
		t.Errorf("the window would be %v wide, was %v", got.Width, before.Width)
	}
	s.wants(t, "read in row 14, a table")
}
