package main

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"walkline/store"
	"walkline/ui/task"
)

// told keeps what was said.
type told []string

func (w *told) Warn(words string) { *w = append(*w, words) }
func (w *told) Tell(words string) { *w = append(*w, words) }

// hand is a clock that strikes when the test says so.
type hand struct {
	now  time.Time
	then func()
	wait time.Duration
}

func (h *hand) After(wait time.Duration, then func()) func() {
	h.wait, h.then = wait, then
	return func() {}
}

// passes lets time pass, and what waits for it be done.
func (h *hand) passes(time time.Duration) {
	for end := h.now.Add(time); !h.now.Add(h.wait).After(end); {
		h.now = h.now.Add(h.wait)
		h.then()
	}
}

// Each day on which the window is open writes one backup to the folder that was chosen by then; where it can't, that is said once a day.
func TestTheDailyBackupIsMadeOnEachDayThatTheWindowIsOpen(t *testing.T) {
	book, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "lots.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	var w told
	folder, good := "", t.TempDir()
	clock := &hand{now: time.Date(2026, 11, 20, 8, 0, 0, 0, time.UTC)}
	d := daily{runner: task.Inline{}, clock: clock, now: func() time.Time { return clock.now }, book: book, say: &w,
		folder: func() string { return folder }}
	made := func() int { all, _ := filepath.Glob(filepath.Join(good, "walkline-daily-*.db")); return len(all) }
	d.keep()
	folder = good
	if clock.passes(time.Hour); made() != 1 {
		t.Errorf("%d backups once a folder was chosen", made())
	}
	if clock.passes(3 * 24 * time.Hour); made() != 4 || len(w) > 0 {
		t.Errorf("%d backups after three days more, said %q", made(), w)
	}
	folder = filepath.Join(good, "gone")
	clock.passes(2 * 24 * time.Hour)
	if len(w) != 3 || !strings.Contains(w[0], "The daily backup could not be made: ") {
		t.Errorf("over three days said %q", w)
	}
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	clock.passes(time.Hour)
	if again, _ := filepath.Glob(filepath.Join(folder, "*.db")); len(again) != 1 {
		t.Errorf("made %q once the folder was back", again)
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
	if len(sound) != 1 || !strings.Contains(sound[0], "no damage") || len(a.Driver().AllWindows()) != before {
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
