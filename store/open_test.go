package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// pragmas reads settings back over one connection.
func pragmas(t *testing.T, conn *sql.Conn) map[string]string {
	t.Helper()
	found := map[string]string{}
	for _, name := range []string{"busy_timeout", "journal_mode", "foreign_keys", "synchronous", "query_only", "application_id",
		"user_version"} {
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
		added(t, s, valuation.Defaults())
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
	added(t, reopened(t, path), valuation.Defaults())
}

// landed pins every migration by its SHA-256: one that has landed is never edited, a new one is added below it.
var landed = []string{
	"9717a68313ae157e6cb07240350ee5370e41b3a55a496b06e85aeaf9acdacb8c",
	"e559f7cc24872d9fb4b0093c5b5c1dca7a94c5767ac7c33313e52e04e815c267",
	"0581a1a82182e1e7dc4d5d4746a38375eb69aba82159a2cb4ac92e87355c2084",
	"8e6ce4c88c07dcf935adec7a6ca5ebe7eb05c3ffde6288632d9b68eb1a2e515b",
	"cbf10eb711f2d308e5389b75bfbc7a321e85e7c0b63c7cab6f13e6b82320a84d",
	"693efc87f2590531190bbb277aaa28453598f0d7a61b18087dcbdcb247f5f373",
	"eae596c4741a80b3fa53989f69dd7518e7df647afc690cc502cc84c761f7637a",
	"4cb37df957cb174baf69d3ab3cae914fdbaab53e8215c06ad6d88ad519bef42e",
}

func TestLandedMigrationsAreNeverEdited(t *testing.T) {
	for i, text := range schema() {
		sum := fmt.Sprintf("%x", sha256.Sum256([]byte(text)))
		if i >= len(landed) || landed[i] != sum {
			t.Errorf("migration %d has SHA-256 %s: never edit one that landed, add another", i+1, sum)
		}
	}
}

func TestAnOlderFileIsCopiedAndBroughtUpToDate(t *testing.T) {
	s := opened(t)
	want := big(3)
	id := added(t, s, want)
	s.Close()
	steps := append(schema(), "CREATE TABLE keepsakes (id INTEGER PRIMARY KEY) STRICT;")
	newer, err := open(t.Context(), s.path, steps, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	equal(t, read(t, newer, id).Case, want)
	newer.Close()
	refused(t, s.path, ErrNewer, fmt.Sprintf("format %d", len(steps)))

	copies, _ := filepath.Glob(s.path + ".format*.bak")
	if len(copies) != 1 {
		t.Fatalf("copies: %v", copies)
	}
	equal(t, read(t, reopened(t, copies[0]), id).Case, want) // the copy is a whole store of the old format
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
	id := added(t, s, before)
	var pages int
	if err := s.writer.QueryRow("PRAGMA page_count").Scan(&pages); err != nil {
		t.Fatal(err)
	}
	if _, err := s.writer.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages+2)); err != nil {
		t.Fatal(err)
	}
	large := edited(t, s, book.Worksheet(id), "Import", id, func(l *book.Lot) { l.Case, l.State = big(2000), lot.Bid })
	if _, err := s.Do(t.Context(), large); !errors.Is(err, ErrFull) {
		t.Fatalf("a step on a full disk: %v", err)
	}
	l := read(t, s, id)
	if equal(t, l.Case, before); l.State != lot.ToLookAt {
		t.Errorf("half of a step was kept: %s", l.State)
	}
	if r, err := s.Reach(t.Context(), book.Worksheet(id)); err != nil || r != (book.Reach{}) {
		t.Errorf("a step that failed can be undone: %+v, %v", r, err)
	}
	if _, err := s.writer.Exec("PRAGMA max_page_count = 1000000"); err != nil {
		t.Fatal(err)
	}
	do(t, s, large) // with room made, the same step goes through whole
	if l := read(t, s, id); l.State != lot.Bid || len(l.Case.Resale.Rows) != 2000 {
		t.Errorf("%s, %d rows", l.State, len(l.Case.Resale.Rows))
	}
}

func TestTwoWindowsShareAFile(t *testing.T) {
	a := opened(t)
	b := reopened(t, a.path)
	id := added(t, a, valuation.Defaults())
	done := make(chan error, 2)
	for i, s := range []*Store{a, b} {
		go func() {
			done <- saves(t.Context(), s, id, i, 25)
		}()
	}
	if err := errors.Join(<-done, <-done); err != nil {
		t.Fatal(err)
	}
	for range 50 { // fifty steps of two windows
		undone(t, b, book.Worksheet(id), "VIN")
	}
	equal(t, read(t, a, id).Case, valuation.Defaults())
}

// saves keeps n changes of one field; where the other window was faster it looks again.
func saves(ctx context.Context, s *Store, id int64, who, n int) error {
	for i := 0; i < n; {
		before, err := s.Lot(ctx, id)
		if err != nil {
			return err
		}
		after := before.Clone()
		after.Case.Lot.VIN = fmt.Sprint(who, i)
		var clash *book.Clash
		switch _, err := s.Do(ctx, book.Step{Subject: book.Worksheet(id), Label: "VIN", Lots: []book.Change{{Before: before, After: after}}}); {
		case err == nil:
			i++
		case !errors.As(err, &clash):
			return err
		}
	}
	return nil
}

func TestACancelledStepWritesNothing(t *testing.T) {
	s := opened(t)
	id := added(t, s, valuation.Defaults())
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	late := edited(t, s, book.Worksheet(id), "late", id, func(l *book.Lot) { l.Case = big(3) })
	if _, err := s.Do(ctx, late); !errors.Is(err, context.Canceled) {
		t.Fatalf("a cancelled step: %v", err)
	}
	equal(t, read(t, s, id).Case, valuation.Defaults())
}

// big returns a case with random comparables.
func big(rows int) valuation.Case {
	c := valuation.Defaults()
	c.Currency = "USD"
	r := rand.New(rand.NewPCG(5, 6))
	for len(c.Resale.Rows) < rows {
		c.Resale.Rows = append(c.Resale.Rows, filled[resale.Row](r))
	}
	return c
}

// TestADamagedFileIsNamed spoils one page after another: reading everything either works, where the page held nothing
// that was read, or says that the file is damaged.
func TestADamagedFileIsNamed(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	s.Close()
	whole, err := os.ReadFile(s.path)
	if err != nil {
		t.Fatal(err)
	}
	const page = 4096
	damaged := 0
	for at := page; at < len(whole); at += page {
		spoiled := slices.Clone(whole)
		copy(spoiled[at:at+page], bytes.Repeat([]byte{0xA5}, page))
		path := filepath.Join(t.TempDir(), "spoiled.walk")
		os.WriteFile(path, spoiled, 0o644)
		err := readAll(t.Context(), path, id)
		if err != nil && !errors.Is(err, ErrDamaged) {
			t.Errorf("page %d: %v", at/page, err)
		}
		if err != nil {
			damaged++
		}
	}
	if damaged == 0 {
		t.Error("no page mattered")
	}
}

func readAll(ctx context.Context, path string, id int64) error {
	s, err := Open(ctx, path)
	if err != nil {
		return err
	}
	defer s.Close()
	_, err1 := s.Entries(ctx)
	_, err2 := s.Lot(ctx, id)
	_, err3 := s.Reach(ctx, book.Board)
	_, err4 := s.Builds(ctx)
	return errors.Join(err1, err2, err3, err4)
}
