package store

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// action is one kind of step; no two kinds write the same field, so that each can be taken back beside every other.
type action struct {
	name string
	of   book.Subject
	step func(t *testing.T, s *Store, name string, of book.Subject) book.Step
}

// onLot is an action on the first lot.
func onLot(name string, of book.Subject, change func(l *book.Lot)) action {
	return action{name, of, func(t *testing.T, s *Store, name string, of book.Subject) book.Step {
		return edited(t, s, of, name, 1, change)
	}}
}

// onShop is an action on one key of the shop's values.
func onShop(key string) action {
	return action{key, book.Bench(key), func(t *testing.T, s *Store, name string, of book.Subject) book.Step {
		before, after := map[string]int{}, map[string]int{}
		for _, at := range []map[string]int{before, after} {
			if _, err := s.Setting(t.Context(), "shop", &at); err != nil {
				t.Fatal(err)
			}
		}
		after[key]++
		return book.Step{Subject: of, Label: name, Settings: []book.Setting{{Name: "shop", Before: before, After: after}}}
	}}
}

// actions are every kind of step.
func actions() []action {
	return []action{
		onLot("facts", book.Worksheet(1), func(l *book.Lot) {
			l.Case.Findings, l.Case.Market.HammerGuess = map[string]string{l.Case.Lot.Trim: "yes"}, &prob.Three{High: 9}
			l.Case.Lot.Trim += "x"
			l.Case.Damage, l.Case.Repair.Lines = append(l.Case.Damage, lot.Damage{Area: "01"}), nil
		}),
		onLot("comparables", book.Worksheet(1), func(l *book.Lot) {
			l.Case.Resale.Rows[0].Excluded = !l.Case.Resale.Rows[0].Excluded
			l.Case.Resale.Rows = append(l.Case.Resale.Rows, resale.Row{ID: fmt.Sprint(len(l.Case.Resale.Rows))})
		}),
		onLot("photos", book.Worksheet(1), func(l *book.Lot) { l.Photos = append(l.Photos, landedPhotos()...) }),
		onLot("bill", book.Build(1), func(l *book.Lot) { l.Build.Receipts = append(l.Build.Receipts, build.Receipt{What: "Hood", Amount: 1}) }),
		{"typed", book.Build(1), func(t *testing.T, s *Store, name string, of book.Subject) book.Step {
			step := edited(t, s, of, name, 1, func(l *book.Lot) { l.Build.Note += "x" })
			step.Typing = t.Name() + fmt.Sprint(len(step.Lots[0].After.Build.Note)) // no two are the same field
			return step
		}},
		onLot("archive", book.Board, func(l *book.Lot) { l.Archived = !l.Archived }),
		{"run list", book.Board, func(t *testing.T, s *Store, name string, of book.Subject) book.Step {
			step := edited(t, s, of, name, 1, func(l *book.Lot) { l.Case.Lot.Number += "1" })
			step.New = []book.New{{Case: sample(t)}, {Case: valuation.Defaults()}}
			return step
		}},
		{"won", book.Sale, func(t *testing.T, s *Store, name string, of book.Subject) book.Step {
			step := edited(t, s, of, name, 1, func(l *book.Lot) {
				price := money.Amount(len(l.Build.Charges))
				l.State, l.Build.Hammer, l.Build.Charges = lot.Won, &price, append(l.Build.Charges, build.Charge{Name: "Gate", Amount: price})
			})
			step.Lots[0].Freeze = &book.Prediction{Case: sample(t), Answer: answer(nil)}
			return step
		}},
		{"factor", book.Record, func(t *testing.T, s *Store, name string, of book.Subject) book.Step {
			d := book.Decision{What: book.Accepted, Factor: name, Before: inForce(t, s)}
			d.After.HalfLife = d.Before.HalfLife + 1
			return book.Step{Subject: of, Label: name, Decision: &d}
		}},
		{"past buys", book.Record, func(t *testing.T, s *Store, name string, of book.Subject) book.Step {
			bought := book.New{State: lot.Won, Archived: true, Case: sample(t), Build: landedBuild()}
			list, err := s.Imports(t.Context())
			bought.Build.Imported.As = fmt.Sprint(len(list), err)
			return book.Step{Subject: of, Label: name, New: []book.New{bought}}
		}},
		onShop("labour"), onShop("fees"),
	}
}

