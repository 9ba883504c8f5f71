package store

import (
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// landedFile returns a file of an old format, made from a dump of one that the version of its day wrote
// (sqlite3 lots.walk .dump). It holds the case of testdata/case.json, one save later.
func landedFile(t *testing.T, format int, and ...string) string {
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
	if _, err := db.Exec(string(dump) + marks + strings.Join(and, "")); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestEveryLandedFormatOpensWithAllThatItHolds(t *testing.T) {
	for format := 1; format <= len(schema()); format++ {
		t.Run(fmt.Sprint(format), func(t *testing.T) {
			path := landedFile(t, format)
			checkLanded(t, reopened(t, path), format)
			copies, _ := filepath.Glob(path + ".format*.bak")
			if older := format < len(schema()); older != (len(copies) == 1) {
				t.Errorf("it left the copies %v", copies)
			}
			for _, at := range copies {
				checkLanded(t, reopened(t, at), format)
			}
		})
	}
}

// TestAStepOfTheBoardTakesItsEditsAlong: in format 4 a run list was a step of the Board and one of each lot that it changed.
func TestAStepOfTheBoardTakesItsEditsAlong(t *testing.T) {
	s := reopened(t, landedFile(t, 4, `INSERT INTO shop_steps (place, label, change, made_at) VALUES
		('board', 'run list', '{"lots":[],"settings":null,"edits":[{"lot":1,"number":1},{"lot":1,"number":77}]}', ''),
		('bench', 'rate', '{"lots":[],"settings":[{"name":"shop","before":null,"after":{"rate":35}}],"edits":null}', ''),
		('bench', 'rate', '{"lots":[],"settings":[{"name":"shop","before":{"rate":35},"after":{"rate":40}}],"edits":null}', '');
		INSERT INTO settings VALUES ('shop', '{"rate":40}', '')`))
	if r, err := s.Reach(t.Context(), book.Worksheet(1)); err != nil || r != (book.Reach{}) {
		t.Errorf("the worksheet would take it back: %+v, %v", r, err)
	}
	undone(t, s, book.Board, "run list")
	equal(t, unshelved(read(t, s, 1).Case), sample(t))
	do(t, s, book.Step{Subject: book.Bench("fees"), Label: "gate", Settings: []book.Setting{{Name: "fees", After: 75}}})
	undone(t, s, book.Bench("fees"), "gate")
	undone(t, s, book.Bench("fees"), "rate") // a step of the whole Bench is reached from every section
	undone(t, s, book.Bench("labour"), "rate")
	if found, err := s.Setting(t.Context(), "shop", new(any)); found || err != nil {
		t.Errorf("before the first step there is a setting: %v, %v", found, err)
	}
	redone(t, s, book.Bench("labour"), "rate")
}

// checkLanded checks all that a landed file holds: of each format what it added, table by table. Formats 6 and 8 added nothing that is
// read.
func checkLanded(t *testing.T, s *Store, format int) {
	t.Helper()
	saved := sample(t)
	saved.Lot.Trim, saved.Resale.Rows = "GT", saved.Resale.Rows[1:]
	equal(t, unshelved(read(t, s, 1).Case), saved)
	e := entries(t, s)[0]
	if e.State != lot.Bid || e.Answer == nil || *e.Answer.WalkAway != money.Amount(630000) || e.Answer.Stale {
		t.Errorf("the list: %+v %+v", e, e.Answer)
	}
	if format >= 7 && (e.Answer.Plan != "rebuild" || *e.Answer.WinChance != 0.25 || *e.Answer.ExpectedGain != 310.5) {
		t.Errorf("what else the list says: %+v", e.Answer.Said)
	}
	frozen, doubts, err := s.FrozenCases(t.Context())
	if err != nil || len(doubts) > 0 {
		t.Fatalf("frozen cases: %q, %v", doubts, err)
	}
	equal(t, frozen[1], sample(t))
	var theme string
	if found, err := s.Setting(t.Context(), "theme", &theme); !found || err != nil || theme != "light" {
		t.Errorf("the setting: %q, %v", theme, err)
	}
	undone(t, s, book.Worksheet(1), "Trim")
	equal(t, unshelved(read(t, s, 1).Case), sample(t))
	redone(t, s, book.Worksheet(1), "Trim")
	equal(t, unshelved(read(t, s, 1).Case), saved)
	since := []func(t *testing.T, s *Store){landedMarks, landedBuilds, landedAlbum, landedSteps, func(*testing.T, *Store) {}, landedShelf}
	for _, check := range slices.Backward(since[:min(format-1, len(since))]) {
		check(t, s)
	}
}

// landedMarks checks the two marks that a file of format 2 remembers.
func landedMarks(t *testing.T, s *Store) {
	t.Helper()
	undone(t, s, book.Board, "mark lot 14 as bid")
	undone(t, s, book.Board, "mark lot 14 as looked at")
	r, err := s.Reach(t.Context(), book.Board)
	if want := (book.Reach{Redo: "mark lot 14 as looked at"}); err != nil || r != want {
		t.Errorf("reach %+v, %v", r, err)
	}
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
			Donor: "1ABCD23E4FG567890", File: "hood.pdf", Hash: strings.Repeat("0", 62) + "ff"}},
		Hours: []build.Work{{Date: "2026-01-06", Trade: "body", Line: "r1", Hours: 2.5, What: "fit"}},
		Risks: []build.Seen{{Risk: "h1", State: build.Found}}, Done: []string{"r1"}}
}

