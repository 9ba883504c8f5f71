package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/store/plain"
	"walkline/valuation"
)

// spoil overwrites all but the first page of a file.
func spoil(t *testing.T, path string) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	copy(data[4096:], bytes.Repeat([]byte{0xA5}, len(data)))
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

// backedUp returns a closed store with one lot and a backup of it.
func backedUp(t *testing.T) (s *Store, backup string) {
	t.Helper()
	s = opened(t)
	added(t, s, sample(t))
	backup = filepath.Join(t.TempDir(), "backup.walk")
	if err := errors.Join(s.Backup(t.Context(), backup), s.Close()); err != nil {
		t.Fatal(err)
	}
	return s, backup
}

// Setting aside once needed a sound file, so that a damaged one could never be replaced.
func TestABackupReplacesAFileThatDoesNotOpen(t *testing.T) {
	for name, harm := range map[string]func(path string) error{
		"damaged":   func(path string) error { spoil(t, path); return nil },
		"no file":   os.Remove,
		"cut short": func(path string) error { return os.Truncate(path, 5000) },
		"garbage":   func(path string) error { return os.WriteFile(path, []byte("scrambled"), 0o600) },
		"stray log": func(path string) error {
			return os.WriteFile(logOf(path), bytes.Repeat([]byte("scrambled"), 999), 0o600)
		},
	} {
		t.Run(name, func(t *testing.T) {
			s, backup := backedUp(t)
			if err := harm(s.path); err != nil {
				t.Fatal(err)
			}
			before, _ := os.ReadFile(s.path)
			log, _ := os.ReadFile(logOf(s.path))
			if err := StageFor(t.Context(), s.path, backup); err != nil {
				t.Fatal(err)
			}
			if n := len(entries(t, reopened(t, s.path))); n != 1 {
				t.Errorf("%d lots", n)
			}
			aside, _ := filepath.Glob(s.path + ".before-restore-*.bak")
			for _, at := range aside {
				if kept, _ := os.ReadFile(at); !bytes.Equal(kept, before) {
					t.Errorf("%s is not what was there", at)
				}
			}
			logs, _ := filepath.Glob(s.path + ".before-restore-*.bak-wal")
			if len(aside) != 1 && before != nil || len(logs) != 1 && log != nil {
				t.Errorf("set aside: %q %q", aside, logs)
			}
		})
	}
}

func TestFailedStartsLeaveNoPileOfCopies(t *testing.T) {
	s := opened(t)
	s.Close()
	spoil(t, s.path)
	broken := append(schema(), "CREATE TABLE keepsakes (id INTEGER) STRICT; nonsense")
	sound := opened(t)
	sound.Close()
	for range 3 {
		if _, err := Open(t.Context(), s.path); !errors.Is(err, ErrDamaged) {
			t.Fatal(err)
		}
		if _, err := open(t.Context(), sound.path, broken, sound.now); err == nil {
			t.Fatal("a broken migration went through")
		}
	}
	for _, path := range []string{s.path, sound.path} {
		if left, _ := filepath.Glob(path + ".*"); len(left) > 0 {
			t.Errorf("left: %q", left)
		}
	}
}

