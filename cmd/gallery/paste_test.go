package main

import (
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/task"
	"walkline/ui/widgets/seen"
)

// Cells that were copied are read as the table that the place is for; what was passed over and why a column became what it is are said.
func TestCopiedCellsOpenTheSameDialog(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.Paste("Lot\tVehicle\tOdometer (mi)\n14\t2019 Ostrane Pell S\t61,200\nTotal\t\t61,200\n")
	for _, says := range []string{"Usable: 1 of 1 rows. Refused: 0. Passed over: 1.", "adds up other rows", "by its heading", "Ostrane"} {
		if !seen.Says(s.top(), says) {
			t.Errorf("no %q in %q", says, seen.Texts(s.top()))
		}
	}
	s.says(t, "S 61,200 mi")
	s.tap(t, "Import")
	s.wants(t, "2019 Ostrane Pell S", "1 rows read: 1 new")
	s.window.Paste("  ")
	s.press(fyne.KeyU)
	s.wants(t, "Import past buys…")
}

// A table that is still being read opens no dialog, and the one chosen last is the one that opens.
func TestATableIsReadAwayFromTheWindow(t *testing.T) {
	held := &task.Held{}
	s := opened(t, held)
	held.Release()
	s.window.Paste("Lot\tMake\n1\tKettrick\n")
	s.wants(t, "Reading the clipboard…")
	s.window.Paste("Lot\tMake\n2\tMorrowby\n")
	held.Release()
	if !seen.Says(s.top(), "Morrowby") || seen.Says(s.top(), "Kettrick") {
		t.Errorf("the dialog says %q", seen.Texts(s.top()))
	}
}
