package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/store"
	"walkline/ui"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
)

// path types a path into the dialog that asks for one.
func (s *stage) path(words string) { seen.All[*widgets.TextEntry](s.top())[0].SetText(words) }

// A copy of all is written to a new file, never over one that is there, and put back at the next start.
func TestABackupIsWrittenAndRestored(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	s.window.GoBench("Backup")
	s.tap(t, "Back up now…")
	to := filepath.Join(t.TempDir(), "copy.db")
	s.path(to)
	s.tap(t, "Save")
	s.tap(t, "Back up now…")
	s.path(to)
	s.tap(t, "Save")
	if all := strings.Join(seen.Texts(s.top()), " "); !strings.Contains(all, "There is a file of that name already") {
		t.Errorf("over a file that is there: %q", all)
	}
	s.tap(t, "Cancel")
	copied, err := store.Open(t.Context(), to)
	if err != nil {
		t.Fatal(err)
	}
	entries, err := copied.Entries(t.Context())
	if closing := copied.Close(); err != nil || closing != nil || len(entries) != 3 {
		t.Errorf("the copy has %d lots, %v, %v", len(entries), err, closing)
	}
	restore := func(path string) {
		s.tap(t, "Restore from a backup…")
		s.path(path)
		s.tap(t, "Restore")
	}
	restore(filepath.Join(t.TempDir(), "none.db"))
	s.wants(t, "Could not restore the backup: ")
	restore(to)
	s.wants(t, "takes the place of what is here when the program starts next", "A backup is ready")
	if !s.book.Staged() {
		t.Error("nothing is ready for the next start")
	}
	s.tap(t, "Do not restore it")
	if s.wants(t, "Nothing is restored."); s.book.Staged() {
		t.Error("it is still ready for the next start")
	}
}

// The folder of the daily backup is chosen on the Bench and remembered; an empty one means none.
func TestTheFolderOfTheDailyBackupIsChosen(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.GoBench("Backup")
	folder := t.TempDir()
	for _, c := range [][2]string{{folder, "a daily backup is written to " + folder}, {"", "No daily backup is made."}} {
		s.tap(t, "Daily backup…")
		s.path(c[0])
		s.tap(t, "Use it")
		s.wants(t, c[1])
		if got := fyne.CurrentApp().Preferences().String(ui.DailyFolder); got != c[0] {
			t.Errorf("remembered is %q", got)
		}
	}
}

// A jurisdiction is added from a file; of one with faults all of them are listed, and of none the reason is said.
func TestAJurisdictionIsAddedFromAFile(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.GoBench("Jurisdictions")
	folder := t.TempDir()
	for name, text := range map[string]string{
		"good.json": `{"format":"walkline-jurisdiction/1","id":"US-XX","name":"Harrow","currency":"USD",
			"documents":[{"text":"The blue form.","citation":"","status":"from memory"}]}`,
		"bad.json": `{"format":"walkline-jurisdiction/1","id":"Harrow Flats","name":"","currency":"USD"}`,
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	add := func(name string) {
		s.tap(t, "Add one from a file…")
		s.path(filepath.Join(folder, name))
		s.tap(t, "Add")
	}
	add("none.json")
	s.wants(t, "Could not read ")
	add("bad.json")
	if all := strings.Join(seen.Texts(s.top()), " "); !strings.Contains(all, "bad.json was not added: 2 faults") ||
		!strings.Contains(all, "US-MI") {
		t.Errorf("of one with faults: %q", all)
	}
	s.tap(t, "Close")
	add("good.json")
	s.wants(t, "Harrow is among the jurisdictions.")
	s.undo()
	s.wants(t, "Undone: add Harrow.")
}

// The rows of a table that were refused are saved as a table that can be corrected.
func TestRefusedRowsAreSaved(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	s := refusing(t)
	s.tap(t, "Save them to correct…")
	s.tap(t, "Save")
	found, err := filepath.Glob(filepath.Join(home, "*.csv"))
	if err != nil || len(found) != 1 {
		t.Fatalf("%q, %v: %q", found, err, seen.Texts(s.top()))
	}
	data, err := os.ReadFile(found[0])
	if err != nil || !strings.Contains(string(data), "20x7") || strings.Contains(string(data), "Ostrane") {
		t.Errorf("saved is %q, %v", data, err)
	}
	s.press("R")
	test.Type(s.screen.Canvas().Focused(), found[0])
	s.tap(t, "Read")
	if !seen.Says(s.top(), "Usable: 0 of 1 rows. Refused: 1.") {
		t.Errorf("read again: %q", seen.Texts(s.top()))
	}
}
