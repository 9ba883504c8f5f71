package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"walkline/valuation"
	"walkline/valuation/lot"
)

// pragmas reads settings back over one connection.
func pragmas(t *testing.T, conn *sql.Conn) map[string]string {
	t.Helper()
	found := map[string]string{}
	for _, name := range []string{"busy_timeout", "journal_mode", "foreign_keys", "synchronous", "query_only", "application_id", "user_version"} {
		var value string
		if err := conn.QueryRowContext(t.Context(), "PRAGMA "+name).Scan(&value); err != nil {
			t.Fatal(err)
		}
		found[name] = value
	}
	return found
}

func TestEveryConnectionHasItsPragmas(t *testing.T) {
	s := opened(t)
	for _, pool := range []struct {
		db        *sql.DB
		count     int
		queryOnly string
	}{{s.writer, 1, "0"}, {s.reader, 2, "1"}} {
		for range pool.count { // held at once, so that they are two
			conn, err := pool.db.Conn(t.Context())
			if err != nil {
				t.Fatal(err)
			}
			defer conn.Close()
			got := pragmas(t, conn)
			want := map[string]string{"busy_timeout": "5000", "journal_mode": "wal", "foreign_keys": "1", "synchronous": "2",
				"query_only": pool.queryOnly, "application_id": fmt.Sprint(applicationID), "user_version": fmt.Sprint(len(schema()))}
			for name := range want {
				if got[name] != want[name] {
					t.Errorf("%s is %s, want %s", name, got[name], want[name])
				}
			}
		}
	}
}

func TestATransactionOfTheWriterHoldsTheLockFromItsStart(t *testing.T) {
	s := opened(t)
	tx, err := s.writer.BeginTx(t.Context(), nil)
	if err != nil {
		t.Fatal(err)
	}
	defer tx.Rollback()
	short := writing
	short.pragmas = []string{"busy_timeout(50)"}
	other, err := short.open(t.Context(), s.path)
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	if _, err := other.BeginTx(t.Context(), nil); !errors.Is(wrapped("", err), ErrBusy) {
		t.Fatalf("a second writer began: %v", err)
	}
}

func TestPathsWithSignsOfAnAddressStayWhole(t *testing.T) {
	for _, name := range []string{"a#b", "a?mode=memory", "a%20b", "a%b", "a b&c=d;e", "ä漢"} {
		path := filepath.Join(t.TempDir(), name)
		s := reopened(t, path)
		if _, err := s.Add(t.Context(), valuation.Defaults()); err != nil {
			t.Fatal(err)
		}
		s.Close()
		entries, err := os.ReadDir(filepath.Dir(path))
		if err != nil || len(entries) != 1 || entries[0].Name() != name {
			t.Fatalf("%q made %v, %v", name, entries, err)
		}
		if list, err := reopened(t, path).Entries(t.Context()); err != nil || len(list) != 1 {
			t.Fatalf("%q holds %d lots, %v", name, len(list), err)
		}
	}
}

// refused opens a path that can't be opened and checks the sentinel, what the sentence says, and that the file is as it was.
func refused(t *testing.T, path string, want error, says string) {
	t.Helper()
	before, _ := os.ReadFile(path)
	s, err := Open(t.Context(), path)
	if err == nil {
		s.Close()
	}
	if !errors.Is(err, want) || !strings.Contains(err.Error(), says) || !strings.Contains(err.Error(), path) {
		t.Fatalf("opening %s: %v", path, err)
	}
	if after, _ := os.ReadFile(path); !bytes.Equal(before, after) {
		t.Fatalf("%s was changed", path)
	}
}

func TestFilesThatAreNotOursAreRefusedUntouched(t *testing.T) {
	dir := t.TempDir()
	text := filepath.Join(dir, "notes.txt")
	os.WriteFile(text, []byte("SQLite format is a fine thing to write about"), 0o644)
	refused(t, text, ErrNotDatabase, "not a database")

	cut := filepath.Join(dir, "cut.db")
	os.WriteFile(cut, append(slices.Clone(magic), "then nothing that makes sense"...), 0o644)
	refused(t, cut, ErrNotDatabase, "not a database")

	refused(t, dir, ErrNotDatabase, "folder")
	refused(t, filepath.Join(dir, "none", "lots.walk"), ErrNotWritable, "no folder")

	foreign := filepath.Join(dir, "foreign.db")
	db, err := sql.Open("sqlite", "file:"+foreign)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.Exec("CREATE TABLE stamps (country TEXT)"); err != nil {
		t.Fatal(err)
	}
	db.Close()
	refused(t, foreign, ErrForeign, "another program")
}

func TestANewerFileIsRefusedByVersion(t *testing.T) {
	s := opened(t)
	if _, err := s.writer.Exec("PRAGMA user_version = 99"); err != nil {
		t.Fatal(err)
	}
	s.Close()
	refused(t, s.path, ErrNewer, "format 99")
}

func TestAnEmptyFileBecomesAStore(t *testing.T) {
	path := filepath.Join(t.TempDir(), "empty")
	os.WriteFile(path, nil, 0o644)
	if _, err := reopened(t, path).Add(t.Context(), valuation.Defaults()); err != nil {
		t.Fatal(err)
	}
}

// landed pins every migration by its SHA-256: one that has landed is never edited, a new one is added below it.
var landed = []string{
	"9717a68313ae157e6cb07240350ee5370e41b3a55a496b06e85aeaf9acdacb8c",
	"e559f7cc24872d9fb4b0093c5b5c1dca7a94c5767ac7c33313e52e04e815c267",
	"0581a1a82182e1e7dc4d5d4746a38375eb69aba82159a2cb4ac92e87355c2084",
	"8e6ce4c88c07dcf935adec7a6ca5ebe7eb05c3ffde6288632d9b68eb1a2e515b",
	"d00b791a15adbd6dd06f33e93e7521f1689880bb7b55d27ba1731505f44acc10",
}

