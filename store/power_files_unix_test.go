//go:build unix

package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"walkline/store/album"
	"walkline/store/book"
	"walkline/store/plain"
	"walkline/valuation/lot"
)

// picture returns the bytes of a photograph and their hash.
func picture(n int) (data []byte, hash string) {
	data = bytes.Repeat(fmt.Appendf(nil, "photograph %d ", n), 500)
	return data, fmt.Sprintf("%x", sha256.Sum256(data))
}

// pictured keeps a photograph and then an edit that lists it.
func pictured(t *testing.T, s *Store, n int) {
	t.Helper()
	data, hash := picture(n)
	if err := s.Album().Keep(hash, "jpeg", data); err != nil {
		t.Fatal(err)
	}
	edit(t, s, book.Worksheet(1), strconv.Itoa(n), 1, func(l *book.Lot) {
		l.Case = numbered(n)
		l.Photos = append(l.Photos, lot.Photo{Hash: hash, Kind: "jpeg", Width: 1, Height: 1, Stage: lot.Before})
	})
}

// shows returns the edit that a store holds; its photographs up to that one are there whole, and so is all else. Those of a store that was
// set aside lie where they were.
func shows(path string, photos album.Folder) (n int, err error) {
	ctx := context.Background()
	s, err := Open(ctx, path)
	if err != nil {
		return 0, err
	}
	defer s.Close()
	l, err := s.Lot(ctx, 1)
	if err != nil {
		return 0, err
	}
	if n = l.Case.Lot.ModelYear; n != l.Case.Run.Scenarios || n != len(l.Photos) {
		return n, fmt.Errorf("half an edit: %d, %d, %d photographs", n, l.Case.Run.Scenarios, len(l.Photos))
	}
	for _, p := range l.Photos {
		if _, err := photos.File(p.Hash, p.Kind); err != nil {
			return n, err
		}
	}
	return n, s.Check(ctx)
}

// between says that a store does not hold one of the edits from one to another.
func between(path string, low, high int) error {
	n, err := shows(path, photosOf(strings.SplitAfter(path, "lots.walk")[0]))
	if err == nil && (n < low || n > high) {
		err = fmt.Errorf("%s holds %d, not %d to %d", filepath.Base(path), n, low, high)
	}
	return err
}