// landedBuilds checks what format 3 added.
func landedBuilds(t *testing.T, s *Store) {
	t.Helper()
	if got := read(t, s, 2).Build; !reflect.DeepEqual(got, landedBuild()) {
		t.Errorf("the build: %+v", got)
	}
	list, err := s.Builds(t.Context())
	if err != nil || len(list) != 1 || !list[0].Frozen || list[0].Foretold == nil || !reflect.DeepEqual(list[0].Build, landedBuild()) {
		t.Fatalf("builds: %+v, %v", list, err)
	}
	past, err := s.Imports(t.Context())
	if want := (book.Import{Lot: 2, As: "7", Row: "r"}); err != nil || len(past) != 1 || past[0] != want {
		t.Errorf("imports: %+v, %v", past, err)
	}
	decided, err := s.Decisions(t.Context())
	if err != nil || len(decided) == 0 || decided[0].What != book.Accepted || decided[0].At.IsZero() {
		t.Errorf("decisions: %+v, %v", decided, err)
	}
	undone(t, s, book.Build(2), "close")
	if got := read(t, s, 2).Build; !reflect.DeepEqual(got, build.Build{}) {
		t.Errorf("undone, the build: %+v", got)
	}
}

// landedPhotos are those of a file of format 4.
func landedPhotos() []lot.Photo {
	return []lot.Photo{
		{Hash: strings.Repeat("0a", 32), Kind: "jpeg", Name: "IMG 1.JPG", Width: 4032, Height: 3024, Taken: "2026-01-02", Area: "12",
			Stage: lot.Before, Caption: "grille"},
		{Hash: strings.Repeat("0b", 32), Kind: "png", Name: "b.png", Width: 20, Height: 30, Area: "", Stage: lot.After}}
}

// landedAlbum checks what format 4 added: two photographs of lot 2, and the step that added them.
func landedAlbum(t *testing.T, s *Store) {
	t.Helper()
	if got := read(t, s, 2).Photos; !reflect.DeepEqual(got, landedPhotos()) {
		t.Errorf("photos: %+v", got)
	}
	undone(t, s, book.Worksheet(2), "add 2 photos")
	if got := read(t, s, 2).Photos; got != nil {
		t.Errorf("undone, photos: %+v", got)
	}
}

// landedSteps checks what format 5 added: steps of every subject, one of them typed, one undone, and a removed lot.
func landedSteps(t *testing.T, s *Store) {
	t.Helper()
	if _, err := s.Lot(t.Context(), 3); !errors.Is(err, ErrNotFound) {
		t.Errorf("a removed lot: %v", err)
	}
	redone(t, s, book.Build(4), "bill")
	undone(t, s, book.Worksheet(4), "damage")
	undone(t, s, book.Sale, "won")
	l := read(t, s, 4)
	equal(t, unshelved(l.Case), sample(t))
	if l.State != lot.ToLookAt || l.Build.Hammer != nil || len(l.Build.Receipts) != 1 {
		t.Errorf("the lot: %s, %+v", l.State, l.Build)
	}
	for _, want := range []float64{40, 35} {
		var shop struct{ Rate float64 }
		if found, err := s.Setting(t.Context(), "shop", &shop); err != nil || !found || shop.Rate != want {
			t.Errorf("the shop: %+v, %v, want %g", shop, err, want)
		}
		if _, err := s.Undo(t.Context(), book.Bench("labour")); err != nil {
			t.Error(err)
		}
	}
	redone(t, s, book.Record, "accept a factor")
	undone(t, s, book.Build(4), "bill") // a lot with a bill would stay
	for _, label := range []string{"new lot", "remove a lot", "new lot"} {
		undone(t, s, book.Board, label)
	}
}
