package store

import (
	"errors"
	"testing"

	"walkline/valuation"
	"walkline/valuation/lot"
)

// stepped makes one step of a place and returns its label.
func stepped(t *testing.T, step func() (string, bool, error)) string {
	t.Helper()
	label, done, err := step()
	if err != nil || !done {
		t.Fatalf("%q, %v, %v", label, done, err)
	}
	return label
}

// looks returns how every lot on the list stands.
func looks(t *testing.T, s *Store) map[int64]Entry {
	t.Helper()
	at := map[int64]Entry{}
	for _, e := range entries(t, s) {
		at[e.ID] = e
	}
	return at
}

func TestTheBoardStepsBackAndForthAfterAReopening(t *testing.T) {
	s := opened(t)
	ctx := t.Context()
	id := added(t, s, sample(t))
	copied, err := s.Duplicate(ctx, id)
	if err := errors.Join(err, s.SetState(ctx, id, lot.Bid), s.SetState(ctx, id, lot.Won), s.Archive(ctx, id, true), s.Remove(ctx, id)); err != nil {
		t.Fatal(err)
	}
	s = reopened(t, s.path)
	undo := func() (string, bool, error) { return s.UndoAt(ctx, Board) }
	redo := func() (string, bool, error) { return s.RedoAt(ctx, Board) }
	for _, want := range []struct {
		label string
		state lot.State
		arch  bool
		lots  int
	}{
		{"remove lot 14", lot.Won, true, 2}, {"archive lot 14", lot.Won, false, 2}, {"mark lot 14 as won", lot.Bid, false, 2},
		{"mark lot 14 as bid", lot.ToLookAt, false, 2}, {"duplicate lot 14", lot.ToLookAt, false, 1},
	} {
		label := stepped(t, undo)
		at := looks(t, s)
		if e := at[id]; label != want.label || e.State != want.state || e.Archived != want.arch || len(at) != want.lots {
			t.Errorf("undo %q gives %+v of %d, want %+v", label, e, len(at), want)
		}
	}
	if label := stepped(t, undo); label != "new lot" || len(looks(t, s)) != 0 {
		t.Errorf("undoing the first step, %q, leaves %d lots", label, len(looks(t, s)))
	}
	if _, done, err := undo(); done || err != nil {
		t.Errorf("a step before the first: %v, %v", done, err)
	}
	for range 6 {
		stepped(t, redo)
	}
	at := looks(t, s)
	if _, there := at[copied]; len(at) != 1 || !there {
		t.Errorf("all done again leaves %+v", at)
	}
}

func TestANewStepForgetsWhatWasUndone(t *testing.T) {
	s := opened(t)
	ctx := t.Context()
	id := added(t, s, valuation.Defaults())
	if err := s.SetState(ctx, id, lot.Passed); err != nil {
		t.Fatal(err)
	}
	stepped(t, func() (string, bool, error) { return s.UndoAt(ctx, Board) })
	if err := errors.Join(s.SetState(ctx, id, lot.ToLookAt), s.Keep(ctx, "rate", "shop", 1)); err != nil {
		t.Fatal(err)
	}
	if r, err := s.ReachAt(ctx, Board); err != nil || !r.CanRedo {
		t.Errorf("a mark that changes nothing, or a step elsewhere, forgot what was undone: %+v, %v", r, err)
	}
	if err := s.SetState(ctx, id, lot.Lost); err != nil {
		t.Fatal(err)
	}
	want := Reach{CanUndo: true, Undo: "mark a lot as lost"}
	if r, err := s.ReachAt(ctx, Board); err != nil || r != want {
		t.Errorf("reach %+v, %v", r, err)
	}
}

