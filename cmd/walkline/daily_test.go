package main

import (
	"database/sql"
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"walkline/store"
	"walkline/ui/task"
)

// told keeps what was said.
type told []string

func (w *told) Warn(words string) { *w = append(*w, words) }
func (w *told) Tell(words string) { *w = append(*w, words) }

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

// What the check finds once the window is there is said, and leads to what helps.
func TestDamageThatTheCheckFindsLeadsToARescue(t *testing.T) {
	a := test.NewTempApp(t)
	path := filepath.Join(t.TempDir(), "lots.db")
	book, err := store.Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { book.Close() }()
	if err := book.PutSetting(t.Context(), "theme", "light"); err != nil {
		t.Fatal(err)
	}
	before := len(a.Driver().AllWindows())
	var sound, damaged told
	s := &session{path: path, book: book}
	s.check(a, task.Inline{}, &sound)
	if len(sound) != 1 || !strings.Contains(sound[0], "sound") || len(a.Driver().AllWindows()) != before {
		t.Errorf("said %q", sound)
	}
	db, err := sql.Open("sqlite", path)
	if err == nil {
		_, err = db.Exec(`UPDATE settings SET value = '"dark"'`)
	}
	if err != nil {
		t.Fatal(err)
	}
	db.Close()
	s.check(a, task.Inline{}, &damaged)
	if len(damaged) != 1 || !strings.Contains(damaged[0], "setting theme") || len(a.Driver().AllWindows()) != before+1 {
		t.Errorf("said %q", damaged)
	}
	way := s.repair(&damaged, store.ErrDamaged)
	to, words, err := way.Salvage(t.Context())
	if err != nil || !strings.Contains(words, "setting theme") {
		t.Fatalf("%q, %v", words, err)
	}
	if err := errors.Join(way.Restore(t.Context(), to), way.Again()); err != nil || !book.Staged() {
		t.Error(err)
	}
}