// newBook opens a store with a lot that holds edit 0.
func newBook(t *testing.T, path string) *Store {
	t.Helper()
	s, err := Open(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	added(t, s, numbered(0))
	return s
}

// TestPowerLossOfPhotographsAndBackups keeps the calls of photographs, edits that list them and daily backups that rotate. An edit that was
// acknowledged has its photograph; a backup is there whole or not at all, and stays once it was acknowledged.
func TestPowerLossOfPhotographsAndBackups(t *testing.T) {
	folder := t.TempDir()
	day := func(n int) time.Time { return time.Date(2026, 1, n, 0, 0, 0, 0, time.UTC) }
	calls := recorded(t, folder, func(r *recorder) {
		s := newBook(t, filepath.Join(folder, "lots.walk"))
		defer s.Close()
		for n := 1; n <= 11; n++ {
			pictured(t, s, n)
			r.acknowledge(2 * n)
			if _, err := s.Daily(t.Context(), folder, day(n)); err != nil {
				t.Fatal(err)
			}
			r.acknowledge(2*n + 1)
		}
	})
	replayed(t, calls, func(folder string, said int) error {
		edits, backups := said/2, (said-1)/2
		for n := max(1, backups-keptDays+2); n <= 11; n++ {
			path := filepath.Join(folder, "walkline-daily-"+day(n).Format(time.DateOnly)+".db")
			if n <= backups && !exists(path) {
				return fmt.Errorf("the backup of day %d is gone", n)
			}
			if n < backups || !exists(path) { // one that was whole before stays so: its calls are over
				continue
			}
			if err := between(path, n, n); err != nil {
				return err
			}
		}
		return between(filepath.Join(folder, "lots.walk"), edits, edits+1)
	})
}

// TestPowerLossInRestore keeps the calls of a backup, its restoring, work after it and a salvage. Before the backup is made ready the work
// of before is there; after it what was set aside holds that work whole.
func TestPowerLossInRestore(t *testing.T) {
	folder := t.TempDir()
	path, backup, saved := filepath.Join(folder, "lots.walk"), filepath.Join(folder, "backup"), filepath.Join(folder, "saved")
	calls := recorded(t, folder, func(r *recorder) {
		s := newBook(t, path)
		defer func() { s.Close() }()
		pictured(t, s, 1)
		steps := []func() error{
			func() error { return s.Backup(t.Context(), backup) },
			func() error { pictured(t, s, 2); return nil },
			func() error { return s.Stage(t.Context(), backup) },
			func() (err error) { s.Close(); s, err = Open(t.Context(), path); return err },
			func() error { pictured(t, s, 2); return nil },
			func() error { pictured(t, s, 3); return nil },
			func() error { _, err := s.Salvage(t.Context(), saved); return err },
			func() error { s.Close(); _, err := KeepLogAside(stray(t, path), time.Now()); return err },
			func() (err error) { s, err = Open(t.Context(), path); return err },
		}
		for n, step := range steps {
			r.acknowledge(n)
			if err := step(); err != nil {
				t.Fatal(n, err)
			}
		}
		r.acknowledge(len(steps))
	})
	low, high := []int{1, 1, 2, 1, 1, 2, 3, 3, 3, 3}, []int{1, 2, 2, 1, 2, 3, 3, 3, 3, 3}
	replayed(t, calls, func(folder string, said int) error {
		path := filepath.Join(folder, "lots.walk")
		waits, last := exists(stagedAt(path)), low[said]
		if waits {
			last = 1
		}
		if err := errors.Join(strayAside(path), between(path, last, high[said])); err != nil {
			return err
		}
		aside, _ := filepath.Glob(path + ".before-restore-*.bak")
		if waits || said > 3 {
			if len(aside) == 0 {
				return fmt.Errorf("what was there is not set aside")
			}
			if err := between(aside[len(aside)-1], 2, 2); err != nil && (said > 3 || len(aside) == 1) {
				return err
			}
		}
		for at, n := range map[string]int{backup: 1, saved: 3} {
			at = filepath.Join(folder, filepath.Base(at))
			if gone := !exists(at); gone && (n == 1 && said > 0 || n == 3 && said > 6) {
				return fmt.Errorf("%s is gone", at)
			} else if gone {
				continue
			}
			if err := between(at, n, n); err != nil {
				return err
			}
		}
		return nil
	})
}

// stray puts a write-ahead file of nothing beside a closed store.
func stray(t *testing.T, path string) string {
	t.Helper()
	if err := plain.Place(logOf(path), bytes.NewReader(make([]byte, 100))); err != nil {
		t.Fatal(err)
	}
	return path
}

// strayAside keeps the log of stray aside where it lies beside a file, which is rightly refused until then.
func strayAside(path string) error {
	log, err := os.ReadFile(logOf(path))
	if err != nil || len(log) == 0 || !bytes.Equal(log, make([]byte, len(log))) {
		return nil
	}
	_, err = KeepLogAside(path, time.Now())
	return err
}

// TestPowerLossInUpgrade keeps the calls of bringing an old format up to date: all that the file held is there, in the old format or the
// new.
func TestPowerLossInUpgrade(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "lots.walk")
	old, err := os.ReadFile(landedFile(t, 4))
	if err != nil {
		t.Fatal(err)
	}
	calls := recorded(t, folder, func(r *recorder) {
		if err := plain.Place(path, bytes.NewReader(old)); err != nil {
			t.Fatal(err)
		}
		r.acknowledge(0)
		s, err := Open(t.Context(), path)
		if err != nil {
			t.Fatal(err)
		}
		r.acknowledge(1)
		s.Close()
	})
	replayed(t, calls, func(folder string, said int) error {
		path := filepath.Join(folder, "lots.walk")
		copies, _ := filepath.Glob(path + ".format*.bak")
		if said > 0 && len(copies) == 0 {
			return fmt.Errorf("the copy of the old format is gone")
		}
		for _, at := range append(copies, path) {
			s, err := Open(t.Context(), at)
			if err != nil {
				return err
			}
			l, err := s.Lot(t.Context(), 2)
			if err == nil {
				err = s.Check(t.Context())
			}
			if err == nil && (len(l.Photos) != 2 || read(t, s, 1).Case.Lot.Trim != "GT") {
				err = fmt.Errorf("not all is there: %+v", l)
			}
			if s.Close(); err != nil {
				return err
			}
		}
		return nil
	})
}