func inForce(t *testing.T, s *Store) (f learn.Factors) {
	t.Helper()
	list, err := s.Decisions(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if len(list) > 0 {
		f = list[len(list)-1].After
	}
	return f
}

// whole returns all that is kept and can be taken back, as text: every lot on the list, the settings, the factors in force.
func whole(t *testing.T, s *Store) string {
	t.Helper()
	var all []any
	for id := int64(1); ; id++ {
		var last int64
		if err := s.reader.QueryRow(`SELECT max(id) FROM lots`).Scan(&last); err != nil {
			t.Fatal(err)
		}
		if id > last {
			break
		}
		l, err := s.Lot(t.Context(), id)
		if err != nil && !errors.Is(err, ErrNotFound) {
			t.Fatal(err)
		}
		l.Revision = 0
		if err == nil {
			all = append(all, l)
		}
	}
	shop := map[string]int(nil)
	if _, err := s.Setting(t.Context(), "shop", &shop); err != nil {
		t.Fatal(err)
	}
	text, err := json.MarshalIndent(append(all, shop, inForce(t, s), entries(t, s)), "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// walk is a store that is stepped through; is checks how it stands.
type walk struct {
	*testing.T            // of the pair of kinds
	whole      *testing.T // of all of them, whose store it is
	s          *Store
}

func (w *walk) is(where, want string) {
	w.Helper()
	if got := whole(w.T, w.s); got != want {
		w.Fatalf("%s it is not as it was\ngot  %s\nwant %s", where, got, want)
	}
}

// do does an action and returns how all stands then.
func (w *walk) do(a action) string {
	w.Helper()
	if done := do(w, w.s, a.step(w.T, w.s, a.name, a.of)); !done.Did || done.Merged || done.Label != a.name {
		w.Fatalf("%+v", done)
	}
	return whole(w.T, w.s)
}

func (w *walk) undo(a action) { w.Helper(); w.all(undone(w, w.s, a.of, a.name)) }
func (w *walk) redo(a action) { w.Helper(); w.all(redone(w, w.s, a.of, a.name)) }

func (w *walk) all(done book.Done) {
	w.Helper()
	if len(done.Left) > 0 {
		w.Fatalf("left alone: %q", done.Left)
	}
}

// reopen closes the store and opens it again; what is written is not waited for, as no power fails here.
func (w *walk) reopen() {
	w.Helper()
	path := w.s.path
	w.s.Close()
	w.s = reopened(w.whole, path)
	if _, err := w.s.writer.Exec("PRAGMA synchronous = OFF"); err != nil {
		w.Fatal(err)
	}
}

// TestEveryKindOfStepBesideEveryOther does each two kinds of step and takes them back, does them again, after a restart too, in
// the order in which they were made and in the other; all that is kept is compared each time.
func TestEveryKindOfStepBesideEveryOther(t *testing.T) {
	kinds := actions()
	for i, a := range kinds {
		w := &walk{t, t, opened(t)}
		w.reopen()
		added(t, w.s, sample(t))
		if err := w.s.PutSetting(t.Context(), "shop", map[string]int{"labour": 35}); err != nil {
			t.Fatal(err)
		}
		base := whole(t, w.s)
		for _, b := range kinds[i:] {
			t.Run(a.name+" and "+b.name, func(t *testing.T) {
				w.T = t
				first := w.do(a)
				both := w.do(b)
				w.undo(b)
				w.is("undone,", first)
				w.redo(b)
				w.is("redone,", both)
				w.reopen()
				w.undo(b)
				w.is("undone after a restart,", first)
				if a.of == b.of {
					w.undo(a)
					w.is("undone twice,", base)
					return
				}
				w.redo(b)
				w.undo(a)
				second := whole(t, w.s)
				w.redo(a)
				w.is("the first redone beside the second,", both)
				w.undo(a)
				w.undo(b)
				w.is("undone in the order of doing,", base)
				w.redo(b)
				w.is("the second redone alone,", second)
				w.undo(b)
			})
		}
	}
}
