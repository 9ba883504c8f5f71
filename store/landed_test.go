package store

import (
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// landedFile returns a file of an old format, made from a dump of one that the version of its day wrote
// (sqlite3 lots.walk .dump). It holds the case of testdata/case.json, one save later.
func landedFile(t *testing.T, format int) string {
	t.Helper()
	dump, err := os.ReadFile(filepath.Join("testdata", fmt.Sprintf("format%d.sql", format)))
	if err != nil {
		t.Fatalf("no file of format %d to upgrade from: %v", format, err)
	}
	path := filepath.Join(t.TempDir(), "old.walk")
	db, err := sql.Open("sqlite", writing.dsn(path))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	marks := fmt.Sprintf("PRAGMA application_id = %d; PRAGMA user_version = %d;", applicationID, format)
	if _, err := db.Exec(string(dump) + marks); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestEveryLandedFormatOpensWithAllThatItHolds(t *testing.T) {
	for format := 1; format <= len(schema()); format++ {
		path := landedFile(t, format)
		s := reopened(t, path)
		checkLanded(t, s)
		if format >= 2 {
			checkShopSteps(t, s)
		}
		copies, _ := filepath.Glob(path + ".format*.bak")
		if older := format < len(schema()); older != (len(copies) == 1) {
			t.Errorf("format %d left the copies %v", format, copies)
		}
		for _, at := range copies {
			checkLanded(t, reopened(t, at))
		}
	}
}

// checkShopSteps checks the two marks that a file of format 2 remembers.
func checkShopSteps(t *testing.T, s *Store) {
	t.Helper()
	for range 2 {
		if _, done, err := s.UndoAt(t.Context(), Board); err != nil || !done {
			t.Errorf("undo on the Board: %v, %v", done, err)
		}
	}
	r, err := s.ReachAt(t.Context(), Board)
	if want := (Reach{CanRedo: true, Redo: "mark lot 14 as looked at"}); err != nil || r != want {
		t.Errorf("reach %+v, %v", r, err)
	}
}

// checkLanded checks all that a landed file holds, table by table.
func checkLanded(t *testing.T, s *Store) {
	t.Helper()
	ctx := t.Context()
	saved := sample(t)
	saved.Lot.Trim, saved.Resale.Rows = "GT", saved.Resale.Rows[1:]
	got, err := s.Case(ctx, 1)
	if err != nil {
		t.Fatal(err)
	}
	same(t, got, saved)
	e := entries(t, s)[0]
	if e.State != lot.Bid || e.Answer == nil || *e.Answer.WalkAway != money.Amount(630000) || e.Answer.Stale {
		t.Errorf("the list: %+v %+v", e, e.Answer)
	}
	frozen, err := s.Predictions(ctx, 1)
	if err != nil || len(frozen) != 1 || frozen[0].Seed != 7 {
		t.Fatalf("predictions: %+v, %v", frozen, err)
	}
	same(t, frozen[0].Case, sample(t))
	var theme string
	if found, err := s.Setting(ctx, "theme", &theme); !found || err != nil || theme != "light" {
		t.Errorf("the setting: %q, %v", theme, err)
	}
	u, err := s.Undo(ctx, 1)
	if err != nil || u.Label != "Trim" {
		t.Fatalf("undo: %+v, %v", u, err)
	}
	same(t, u.Case, sample(t))
	if u, err = s.Redo(ctx, 1); err != nil {
		t.Fatal(err)
	}
	same(t, u.Case, saved)
}
