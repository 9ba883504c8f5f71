package store

import (
	"context"
	"encoding/json"

	"walkline/store/book"
)

// Undo takes the last step of a subject back, field by field: what was changed since is left alone and named in what is
// returned. Errors: [*book.Clash] when all of it was changed since, and the step stays; [ErrDamaged].
func (s *Store) Undo(ctx context.Context, of book.Subject) (book.Done, error) {
	return s.transact(ctx, "undoing in "+string(of), func(w *work) error { return w.travel(of, true) })
}

// Redo does the step of a subject again that was undone last. Errors: as [Store.Undo].
func (s *Store) Redo(ctx context.Context, of book.Subject) (book.Done, error) {
	return s.transact(ctx, "redoing in "+string(of), func(w *work) error { return w.travel(of, false) })
}

// travel moves one step through the history of a subject. The step then holds what was really done, so that the way back is
// the same.
func (w *work) travel(of book.Subject, back bool) error {
	k, ok, err := w.next(of, back)
	if err != nil || !ok {
		return err
	}
	c := k.change
	if back {
		c = c.inverse()
	}
	left, err := w.applyAll(c, back)
	if err != nil {
		return err
	}
	if w.made.empty() && left != nil {
		return left
	}
	w.done.Did, w.done.Label = true, k.label
	done := w.made
	if back {
		done = done.inverse()
	}
	if k.change.Decision != nil && done.Decision != nil {
		done.Decision.What, done.Decision.Words = k.change.Decision.What, k.change.Decision.Words
	}
	text, err := json.Marshal(done)
	if err != nil {
		return err
	}
	if err := w.exec(`UPDATE steps SET undone = 1 - undone, change = ? WHERE number = ?`, string(text), k.number); err != nil {
		return err
	}
	return w.seal("steps", `number = ?`, k.number)
}

// applyAll does a change as far as it fits. It returns the clash of what does not, nil when all did.
func (w *work) applyAll(c change, back bool) (clash *book.Clash, err error) {
	leave := func(number, name string, paths [][]string) {
		for _, path := range paths {
			if clash == nil {
				clash = &book.Clash{Lot: number}
			}
			clash.Fields = append(clash.Fields, dotted(path))
			w.done.Left = append(w.done.Left, name+inWords(path))
		}
	}
	for _, lc := range c.Lots {
		l, err := w.lot(lc.Lot)
		if err != nil {
			return nil, err
		}
		left := [][]string{{"status.removed"}}
		if !l.Removed || restores(lc) {
			if left, err = w.apply(lc, nil); err != nil {
				return nil, err
			}
		}
		leave(l.Case.Lot.Number, called(l)+": ", left)
	}
	left, err := w.setFields(w.settings(), c.Settings, false)
	if err != nil {
		return nil, err
	}
	leave("", "", left)
	if left, err = w.setFields(w.shelf(), c.Shelf, false); err != nil {
		return nil, err
	}
	leave("", "the shelf: ", left)
	if c.Decision == nil {
		return clash, nil
	}
	d := *c.Decision
	if back {
		d = d.takenBack()
	}
	w.made.Decision, left, err = w.decide(d, nil, false)
	leave("", "", left)
	return clash, err
}

// restores reports whether a change says that the lot is on the list or off it.
func restores(c lotChange) bool {
	for _, f := range c.Fields {
		if f.Path[0] == "status.removed" {
			return true
		}
	}
	return false
}

// called names a lot by its number on the list, where it has one.
func called(l book.Lot) string {
	if l.Case.Lot.Number == "" {
		return "a lot"
	}
	return "lot " + l.Case.Lot.Number
}