func TestTheBenchStepsThroughItsSettings(t *testing.T) {
	s := opened(t)
	ctx := t.Context()
	for _, rate := range []int{35, 40, 40, 45} {
		if err := s.Keep(ctx, "labour", "shop", map[string]int{"rate": rate}); err != nil {
			t.Fatal(err)
		}
	}
	rate := func() int {
		kept := map[string]int{}
		if _, err := s.Setting(ctx, "shop", &kept); err != nil {
			t.Fatal(err)
		}
		return kept["rate"]
	}
	for _, want := range []int{40, 35, 0} { // the 40 that was kept twice is one step
		stepped(t, func() (string, bool, error) { return s.UndoAt(ctx, Bench) })
		if got := rate(); got != want {
			t.Errorf("undo leaves %d, want %d", got, want)
		}
	}
	if found, err := s.Setting(ctx, "shop", new(any)); found || err != nil {
		t.Errorf("before the first step there is a setting: %v, %v", found, err)
	}
	stepped(t, func() (string, bool, error) { return s.RedoAt(ctx, Bench) })
	if got := rate(); got != 35 {
		t.Errorf("redo leaves %d", got)
	}
}

func TestAddAllKeepsAllOrNone(t *testing.T) {
	s := opened(t)
	good, bad := valuation.Defaults(), valuation.Defaults()
	bad.Lot.OdometerUnit = "furlongs"
	if _, err := s.AddAll(t.Context(), "run list", []valuation.Case{good, bad}); !errors.Is(err, ErrRefused) {
		t.Errorf("an odometer in furlongs: %v", err)
	}
	if n := len(entries(t, s)); n != 0 {
		t.Errorf("%d lots were kept", n)
	}
	ids, err := s.AddAll(t.Context(), "run list", []valuation.Case{good, good, good})
	if err != nil || len(ids) != 3 || len(entries(t, s)) != 3 {
		t.Fatalf("%v, %v", ids, err)
	}
	if label := stepped(t, func() (string, bool, error) { return s.UndoAt(t.Context(), Board) }); label != "run list" || len(entries(t, s)) != 0 {
		t.Errorf("undoing %q leaves %d lots", label, len(entries(t, s)))
	}
}

func TestAListIsOneStepAndLeavesLaterEditsAlone(t *testing.T) {
	s := opened(t)
	ctx := t.Context()
	moved, edited := added(t, s, sample(t)), added(t, s, sample(t))
	list, err := s.Lots(ctx)
	if err != nil || len(list) != 2 || list[0].Lot.Make != "Orlan" || list[1].State != lot.ToLookAt {
		t.Fatalf("%+v, %v", list, err)
	}
	list[0].Lot.Number, list[1].Lot.Number = "90", "91"
	if err := s.Enlist(ctx, "run list", []valuation.Case{valuation.Defaults()}, list); err != nil {
		t.Fatal(err)
	}
	numbers := func() [3]string {
		at := looks(t, s)
		return [3]string{at[moved].Number, at[edited].Number, map[bool]string{true: "three", false: "two"}[len(at) == 3]}
	}
	if got := numbers(); got != [3]string{"90", "91", "three"} {
		t.Fatalf("after the list %v", got)
	}
	c, err := s.Case(ctx, edited)
	if err != nil {
		t.Fatal(err)
	}
	c.Lot.Trim = "later"
	if err := s.Save(ctx, edited, "trim", c); err != nil {
		t.Fatal(err)
	}
	if label := stepped(t, func() (string, bool, error) { return s.UndoAt(ctx, Board) }); label != "run list" || numbers() != [3]string{"14", "91", "two"} {
		t.Errorf("undoing %q leaves %v: the lot that was edited since keeps what it has", label, numbers())
	}
	if stepped(t, func() (string, bool, error) { return s.RedoAt(ctx, Board) }); numbers() != [3]string{"90", "91", "three"} {
		t.Errorf("done again, %v", numbers())
	}
	bad := valuation.Defaults()
	bad.Lot.Condition = "asleep"
	if err := s.Enlist(ctx, "run list", []valuation.Case{valuation.Defaults(), bad}, nil); !errors.Is(err, ErrRefused) || len(looks(t, s)) != 3 {
		t.Errorf("a list with a bad lot: %v, %d lots", err, len(looks(t, s)))
	}
}
