package store

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"walkline/store/book"
)

// A file opened at once tells of a damaged page when its pages are looked at, and the next Open refuses it.
func TestAFileOpenedAtOnceIsLookedAtLater(t *testing.T) {
	path := filepath.Join(t.TempDir(), "lots.walk")
	s := reopened(t, path)
	step := book.Step{}
	for range 50 {
		step.New = append(step.New, book.New{Case: sample(t)})
	}
	do(t, s, step)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	s, err := OpenAtOnce(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(s.LookAtPages(t.Context()), s.Close()); err != nil {
		t.Fatalf("a sound file: %v", err)
	}
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	const page = 4096 // SQLite's own
	last := len(file) / page / 2 * page
	for i := range page {
		file[last+i] = 0xff
	}
	if err := os.WriteFile(path, file, 0o600); err != nil {
		t.Fatal(err)
	}
	if s, err = OpenAtOnce(t.Context(), path); err != nil {
		t.Fatalf("opening at once: %v", err)
	}
	if err := errors.Join(s.LookAtPages(t.Context()), s.Close()); !errors.Is(err, ErrDamaged) {
		t.Errorf("looking at the pages: %v", err)
	}
	if _, err := Open(t.Context(), path); !errors.Is(err, ErrDamaged) {
		t.Errorf("opening: %v", err)
	}
}