func TestABackupThatFailsLeavesNothingAndCanBeTriedAgain(t *testing.T) {
	s := opened(t)
	added(t, s, sample(t))
	hash := photo(t, s, "a photo")
	backup := filepath.Join(t.TempDir(), "backup.walk")
	at := mustPath(t, s, hash)
	os.Rename(at, at+".png")
	if err := os.MkdirAll(photosAt(backup), 0o700); err != nil { // a folder of that name is there already and cannot take the photo
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := s.Backup(ctx, backup); !errors.Is(err, context.Canceled) {
		t.Fatalf("%v", err)
	}
	os.Remove(photosAt(backup))
	if left, _ := os.ReadDir(filepath.Dir(backup)); len(left) > 0 {
		t.Errorf("left: %v", left)
	}
	os.WriteFile(backup+plain.Ending, []byte("left by a kill"), 0o600)
	if err := s.Backup(t.Context(), backup); err != nil {
		t.Fatal(err)
	}
	if n := len(entries(t, reopened(t, backup))); n != 1 {
		t.Errorf("%d lots", n)
	}
}

// A copy by hand is in WAL mode, and may have its log beside it; neither is written to.
func TestACopyByHandIsRestoredWithItsLog(t *testing.T) {
	from := crashed(t)
	s := opened(t)
	files := func() (sums []string) {
		all, _ := filepath.Glob(from + "*")
		for _, at := range all {
			data, _ := os.ReadFile(at)
			sums = append(sums, fmt.Sprintf("%s %x", at, sha256.Sum256(data)))
		}
		return sums
	}
	os.Remove(indexOf(from))
	before := files()
	if err := s.Stage(t.Context(), from); err != nil {
		t.Fatal(err)
	}
	if after := files(); strings.Join(after, "\n") != strings.Join(before, "\n") {
		t.Errorf("the copy was changed:\n%q\n%q", before, after)
	}
	s.Close()
	again := reopened(t, s.path)
	if l := read(t, again, 1); l.Case.Lot.VIN != "acknowledged" || len(entries(t, again)) != 2 {
		t.Errorf("%+v", l.Case.Lot)
	}
}

func TestWhatAKillLeftIsCleanedByWhoClaims(t *testing.T) {
	s := opened(t)
	added(t, s, valuation.Defaults())
	left := []string{stagedAt(s.path) + plain.Ending, s.path + ".format5-x.bak" + plain.Ending + "-wal"}
	kept := []string{s.path + ".before-restore-x.bak", s.path + ".restore"}
	for _, at := range append(left, kept...) {
		os.WriteFile(at, nil, 0o600)
	}
	release, err := Claim(t.Context(), s.path)
	if err != nil {
		t.Fatal(err)
	}
	defer release()
	for _, at := range left {
		if exists(at) {
			t.Errorf("%s is still there", at)
		}
	}
	for _, at := range kept {
		if !exists(at) {
			t.Errorf("%s was removed", at)
		}
	}
}

// A digit of a case, and one of what lists show, become others: SQLite finds nothing, the sums do. The other lot opens as before.
func TestAFigureThatBecameAnotherIsFound(t *testing.T) {
	for _, spoil := range []string{`UPDATE documents SET body = replace(body, '61200', '61300') WHERE lot = 1`,
		`UPDATE lots SET number = '15' WHERE id = 1`} {
		s := opened(t)
		for range 2 {
			c := sample(t)
			miles := 61200
			c.Lot.Odometer = &miles
			added(t, s, c)
		}
		if err := s.Check(t.Context()); err != nil {
			t.Fatal(err)
		}
		if done, err := s.writer.Exec(spoil); err != nil {
			t.Fatal(err)
		} else if n, _ := done.RowsAffected(); n == 0 {
			t.Fatal("nothing was spoilt")
		}
		if err := s.Check(t.Context()); !errors.Is(err, ErrDamaged) || !errors.Is(err, ErrAltered) || !strings.Contains(err.Error(), "lot 1") {
			t.Errorf("%s: %v", spoil, err)
		}
		path := s.path
		s.Close()
		s = reopened(t, path)
		if _, err := s.Lot(t.Context(), 1); strings.Contains(spoil, "documents") && !errors.Is(err, ErrAltered) {
			t.Errorf("a lot with another figure opens: %v", err)
		}
		read(t, s, 2)
	}
}

func TestACheckFindsADamagedPage(t *testing.T) {
	s := opened(t)
	added(t, s, sample(t))
	if err := s.Check(t.Context()); err != nil {
		t.Fatal(err)
	}
	s.Close()
	s = reopened(t, s.path)
	data, _ := os.ReadFile(s.path)
	copy(data[len(data)-8192:], bytes.Repeat([]byte{0xA5}, 8192)) // while it is open
	os.WriteFile(s.path, data, 0o600)
	if err := s.Check(t.Context()); !errors.Is(err, ErrDamaged) {
		t.Errorf("%v", err)
	}
}
