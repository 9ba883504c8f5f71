package store

import (
	"context"
	"errors"
	"reflect"
	"testing"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// unshelved returns a case whose rows don't say where they lie on the shelf, which files of before format 7 did not.
func unshelved(c valuation.Case) valuation.Case {
	c = c.Clone()
	for i := range c.Resale.Rows {
		c.Resale.Rows[i].Shelf = 0
	}
	return c
}

func shelf(t testing.TB, s *Store) []book.Comparable {
	t.Helper()
	all, err := s.Shelf(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// ofShelf is the step of the shelf's own page.
func ofShelf(label string, changes ...book.Shelved) book.Step {
	return book.Step{Subject: book.Bench("Comparables"), Label: label, Shelf: changes}
}

// laid puts rows on the shelf, one for each price.
func laid(t testing.TB, s *Store, prices ...money.Amount) []book.Comparable {
	t.Helper()
	step := ofShelf("import")
	for _, p := range prices {
		step.Shelf = append(step.Shelf, book.Shelved{After: &book.Comparable{Currency: "USD", From: "a.csv", On: "2026-11-20",
			Row: resale.Row{Price: p, Make: "Ostrane", Model: "Pell", ModelYear: 2016}}})
	}
	do(t, s, step)
	return shelf(t, s)
}

// TestWhatLiesOnTheShelfIsKeptAndTakenBack: added, changed and taken off, each is one step, and a place is never used again.
func TestWhatLiesOnTheShelfIsKeptAndTakenBack(t *testing.T) {
	s := opened(t)
	all := laid(t, s, 100, 200, 300)
	if len(all) != 3 || all[2].Row.Price != 300 || all[2].ID == all[1].ID {
		t.Fatalf("%+v", all)
	}
	dearer := all[1]
	dearer.Row.Price, dearer.Earlier = 250, []book.Earlier{{Price: 200, Kind: "asked"}}
	done := do(t, s, ofShelf("change", book.Shelved{Before: &all[1], After: &dearer}, book.Shelved{Before: &all[2]}))
	if !done.Did || len(done.Shelf) != 2 {
		t.Errorf("done: %+v", done)
	}
	changed := shelf(t, s)
	if len(changed) != 2 || !reflect.DeepEqual(changed[1], dearer) {
		t.Errorf("changed: %+v", changed)
	}
	undone(t, s, book.Bench("Comparables"), "change")
	equal(t, shelf(t, s), all)
	redone(t, s, book.Bench("Comparables"), "change")
	equal(t, shelf(t, s), changed)
	undone(t, s, book.Bench("Comparables"), "change")
	undone(t, s, book.Bench("Comparables"), "import")
	if left := shelf(t, s); len(left) != 0 {
		t.Errorf("left: %+v", left)
	}
	if again := laid(t, s, 400); again[0].ID <= all[2].ID {
		t.Errorf("the place %d is used again", again[0].ID)
	}
	equal(t, shelf(t, reopened(t, s.path)), shelf(t, s))
}

// TestAStaleChangeOfTheShelfClashes: two changes of one row from the same reading.
func TestAStaleChangeOfTheShelfClashes(t *testing.T) {
	s := opened(t)
	all := laid(t, s, 100)
	one, other, note := all[0], all[0], all[0]
	one.Row.Price, other.Row.Price, note.Row.Note = 110, 120, "seen"
	do(t, s, ofShelf("one", book.Shelved{Before: &all[0], After: &one}))
	do(t, s, ofShelf("note", book.Shelved{Before: &all[0], After: &note}))
	var clash *book.Clash
	if _, err := s.Do(t.Context(), ofShelf("other", book.Shelved{Before: &all[0], After: &other})); !errors.As(err, &clash) {
		t.Errorf("no clash: %v", err)
	}
	if now := shelf(t, s)[0].Row; now.Price != 110 || now.Note != "seen" {
		t.Errorf("now: %+v", now)
	}
}

// TestRowsOfLotsMoveToTheShelf: in format 6 each lot held its rows. One vehicle in two lots is one row of the shelf; a row of another
// currency is another.
func TestRowsOfLotsMoveToTheShelf(t *testing.T) {
	path := landedFile(t, 6, `INSERT INTO documents (lot, part, page, body) SELECT 2, 'rows', 0, body FROM documents
		WHERE lot = 1 AND part = 'rows' ON CONFLICT DO UPDATE SET body = excluded.body;`)
	s := reopened(t, path)
	on := map[int64]book.Comparable{}
	for _, c := range shelf(t, s) {
		on[c.ID] = c
	}
	one, two := read(t, s, 1), read(t, s, 2)
	if len(one.Case.Resale.Rows) == 0 || len(one.Case.Resale.Rows) != len(two.Case.Resale.Rows) {
		t.Fatalf("rows: %d and %d", len(one.Case.Resale.Rows), len(two.Case.Resale.Rows))
	}
	for i, r := range one.Case.Resale.Rows {
		c, there := on[r.Shelf]
		if !there || c.Currency != one.Case.Currency || c.Lot != 1 || c.From != r.Source {
			t.Errorf("row %d lies at %d: %+v", i, r.Shelf, c)
		}
		same := two.Case.Resale.Rows[i].Shelf == r.Shelf
		if want := one.Case.Currency == two.Case.Currency; same != want {
			t.Errorf("of two lots: %d and %d", r.Shelf, two.Case.Resale.Rows[i].Shelf)
		}
		r.Shelf, r.Excluded, c.Row.Excluded = 0, false, false
		equal(t, c.Row, r)
	}
	undone(t, s, book.Worksheet(1), "Trim")
	redone(t, s, book.Worksheet(1), "Trim")
	equal(t, read(t, s, 1).Case, one.Case)
}

// landedShelf checks what format 7 added: a row that was put on the shelf, one that was changed, and a step that was taken back.
func landedShelf(t *testing.T, s *Store) {
	t.Helper()
	before := len(shelf(t, s))
	redone(t, s, book.Bench("Comparables"), "take off")
	undone(t, s, book.Bench("Comparables"), "take off")
	undone(t, s, book.Bench("Comparables"), "change")
	undone(t, s, book.Bench("Comparables"), "import")
	if all := shelf(t, s); len(all) != before-2 {
		t.Errorf("%d rows of %d are left", len(all), before)
	}
	redone(t, s, book.Bench("Comparables"), "import")
	redone(t, s, book.Bench("Comparables"), "change")
	if all := shelf(t, s); len(all) != before || all[before-1].Row.Price != 250 {
		t.Errorf("%d rows: %+v", len(all), all[before-1])
	}
}

// TestALongTableIsOneStepThatIsWatchedAndEnded: more rows than one statement writes come, change and go in one step and are taken back to
// the letter. Ended on the way, a step leaves nothing behind.
func TestALongTableIsOneStepThatIsWatchedAndEnded(t *testing.T) {
	s := opened(t)
	prices := make([]money.Amount, 5*rackRows+7)
	for i := range prices {
		prices[i] = money.Amount(i + 1)
	}
	all := laid(t, s, prices...)
	var changes []book.Shelved
	for i := range all {
		after := all[i]
		after.Row.Price += 5
		switch i % 3 {
		case 0:
			changes = append(changes, book.Shelved{Before: &all[i]})
		case 1:
			changes = append(changes, book.Shelved{Before: &all[i], After: &after}, book.Shelved{After: &after})
		}
	}
	ctx, stop := context.WithCancel(t.Context())
	var told []float64
	_, err := s.Do(book.Watched(ctx, func(done float64) {
		if told = append(told, done); len(told) == 3 {
			stop()
		}
	}), ofShelf("never", changes...))
	if err == nil || len(told) < 3 || told[2] <= told[1] {
		t.Errorf("ended: %v, told %v", err, told)
	}
	equal(t, shelf(t, s), all)
	do(t, s, ofShelf("change", changes...))
	changed := shelf(t, s)
	if len(changed) != 1007 || changed[len(changed)-1].ID != 1007+336 {
		t.Errorf("%d lie there, the last at %d", len(changed), changed[len(changed)-1].ID)
	}
	for range 2 {
		undone(t, s, book.Bench("Comparables"), "change")
		equal(t, shelf(t, s), all)
		redone(t, s, book.Bench("Comparables"), "change")
		equal(t, shelf(t, s), changed)
	}
	r, err := s.Reach(t.Context(), book.Bench("Comparables"))
	if err != nil || r != (book.Reach{Undo: "change"}) {
		t.Errorf("reach: %+v, %v", r, err)
	}
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
}
