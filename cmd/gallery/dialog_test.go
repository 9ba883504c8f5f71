package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"

	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
)

// refusing opens the Board with the dialog that a run list with a bad row leads to: it follows on another dialog.
func refusing(t *testing.T) *stage {
	t.Helper()
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	path := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(path, []byte(aRunList), 0o600); err != nil {
		t.Fatal(err)
	}
	s.press(fyne.KeyR)
	test.Type(s.screen.Canvas().Focused(), path)
	s.tap(t, "Read")
	s.tap(t, "Import")
	if !seen.Says(s.top(), "Refused rows: 1") {
		t.Fatalf("on top: %q", seen.Texts(s.top()))
	}
	return s
}

func TestEscapeClosesADialogThatFollowsOnAnother(t *testing.T) {
	s := refusing(t)
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if s.screen.Canvas().Overlays().Top() != nil {
		t.Errorf("still open: %q", seen.Texts(s.top()))
	}
	s.wants(t, "5 lots") // and Escape has gone no further
}

func TestAKeyOfTheWindowDoesNothingBehindADialog(t *testing.T) {
	s := refusing(t)
	s.press(fyne.KeyN)
	s.undo()
	s.tap(t, "Leave them")
	s.wants(t, "5 lots")
}

func TestADropDoesNothingBehindADialogThatFollowsOnAnother(t *testing.T) {
	s := refusing(t)
	s.window.Drop([]fyne.URI{storage.NewFileURI(filepath.Join(t.TempDir(), "none.csv"))})
	s.tap(t, "Leave them")
	if seen.Says(s.screen.Content(), "Could not open") {
		t.Error("a dropped file was read")
	}
}

func TestEscapeInAPathClosesItsDialog(t *testing.T) {
	s := opened(t, task.Inline{})
	s.press(fyne.KeyR)
	path := seen.All[*widgets.TextEntry](s.top())[0]
	seen.Press(path, fyne.KeyEscape)
	if s.screen.Canvas().Overlays().Top() != nil {
		t.Error("still open")
	}
}

func TestTheColumnsOfATableAreMatchedInWordsAndLeftByEscape(t *testing.T) {
	s := opened(t, task.Inline{})
	path := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(path, []byte(aRunList), 0o600); err != nil {
		t.Fatal(err)
	}
	s.press(fyne.KeyR)
	test.Type(s.screen.Canvas().Focused(), path)
	s.tap(t, "Read")
	for _, choice := range seen.All[*widgets.Select](s.top()) {
		if words := strings.Join(choice.Options, " "); strings.Contains(words, "_") {
			t.Errorf("a column is matched to codes: %q", words)
		}
		choice.SetSelectedIndex(choice.SelectedIndex()) // the same again is the same table
	}
	if !seen.Says(s.top(), "Usable: 2 of 3 rows. Refused: 1.") {
		t.Errorf("%q", seen.Texts(s.top()))
	}
	seen.Press(seen.All[*widgets.Select](s.top())[0], fyne.KeyEscape)
	if s.screen.Canvas().Overlays().Top() != nil {
		t.Error("Escape in a field leaves the dialog open")
	}
}
