package store

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"walkline/store/plain"
	"walkline/valuation"
)

// photo keeps a file of some bytes as a photograph and returns its hash.
func photo(t *testing.T, s *Store, words string) string {
	t.Helper()
	hash := fmt.Sprintf("%x", sha256.Sum256([]byte(words)))
	if err := s.Album().Keep(hash, "jpeg", []byte(words)); err != nil {
		t.Fatal(err)
	}
	return hash
}

func TestABackupIsPutInPlaceAtTheNextStartAndNothingIsLost(t *testing.T) {
	s := opened(t)
	ctx := t.Context()
	added(t, s, sample(t))
	early := photo(t, s, "early")
	backup := filepath.Join(t.TempDir(), "copy #1.walk")
	if err := s.Backup(ctx, backup); err != nil {
		t.Fatal(err)
	}
	added(t, s, sample(t))
	if err := os.RemoveAll(filepath.Dir(mustPath(t, s, early))); err != nil { // another machine has none of the photographs
		t.Fatal(err)
	}
	late := photo(t, s, "late")
	if err := s.Stage(ctx, backup); err != nil || !s.Staged() {
		t.Fatalf("%v, staged %v", err, s.Staged())
	}
	if n := len(entries(t, s)); n != 2 {
		t.Errorf("before the next start there are %d lots", n)
	}
	added(t, s, sample(t)) // an edit after the backup was made ready
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	again := reopened(t, s.path)
	if n := len(entries(t, again)); n != 1 || again.Staged() {
		t.Errorf("restored, there are %d lots; one still waits: %v", n, again.Staged())
	}
	for _, hash := range []string{early, late} {
		if _, err := again.Album().File(hash, "jpeg"); err != nil {
			t.Errorf("a photograph is lost: %v", err)
		}
	}
	aside, err := filepath.Glob(s.path + ".before-restore-*.bak")
	if err != nil || len(aside) != 1 {
		t.Fatalf("set aside: %v, %v", aside, err)
	}
	if n := len(entries(t, reopened(t, aside[0]))); n != 3 {
		t.Errorf("what was there before has %d lots", n)
	}
}

func mustPath(t *testing.T, s *Store, hash string) string {
	t.Helper()
	path, err := s.Album().Path(hash, "jpeg")
	if err != nil {
		t.Fatal(err)
	}
	return path
}

func TestWhatIsNoBackupIsRefusedByName(t *testing.T) {
	s := opened(t)
	dir := t.TempDir()
	write := func(name string, make func(path string) error) string {
		t.Helper()
		path := filepath.Join(dir, name)
		if err := make(path); err != nil {
			t.Fatal(err)
		}
		return path
	}
	marked := func(marks string) func(string) error {
		return func(path string) error {
			db, err := sql.Open("sqlite", writing.dsn(path))
			if err != nil {
				return err
			}
			defer db.Close()
			_, err = db.Exec("CREATE TABLE x (y); " + marks)
			return err
		}
	}
	for name, c := range map[string]struct {
		path string
		want error
	}{
		"a text":        {write("text", func(p string) error { return os.WriteFile(p, []byte("no database at all"), 0o600) }), ErrNotDatabase},
		"nothing":       {filepath.Join(dir, "nothing"), ErrNotDatabase},
		"an empty file": {write("empty", func(p string) error { return os.WriteFile(p, nil, 0o600) }), ErrNotDatabase},
		"another's":     {write("other", marked("PRAGMA application_id = 7")), ErrForeign},
		"a newer one":   {write("newer", marked(fmt.Sprintf("PRAGMA application_id = %d; PRAGMA user_version = 999", applicationID))), ErrNewer},
		"itself":        {s.path, ErrSame},
	} {
		if err := s.Stage(t.Context(), c.path); !errors.Is(err, c.want) || s.Staged() {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
}

func TestARestoreCanBeLetGoAndWaitsForOthers(t *testing.T) {
	s := opened(t)
	added(t, s, valuation.Defaults())
	backup := filepath.Join(t.TempDir(), "b")
	if err := errors.Join(s.Backup(t.Context(), backup), s.Stage(t.Context(), backup)); err != nil {
		t.Fatal(err)
	}
	if other, err := Open(context.Background(), s.path); !errors.Is(err, ErrBusy) {
		other.Close()
		t.Errorf("a store that is open in another window was replaced: %v", err)
	}
	if err := s.Unstage(); err != nil || s.Staged() {
		t.Errorf("let go: %v", err)
	}
	added(t, s, valuation.Defaults())
	if n := len(entries(t, reopened(t, s.path))); n != 2 {
		t.Errorf("%d lots", n)
	}
}

func TestABackupIsAStoreOfItsOwnAndOverwritesNothing(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	path := filepath.Join(t.TempDir(), "copy #1?.walk")
	if err := s.Backup(t.Context(), path); err != nil {
		t.Fatal(err)
	}
	if err := s.Backup(t.Context(), path); !errors.Is(err, fs.ErrExist) {
		t.Fatalf("a backup over a backup: %v", err)
	}
	if err := s.Backup(t.Context(), filepath.Join(path, "below a file")); !errors.Is(err, ErrNotWritable) {
		t.Fatalf("a backup to nowhere: %v", err)
	}
	equal(t, read(t, reopened(t, path), id).Case, sample(t))
}

// A backup that fails in the middle of the photographs leaves nothing, and can be tried again; photographs that were there before stay.
func TestABackupThatFailsInTheMiddleLeavesNothing(t *testing.T) {
	s := opened(t)
	added(t, s, sample(t))
	for _, words := range []string{"a photo", "another", "a third"} {
		photo(t, s, words)
	}
	large := filepath.Join(photosAt(s.path), strings.Repeat("f", 64)+".jpg") // the last of them, larger than any that is read
	if err := errors.Join(os.WriteFile(large, nil, 0o600), os.Truncate(large, 1<<30)); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	day := time.Date(2026, 11, 20, 12, 0, 0, 0, time.UTC)
	backUp := func() error { _, err := s.Daily(t.Context(), dir, day); return err }
	if err := backUp(); !errors.Is(err, plain.ErrTooLarge) {
		t.Fatalf("%v", err)
	}
	if left, _ := os.ReadDir(dir); len(left) > 0 {
		t.Errorf("left %v", left)
	}
	if err := errors.Join(os.Remove(large), backUp()); err != nil {
		t.Fatal(err)
	}
	made := filepath.Join(dir, "walkline-daily-2026-11-20.db")
	if photos, _ := os.ReadDir(photosAt(made)); len(photos) != 3 || len(entries(t, reopened(t, made))) != 1 {
		t.Errorf("tried again: %v", photos)
	}
}

func TestFilesLieBesideTheStore(t *testing.T) {
	s := opened(t)
	const abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad" // FIPS 180-4, the example "abc"
	if err := s.KeepFile(abc, "jpeg", []byte("abc")); err != nil {
		t.Fatal(err)
	}
	if data, err := s.KeptFile(abc, "jpeg"); err != nil || string(data) != "abc" {
		t.Errorf("%q, %v", data, err)
	}
	if names, _ := filepath.Glob(s.path + ".photos/*"); len(names) != 1 {
		t.Errorf("beside the store: %q", names)
	}
}