func TestLandedMigrationsAreNeverEdited(t *testing.T) {
	for i, text := range schema() {
		sum := fmt.Sprintf("%x", sha256.Sum256([]byte(text)))
		if i >= len(landed) || landed[i] != sum {
			t.Errorf("migration %d has SHA-256 %s: never edit one that landed, add another", i+1, sum)
		}
	}
}

func TestStatesAreTheSchemasStates(t *testing.T) {
	s := opened(t)
	id, err := s.Add(t.Context(), valuation.Defaults())
	if err != nil {
		t.Fatal(err)
	}
	for _, state := range lot.States {
		if err := s.SetState(t.Context(), id, state); err != nil {
			t.Error(err)
		}
	}
	if err := s.SetState(t.Context(), id, "dreaming"); !errors.Is(err, ErrRefused) {
		t.Errorf("an unknown state: %v", err)
	}
}

func TestAnOlderFileIsCopiedAndBroughtUpToDate(t *testing.T) {
	s := opened(t)
	want := big(3)
	id, err := s.Add(t.Context(), want)
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	steps := append(schema(), "CREATE TABLE keepsakes (id INTEGER PRIMARY KEY) STRICT;")
	newer, err := open(t.Context(), s.path, steps, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	got, err := newer.Case(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	same(t, got, want)
	newer.Close()
	refused(t, s.path, ErrNewer, fmt.Sprintf("format %d", len(steps)))

	copies, _ := filepath.Glob(s.path + ".format*.bak")
	if len(copies) != 1 {
		t.Fatalf("copies: %v", copies)
	}
	got, err = reopened(t, copies[0]).Case(t.Context(), id) // the copy is a whole store of the old format
	if err != nil {
		t.Fatal(err)
	}
	same(t, got, want)
}

func TestAMigrationThatFailsLeavesTheOldFormat(t *testing.T) {
	s := opened(t)
	s.Close()
	steps := append(schema(), "CREATE TABLE keepsakes (id INTEGER) STRICT; CREATE TABLE keepsakes (id INTEGER) STRICT;")
	if _, err := open(t.Context(), s.path, steps, time.Now); err == nil || !strings.Contains(err.Error(), "bringing the file to format") {
		t.Fatalf("a broken migration: %v", err)
	}
	if err := reopened(t, s.path).reader.QueryRow("SELECT count(*) FROM keepsakes").Scan(new(int)); err == nil {
		t.Fatal("half a migration stayed")
	}
}

func TestCopiesNeverOverwriteEachOther(t *testing.T) {
	s := opened(t)
	s.now = func() time.Time { return time.Date(2026, 11, 20, 12, 0, 0, 0, time.UTC) }
	first, err1 := s.copyBefore(t.Context(), 1)
	second, err2 := s.copyBefore(t.Context(), 1)
	if err1 != nil || err2 != nil || first == second {
		t.Fatalf("%s, %v; %s, %v", first, err1, second, err2)
	}
}

func TestAFullDiskSavesNothingAndSaysSo(t *testing.T) {
	s := opened(t)
	before := big(2)
	id, err := s.Add(t.Context(), before)
	if err != nil {
		t.Fatal(err)
	}
	var pages int
	if err := s.writer.QueryRow("PRAGMA page_count").Scan(&pages); err != nil {
		t.Fatal(err)
	}
	if _, err := s.writer.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages+2)); err != nil {
		t.Fatal(err)
	}
	if err := s.Save(t.Context(), id, "Import", big(2000)); !errors.Is(err, ErrFull) {
		t.Fatalf("a save on a full disk: %v", err)
	}
	got, err := s.Case(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	same(t, got, before)
}

func TestTwoWindowsShareAFile(t *testing.T) {
	a := opened(t)
	b := reopened(t, a.path)
	id, err := a.Add(t.Context(), valuation.Defaults())
	if err != nil {
		t.Fatal(err)
	}
	done := make(chan error, 2)
	for i, s := range []*Store{a, b} {
		go func() {
			done <- saves(t.Context(), s, id, i, 25)
		}()
	}
	if err := errors.Join(<-done, <-done); err != nil {
		t.Fatal(err)
	}
	for range 50 {
		if u, err := b.Undo(t.Context(), id); err != nil || !u.Done {
			t.Fatalf("fifty saves of two windows make fifty steps: %v %v", u.Done, err)
		}
	}
	got, err := a.Case(t.Context(), id)
	if err != nil {
		t.Fatal(err)
	}
	same(t, got, valuation.Defaults())
}

func saves(ctx context.Context, s *Store, id int64, who, n int) error {
	for i := range n {
		c, err := s.Case(ctx, id)
		if err != nil {
			return err
		}
		c.Lot.VIN = fmt.Sprint(who, i)
		if err := s.Save(ctx, id, "VIN", c); err != nil {
			return err
		}
	}
	return nil
}

func TestACancelledSaveWritesNothing(t *testing.T) {
	s := opened(t)
	id, err := s.Add(t.Context(), valuation.Defaults())
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := s.Save(ctx, id, "late", big(3)); !errors.Is(err, context.Canceled) {
		t.Fatalf("a cancelled save: %v", err)
	}
	got, _ := s.Case(t.Context(), id)
	same(t, got, valuation.Defaults())
}
