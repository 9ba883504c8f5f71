package main

import (
	"path/filepath"
	"strings"
	"testing"

	"walkline/store"
	"walkline/ui/task"
)

// told keeps what was said.
type told []string

func (w *told) Warn(words string) { *w = append(*w, words) }

// The start of each day writes one backup to the folder that was chosen; where it can't, that is said.
func TestTheDailyBackupIsMadeAtTheStart(t *testing.T) {
	book, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "lots.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	var w told
	folder := t.TempDir()
	for range 2 {
		daily(task.Inline{}, book, folder, &w)
	}
	daily(task.Inline{}, book, "", &w)
	made, _ := filepath.Glob(filepath.Join(folder, "walkline-daily-*.db"))
	if len(made) != 1 || len(w) > 0 {
		t.Errorf("made %q, said %q", made, w)
	}
	daily(task.Inline{}, book, filepath.Join(folder, "gone"), &w)
	if len(w) != 1 || !strings.Contains(w[0], "The daily backup could not be made: ") {
		t.Errorf("said %q", w)
	}
}
