package store

import (
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
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
		if format >= 4 {
			checkLandedPhotos(t, s)
		}
		if format >= 3 {
			checkLandedBuild(t, s)
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

// checkLanded checks all that a landed file of format 1 holds, table by table; later ones hold it too.
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

// landedBuild fills every field of a build.
func landedBuild() build.Build {
	hammer, price, asked, days := money.Amount(420000), money.Amount(1150000), money.Amount(1190000), 12
	judged := prob.Three{Low: 1, Likely: 2, High: 3}
	return build.Build{Outcome: build.Sold, Hammer: &hammer, Note: "n", Imported: build.Imported{As: "7", Row: "r"},
		Dates: build.Dates{Bought: "2026-01-01", Home: "2026-01-02", Started: "2026-01-03", Finished: "2026-02-01", Inspected: "2026-02-10",
			Listed: "2026-02-11", Sold: "2026-02-23"},
		Sale:      build.Sale{Price: &price, FirstAsked: &asked, Days: &days, Brand: "rebuilt"},
		Otherwise: build.Otherwise{AsIs: &judged, PartOut: &judged, PartOutHours: &judged},
		Charges:   []build.Charge{{Name: "Gate", Amount: 7500}},
		Receipts: []build.Receipt{{Date: "2026-01-05", What: "Hood", Amount: 18000, Kind: "part", Line: "r1", Source: "used", Trade: "body",
			Donor: "1ABCD23E4FG567890", File: "hood.pdf", Hash: "00000000000000000000000000000000000000000000000000000000000000ff"}},
		Hours: []build.Work{{Date: "2026-01-06", Trade: "body", Line: "r1", Hours: 2.5, What: "fit"}},
		Risks: []build.Seen{{Risk: "h1", State: build.Found}}, Done: []string{"r1"}}
}

// checkLandedBuild checks what format 3 added.
func checkLandedBuild(t *testing.T, s *Store) {
	t.Helper()
	b, err := s.Build(t.Context(), 2)
	if err != nil {
		t.Fatal(err)
	}
	sameBuild(t, b, landedBuild())
	list, err := s.Builds(t.Context())
	if err != nil || len(list) != 1 || list[0].Foretold == nil || string(list[0].Foretold.Forecast) != `{"x":1}` {
		t.Fatalf("builds: %+v, %v", list, err)
	}
	decided, err := s.Decisions(t.Context())
	if err != nil || len(decided) != 1 || decided[0].What != Accepted || string(decided[0].After) != `{"a":1}` {
		t.Errorf("decisions: %+v, %v", decided, err)
	}
	if u, err := s.Undo(t.Context(), 2); err != nil || u.Label != "close" || u.Build.Hammer != nil {
		t.Errorf("undo: %+v, %v", u, err)
	}
}
