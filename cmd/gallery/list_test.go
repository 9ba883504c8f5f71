package main

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/task"
	"walkline/ui/widgets/seen"
)

func TestARunListComesOntoTheBoard(t *testing.T) {
	s := opened(t, task.Inline{})
	path := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(path, []byte(aRunList), 0o600); err != nil {
		t.Fatal(err)
	}
	take := func() {
		s.press(fyne.KeyR)
		test.Type(s.screen.Canvas().Focused(), path)
		s.tap(t, "Read")
	}
	take()
	if !seen.Says(s.top(), "Usable: 2 of 3 rows. Refused: 1.") || !seen.Says(s.top(), "20x7") {
		t.Fatalf("the dialog says %q", seen.Texts(s.top()))
	}
	s.tap(t, "Import")
	s.tap(t, "Leave them")
	s.wants(t, "2 lots", "2019 Ostrane Pell", "3 rows read: 2 new, 0 the same, 0 changed, 1 refused.")
	take()
	s.tap(t, "Import")
	s.tap(t, "Leave them")
	s.wants(t, "2 lots", "3 rows read: 0 new, 2 the same, 0 changed, 1 refused.")
	s.undo()
	s.undo()
	s.wants(t, "What is the most you may bid?")
}
