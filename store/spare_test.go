package store

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"walkline/store/book"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// threeListed takes three lots in with one step of the Board, numbered from 101 on.
func threeListed(t *testing.T, s *Store) []int64 {
	t.Helper()
	step := book.Step{Subject: book.Board, Label: "run list"}
	for n := range 3 {
		c := sample(t)
		c.Lot.Number = fmt.Sprint(101 + n)
		step.New = append(step.New, book.New{Case: c})
	}
	return do(t, s, step).Lots
}

func lotNumbers(t *testing.T, s *Store) (list []string) {
	t.Helper()
	for _, e := range entries(t, s) {
		list = append(list, e.Number)
	}
	slices.Sort(list)
	return list
}

// TestAnUndoneListKeepsTheLotsThatWereChangedSince: a lot of a run list is won and billed, another edited, a third edited and that
// taken back. Undo takes the third off alone, redo brings it back alone, and what was won stands throughout.
func TestAnUndoneListKeepsTheLotsThatWereChangedSince(t *testing.T) {
	s := opened(t)
	ids := threeListed(t, s)
	edit(t, s, book.Sale, "won", ids[0], func(l *book.Lot) { l.State, l.Build.Outcome = lot.Won, build.Open })
	edit(t, s, book.Build(ids[0]), "bill", ids[0], func(l *book.Lot) { l.Build.Receipts = landedBuild().Receipts })
	edit(t, s, book.Worksheet(ids[1]), "trim", ids[1], func(l *book.Lot) { l.Case.Lot.Trim = "GT" })
	edit(t, s, book.Worksheet(ids[2]), "trim", ids[2], func(l *book.Lot) { l.Case.Lot.Trim = "GT" })
	undone(t, s, book.Worksheet(ids[2]), "trim")
	won := read(t, s, ids[0])
	for time := range 2 {
		done := undone(t, s, book.Board, "run list")
		want := []string{"lot 101 (won)", "lot 102"}
		if time > 0 { // they are no longer of this step
			want = nil
		}
		if !slices.Equal(done.Stayed, want) {
			t.Errorf("stayed %q, want %q", done.Stayed, want)
		}
		if got := lotNumbers(t, s); !slices.Equal(got, []string{"101", "102"}) || !slices.Equal(done.Lots, ids[2:]) {
			t.Errorf("after undo %q, changed %v", got, done.Lots)
		}
		if done := redone(t, s, book.Board, "run list"); !slices.Equal(done.Lots, ids[2:]) || len(done.Stayed) > 0 {
			t.Errorf("done again: %+v", done)
		}
		equal(t, read(t, s, ids[0]), won)
	}
	edit(t, s, book.Worksheet(ids[2]), "bid", ids[2], func(l *book.Lot) { l.State = lot.Bid })
	var clash *book.Clash
	if _, err := s.Undo(t.Context(), book.Board); !errors.As(err, &clash) || !slices.Equal(clash.Stayed, []string{"lot 103 (bid)"}) {
		t.Errorf("all that is left was changed: %v", err)
	}
	if r, err := s.Reach(t.Context(), book.Board); err != nil || r.Undo != "run list" {
		t.Errorf("the refused step is gone: %+v, %v", r, err)
	}
}

// TestARedoneRemovalKeepsALotThatWasChangedSince: it was taken back, and the lot was won.
func TestARedoneRemovalKeepsALotThatWasChangedSince(t *testing.T) {
	s := opened(t)
	ids := threeListed(t, s)
	step := edited(t, s, book.Board, "remove", ids[0], func(l *book.Lot) { l.Removed = true })
	second := edited(t, s, book.Board, "remove", ids[1], func(l *book.Lot) { l.Removed = true })
	step.Lots = append(step.Lots, second.Lots...)
	do(t, s, step)
	undone(t, s, book.Board, "remove")
	edit(t, s, book.Sale, "won", ids[0], func(l *book.Lot) { l.State = lot.Won })
	if done := redone(t, s, book.Board, "remove"); !slices.Equal(done.Stayed, []string{"lot 101 (won)"}) {
		t.Errorf("stayed %q", done.Stayed)
	}
	undone(t, s, book.Board, "remove")
	if got := lotNumbers(t, s); !slices.Equal(got, []string{"101", "102", "103"}) {
		t.Errorf("lots %q", got)
	}
}

// TestAWonLotStaysThoughItsStepIsForgotten: the history of the sale is bounded, and the list is older than all of it.
func TestAWonLotStaysThoughItsStepIsForgotten(t *testing.T) {
	s := opened(t)
	other := added(t, s, sample(t))
	ids := threeListed(t, s)
	edit(t, s, book.Sale, "won", ids[0], func(l *book.Lot) { l.State = lot.Won })
	for n := range Steps + 1 {
		state := []lot.State{lot.Bid, lot.Lost}[n%2]
		edit(t, s, book.Sale, "other", other, func(l *book.Lot) { l.State = state })
	}
	if done := undone(t, s, book.Board, "run list"); !slices.Equal(done.Stayed, []string{"lot 101 (won)"}) || len(done.Lots) != 2 {
		t.Errorf("stayed %q, changed %v", done.Stayed, done.Lots)
	}
}

// Comparables that were typed or taken in for a lot are a step of its worksheet that changes the shelf alone: the lot stays for them, until
// they are taken back.
func TestAnUndoneListKeepsTheLotsThatComparablesWereTakenInFor(t *testing.T) {
	s := opened(t)
	ids := threeListed(t, s)
	row := book.Comparable{Row: sample(t).Resale.Rows[0], Currency: "USD", On: "2026-11-20", Lot: ids[0]}
	do(t, s, book.Step{Subject: book.Worksheet(ids[0]), Label: "comparable", Shelf: []book.Shelved{{After: &row}}})
	if done := undone(t, s, book.Board, "run list"); !slices.Equal(done.Stayed, []string{"lot 101"}) || len(done.Lots) != 2 ||
		slices.Contains(done.Lots, ids[0]) {
		t.Errorf("stayed %q, changed %v of %v", done.Stayed, done.Lots, ids)
	}
	if got := lotNumbers(t, s); !slices.Equal(got, []string{"101"}) {
		t.Errorf("after undo there are %q", got)
	}
	redone(t, s, book.Board, "run list")
	if got := lotNumbers(t, s); len(got) != 3 {
		t.Errorf("done again there are %q", got)
	}
}

func TestANewLotGoesOnceItsComparablesAreTakenBack(t *testing.T) {
	s := opened(t)
	ids := threeListed(t, s)
	row := book.Comparable{Row: sample(t).Resale.Rows[0], Currency: "USD", On: "2026-11-20", Lot: ids[0]}
	do(t, s, book.Step{Subject: book.Worksheet(ids[0]), Label: "comparable", Shelf: []book.Shelved{{After: &row}}})
	undone(t, s, book.Worksheet(ids[0]), "comparable")
	if done := undone(t, s, book.Board, "run list"); len(done.Stayed) > 0 || len(lotNumbers(t, s)) != 0 {
		t.Errorf("stayed %q", done.Stayed)
	}
}
