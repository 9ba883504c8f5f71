package store

import (
	"errors"
	"fmt"
	"slices"
	"testing"
	"time"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// clashes checks that a step is refused for its fields and that nothing of it was kept.
func clashes(t *testing.T, s *Store, step book.Step, fields ...string) {
	t.Helper()
	id := step.Lots[0].After.ID
	before, err := s.Reach(t.Context(), step.Subject)
	if err != nil {
		t.Fatal(err)
	}
	was := read(t, s, id)
	var clash *book.Clash
	if _, err := s.Do(t.Context(), step); !errors.As(err, &clash) || !slices.Equal(clash.Fields, fields) || clash.Lot != was.Case.Lot.Number {
		t.Fatalf("%s: %v, want a clash of %q", step.Label, err, fields)
	}
	equal(t, read(t, s, id), was)
	if now, err := s.Reach(t.Context(), step.Subject); err != nil || now != before {
		t.Errorf("a refused step is in the history: %+v, %v", now, err)
	}
}

// TestAStaleStepIsMergedOrClashes: a run list is taken in while a worksheet is open; the worksheet's next edit must keep both.
func TestAStaleStepIsMergedOrClashes(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	trim := edited(t, s, book.Worksheet(id), "trim", id, func(l *book.Lot) {
		l.Case.Lot.Trim, l.Case.Resale.Rows[0].Excluded = "GT", true
	})
	odometer := edited(t, s, book.Worksheet(id), "odometer", id, func(l *book.Lot) { l.Case.Lot.Odometer = new(int) })
	row := edited(t, s, book.Worksheet(id), "row", id, func(l *book.Lot) { l.Case.Resale.Rows[0].Price++ })
	edit(t, s, book.Board, "run list", id, func(l *book.Lot) {
		read := 99000
		l.Case.Lot.Number, l.Case.Lot.Odometer = "90", &read
		l.Case.Resale.Rows = slices.Insert(l.Case.Resale.Rows, 0, l.Case.Resale.Rows[1])
	})
	done := do(t, s, trim)
	if !done.Merged || !slices.Equal(done.Parts, []string{"lot", "rows"}) || done.Revisions[0] != 2 {
		t.Errorf("%+v", done)
	}
	l := read(t, s, id)
	rows := l.Case.Resale.Rows
	if x := l.Case.Lot; x.Trim != "GT" || x.Number != "90" || *x.Odometer != 99000 || len(rows) != 3 || !rows[1].Excluded {
		t.Errorf("not both: %+v", l.Case)
	}
	clashes(t, s, odometer, "lot.odometer")
	clashes(t, s, row, "rows")
	if done := do(t, s, trim); done.Did {
		t.Errorf("what is there already was done again: %+v", done)
	}
	for _, forced := range []book.Step{odometer, row} {
		forced.Forced = true
		do(t, s, forced)
	}
	if l := read(t, s, id); *l.Case.Lot.Odometer != 0 || l.Case.Lot.Number != "90" || l.Case.Lot.Trim != "GT" || len(l.Case.Resale.Rows) != 2 {
		t.Errorf("forced: %+v", l.Case)
	}
	undone(t, s, book.Worksheet(id), "row")
	undone(t, s, book.Worksheet(id), "odometer")
	undone(t, s, book.Worksheet(id), "trim")
	undone(t, s, book.Board, "run list")
	equal(t, read(t, s, id).Case, sample(t))
}

// TestWonIsUndoneWholeAndLeavesWhatCameSince: W on the page of the sale marks the lot, keeps the hammer price and the invoice and
// freezes the prediction; a bill is entered since.
func TestWonIsUndoneWholeAndLeavesWhatCameSince(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	price := money.Amount(420000)
	won := edited(t, s, book.Sale, "won", id, func(l *book.Lot) {
		l.State, l.Build.Hammer, l.Build.Dates.Bought = lot.Won, &price, "2026-11-28"
		l.Build.Charges = []build.Charge{{Name: "Gate", Amount: 7500}}
	})
	won.Lots[0].Freeze = &book.Prediction{Case: sample(t), Answer: answer(&price)}
	do(t, s, won)
	edit(t, s, book.Build(id), "bill", id, func(l *book.Lot) { l.Build.Receipts = landedBuild().Receipts })
	if r, err := s.Reach(t.Context(), book.Worksheet(id)); err != nil || r != (book.Reach{}) {
		t.Errorf("the worksheet would take it back: %+v, %v", r, err)
	}
	undone(t, s, book.Sale, "won")
	l := read(t, s, id)
	bill := build.Build{Receipts: l.Build.Receipts}
	if equal(t, l.Build, bill); l.State != lot.ToLookAt || len(l.Build.Receipts) != 1 {
		t.Errorf("%s, %+v", l.State, l.Build)
	}
	redone(t, s, book.Sale, "won")
	edit(t, s, book.Build(id), "invoice by hand", id, func(l *book.Lot) { l.Build.Charges[0].Amount = 8000 })
	done := undone(t, s, book.Sale, "won")
	if !slices.Equal(done.Left, []string{"lot 14: charges"}) {
		t.Errorf("left %q", done.Left)
	}
	if l := read(t, s, id); l.Build.Hammer != nil || l.Build.Charges[0].Amount != 8000 || l.State != lot.ToLookAt {
		t.Errorf("%s, %+v", l.State, l.Build)
	}
	redone(t, s, book.Sale, "won")
	if l := read(t, s, id); len(l.Build.Charges) != 1 || *l.Build.Hammer != price {
		t.Errorf("done again, %+v", l.Build)
	}
}

func TestAnUndoOfWhatWasAllChangedSinceIsRefused(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	edit(t, s, book.Board, "bid", id, func(l *book.Lot) { l.State = lot.Bid })
	edit(t, s, book.Sale, "lost", id, func(l *book.Lot) { l.State = lot.Lost })
	var clash *book.Clash
	_, err := s.Undo(t.Context(), book.Board)
	if !errors.As(err, &clash) || clash.Lot != "14" || !slices.Equal(clash.Fields, []string{"status.state"}) {
		t.Fatalf("%v", err)
	}
	if r, err := s.Reach(t.Context(), book.Board); err != nil || r.Undo != "bid" {
		t.Errorf("the step is gone: %+v, %v", r, err)
	}
	undone(t, s, book.Sale, "lost")
	undone(t, s, book.Board, "bid")
	if l := read(t, s, id); l.State != lot.ToLookAt {
		t.Error(l.State)
	}
}

// TestTypingIsOneStep: a note of forty letters is one step; a pause, another field and another page end it.
func TestTypingIsOneStep(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	was := read(t, s, id).Case.Damage[0].Note
	now := time.Date(2026, 11, 20, 9, 0, 0, 0, time.UTC)
	s.now = func() time.Time { return now }
	typed := func(label, typing string, change func(l *book.Lot)) {
		t.Helper()
		step := edited(t, s, book.Worksheet(id), label, id, change)
		step.Typing = typing
		do(t, s, step)
		now = now.Add(time.Second)
	}
	letter := func(l *book.Lot) { l.Case.Damage[0].Note += "x" }
	for range 40 {
		typed("note", "damage 0 note", letter)
		edit(t, s, book.Board, "archive", id, func(l *book.Lot) { l.Archived = !l.Archived }) // elsewhere
	}
	typed("trim", "trim", func(l *book.Lot) { l.Case.Lot.Trim = "G" })
	typed("trim", "trim", func(l *book.Lot) { l.Case.Lot.Trim = "GT" })
	now = now.Add(typingPause)
	typed("trim", "trim", func(l *book.Lot) { l.Case.Lot.Trim = "GTX" })
	typed("make", "make", func(l *book.Lot) { l.Case.Lot.Make += "x" })
	typed("make", "make", func(l *book.Lot) { l.Case.Lot.Make = "Orlan" }) // as it was: no step is left
	for _, want := range []struct{ label, trim string }{{"trim", "GT"}, {"trim", "LX"}} {
		if undone(t, s, book.Worksheet(id), want.label); read(t, s, id).Case.Lot.Trim != want.trim {
			t.Errorf("trim %q, want %q", read(t, s, id).Case.Lot.Trim, want.trim)
		}
	}
	if undone(t, s, book.Worksheet(id), "note"); read(t, s, id).Case.Damage[0].Note != was {
		t.Errorf("undone, the note is %q", read(t, s, id).Case.Damage[0].Note)
	}
	if r, err := s.Reach(t.Context(), book.Worksheet(id)); err != nil || r != (book.Reach{Redo: "note"}) {
		t.Errorf("%+v, %v", r, err)
	}
	typed("note", "damage 0 note", letter)
	if r, err := s.Reach(t.Context(), book.Worksheet(id)); err != nil || r != (book.Reach{Undo: "note"}) {
		t.Errorf("a step after an undo: %+v, %v", r, err)
	}
}

func TestHistoryIsBoundedAndAStepForgetsWhatWasUndoneOfItsSubject(t *testing.T) {
	s := opened(t)
	id := added(t, s, valuation.Defaults())
	of := book.Worksheet(id)
	for i := range Steps + 30 {
		edit(t, s, of, fmt.Sprint(i), id, func(l *book.Lot) { l.Case.Run.Scenarios = i })
	}
	for i := range Steps {
		undone(t, s, of, fmt.Sprint(Steps+29-i))
	}
	if r, _ := s.Reach(t.Context(), of); r != (book.Reach{Redo: "30"}) {
		t.Fatalf("at the start of history: %+v", r)
	}
	redone(t, s, of, "30")
	edit(t, s, book.Build(id), "note", id, func(l *book.Lot) { l.Build.Note = "n" })
	if r, _ := s.Reach(t.Context(), of); r != (book.Reach{Undo: "30", Redo: "31"}) {
		t.Fatalf("a step elsewhere: %+v", r)
	}
	edit(t, s, of, "branch", id, func(l *book.Lot) { l.Case.Lot.VIN = "another way" })
	if r, _ := s.Reach(t.Context(), of); r != (book.Reach{Undo: "branch"}) {
		t.Fatalf("after a step in the middle: %+v", r)
	}
}

// TestASectionOfTheBenchIsUndoneAlone: two sections write the same document; each has its own history.
func TestASectionOfTheBenchIsUndoneAlone(t *testing.T) {
	s := opened(t)
	type shop map[string]float64
	keep := func(section string, before, after any) {
		t.Helper()
		do(t, s, book.Step{Subject: book.Bench(section), Label: section, Settings: []book.Setting{{Name: "shop", Before: before, After: after}}})
	}
	is := func(want shop) {
		t.Helper()
		got := shop{}
		if _, err := s.Setting(t.Context(), "shop", &got); err != nil {
			t.Fatal(err)
		}
		equal(t, got, want)
	}
	keep("labour", nil, shop{"rate": 35})
	undone(t, s, book.Bench("labour"), "labour")
	if found, err := s.Setting(t.Context(), "shop", new(any)); found || err != nil {
		t.Errorf("before the first step there is a setting: %v, %v", found, err)
	}
	keep("labour", shop{"rate": 30}, shop{"rate": 35}) // made from the starter values: nothing is kept yet
	keep("fees", shop{"rate": 35}, shop{"rate": 35, "gate": 75})
	keep("labour", shop{"rate": 35}, shop{"rate": 40}) // made before the fees
	is(shop{"rate": 40, "gate": 75})
	undone(t, s, book.Bench("labour"), "labour")
	is(shop{"rate": 35, "gate": 75})
	undone(t, s, book.Bench("fees"), "fees")
	is(shop{"rate": 35})
	if r, err := s.Reach(t.Context(), book.Bench("storage")); err != nil || r != (book.Reach{}) {
		t.Errorf("another section: %+v, %v", r, err)
	}
	undone(t, s, book.Bench("labour"), "labour")
	is(shop{"rate": 30})
}

func TestADecisionIsTakenBackByOneMore(t *testing.T) {
	s := opened(t)
	first := learn.Factors{Outside: &learn.Ratio{Factor: 1.2, From: 9}}
	second := first
	second.Materials = &learn.Ratio{Factor: 1.1, From: 4}
	for _, d := range []book.Decision{{What: book.Accepted, Factor: "outside", Words: "1 to 1.2", After: first},
		{What: book.Refused, Factor: "hidden", Words: "1 to 9", Before: first, After: first},
		{What: book.Accepted, Factor: "materials", Words: "1 to 1.1", Before: first, After: second}} {
		do(t, s, book.Step{Subject: book.Record, Label: d.Factor, Decision: &d})
	}
	undone(t, s, book.Record, "materials")
	undone(t, s, book.Record, "hidden")
	undone(t, s, book.Record, "outside")
	redone(t, s, book.Record, "outside")
	list, err := s.Decisions(t.Context())
	if err != nil || len(list) != 7 {
		t.Fatalf("%+v, %v", list, err)
	}
	for i, want := range []struct {
		what, words   string
		before, after learn.Factors
	}{3: {book.Restored, "Taken back: 1 to 1.1", second, first}, 4: {book.Restored, "Taken back: 1 to 9", first, first},
		5: {book.Restored, "Taken back: 1 to 1.2", first, learn.Factors{}}, 6: {book.Accepted, "1 to 1.2", learn.Factors{}, first}} {
		if d := list[i]; i >= 3 {
			if d.What != want.what || d.Words != want.words || d.At.IsZero() {
				t.Errorf("%d: %+v", i, d)
			}
			equal(t, d.Before, want.before)
			equal(t, d.After, want.after)
		}
	}
	stale := book.Decision{What: book.Accepted, Factor: "outside", After: learn.Factors{Outside: &learn.Ratio{Factor: 2}}}
	var clash *book.Clash
	if _, err := s.Do(t.Context(), book.Step{Subject: book.Record, Decision: &stale}); !errors.As(err, &clash) {
		t.Errorf("a decision on factors that are no longer in force: %v", err)
	}
	stale.What = "perhaps"
	if _, err := s.Do(t.Context(), book.Step{Subject: book.Record, Forced: true, Decision: &stale}); !errors.Is(err, ErrRefused) {
		t.Errorf("%v", err)
	}
	for _, change := range []string{`UPDATE factors SET words = ''`, `DELETE FROM factors`} {
		if _, err := s.writer.Exec(change); !errors.Is(wrapped("", err), ErrRefused) {
			t.Errorf("%s: %v", change, err)
		}
	}
}

// TestAJudgementIsOneValue: half of a three-point judgement says nothing.
func TestAJudgementIsOneValue(t *testing.T) {
	s := opened(t)
	id := added(t, s, sample(t))
	set := func(low, high float64) func(l *book.Lot) {
		return func(l *book.Lot) { l.Case.Resale.Guess = &prob.Three{Low: low, Likely: 15000, High: high} }
	}
	stale := edited(t, s, book.Worksheet(id), "low", id, set(14900, 18500))
	edit(t, s, book.Worksheet(id), "high", id, set(14000, 15100))
	clashes(t, s, stale, "resale.guess")
}

// TestAStepSeesWhatAnotherStoreWrote lets two stores write the same lot in turn: what one remembers must not hide what
// the other wrote, and is no part of what a caller holds.
func TestAStepSeesWhatAnotherStoreWrote(t *testing.T) {
	first := opened(t)
	stores := []*Store{first, reopened(t, first.path)}
	id := added(t, first, sample(t))
	for round, name := range []string{"Kettrick", "Ostrane", "Kettrick", "Ostrane"} {
		edit(t, stores[round%2], book.Worksheet(id), name, id, func(l *book.Lot) { l.Case.Lot.Make = name })
		l := read(t, stores[1-round%2], id)
		if l.Case.Lot.Make != name {
			t.Fatalf("round %d: the file has %q, want %q", round, l.Case.Lot.Make, name)
		}
		l.Case.Findings["rust_below"] = "changed by its reader"
	}
	undone(t, stores[1], book.Worksheet(id), "Ostrane")
	for _, s := range stores {
		if l := read(t, s, id); l.Case.Lot.Make != "Kettrick" || l.Case.Findings["rust_below"] != "no" {
			t.Errorf("%+v", l.Case)
		}
	}
}
