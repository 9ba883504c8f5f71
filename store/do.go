package store

import (
	"cmp"
	"context"
	"database/sql"
	"fmt"
	"maps"
	"slices"

	"walkline/store/book"
	"walkline/valuation/lot"
)

// work is one transaction on its way to one step: the lots as they stood and stand in it, and what it did.
type work struct {
	place
	s        *Store
	was, now map[int64]book.Lot
	made     change
	done     book.Done
}

func (s *Store) working(ctx context.Context, tx *sql.Tx) *work {
	return &work{place: place{ctx, tx}, s: s, was: map[int64]book.Lot{}, now: map[int64]book.Lot{}}
}

// Do keeps a step, all of it or nothing, and returns what came of it. What differs between before and after is written field by
// field: where what is stored is as before it is written, where it is as after already it is left. A step without a difference
// makes no history; what it freezes is frozen all the same.
// Errors: [*book.Clash] when a field is stored with another value than before and after, and the step is not forced;
// [ErrNotFound]; [ErrRefused] when something can't be kept.
func (s *Store) Do(ctx context.Context, step book.Step) (book.Done, error) {
	return s.transact(ctx, "keeping: "+step.Label, func(w *work) error { return w.do(step) })
}

// transact runs f as the work of one transaction and returns what it did.
func (s *Store) transact(ctx context.Context, doing string, f func(w *work) error) (book.Done, error) {
	var w *work
	err := s.write(ctx, doing, func(tx *sql.Tx) error {
		w = s.working(ctx, tx)
		return f(w)
	})
	if err != nil {
		return book.Done{}, err
	}
	done := w.summary()
	if len(done.Shelf) > 0 {
		s.shelves.forget()
	}
	if n := len(done.Lots); n > 0 {
		s.recent.keep(w.now[done.Lots[n-1]].Clone())
	}
	return done, nil
}

func (w *work) do(step book.Step) error {
	w.done.Label = step.Label
	for _, c := range step.Lots {
		if err := w.alter(c, step.Forced); err != nil {
			return err
		}
	}
	for i, n := range step.New {
		book.Tell(w.ctx, float64(i)/float64(len(step.New)))
		if err := w.add(n); err != nil {
			return err
		}
	}
	for _, x := range step.Settings {
		if err := w.set(x, step.Forced); err != nil {
			return err
		}
	}
	if err := w.shelve(step.Shelf, step.Forced); err != nil {
		return err
	}
	if step.Decision != nil {
		if err := w.resolve(*step.Decision, step.Forced); err != nil {
			return err
		}
	}
	for _, c := range step.Lots {
		if c.Freeze != nil {
			if err := w.s.freeze(w.place, c.After.ID, *c.Freeze); err != nil {
				return fmt.Errorf("lot %s: %w", c.After.Case.Lot.Number, err)
			}
			w.done.Did = true
		}
	}
	return w.record(step)
}

// alter does a change to a lot that is there.
func (w *work) alter(c book.Change, forced bool) error {
	stored, err := w.lot(c.After.ID)
	if err != nil {
		return err
	}
	if stored.Removed && !c.Before.Removed {
		return ErrNotFound
	}
	wanted, err := difference(c.Before, c.After)
	if err != nil {
		return fmt.Errorf("lot %s: %w", c.After.Case.Lot.Number, err)
	}
	if wanted.hollow() {
		return nil
	}
	var anyway *book.Lot
	if forced {
		anyway = &c.After
	}
	left, err := w.apply(wanted, anyway)
	if err != nil || len(left) > 0 {
		return clashOr(err, stored.Case.Lot.Number, left)
	}
	now := w.now[c.After.ID]
	if c.Before.Revision == stored.Revision {
		now.Case = c.After.Case // the case was made from what is stored: it is the same
	}
	rest, err := difference(c.After, now)
	w.done.Merged = w.done.Merged || !rest.empty()
	return err
}

// clashOr returns err, and else the clash of paths.
func clashOr(err error, number string, left [][]string) error {
	if err != nil {
		return err
	}
	c := &book.Clash{Lot: number}
	for _, path := range left {
		c.Fields = append(c.Fields, dotted(path))
	}
	return c
}

// lot returns a lot as it stands in this transaction.
func (w *work) lot(id int64) (book.Lot, error) {
	if l, ok := w.now[id]; ok {
		return l, nil
	}
	l, err := w.s.load(w.place, id)
	if err == nil {
		w.was[id], w.now[id] = l, l
	}
	return l, err
}

// apply does a change to a lot as far as it fits, and returns the paths of what does not.
func (w *work) apply(c lotChange, anyway *book.Lot) (left [][]string, err error) {
	before, err := w.lot(c.Lot)
	if err != nil {
		return nil, err
	}
	after, made, left, err := c.apply(before, anyway)
	if err != nil || made.empty() {
		return left, err
	}
	if after, err = w.s.update(w.place, after, made); err != nil {
		return nil, err
	}
	w.now[c.Lot] = after
	w.made.Lots = append(w.made.Lots, made)
	return left, nil
}

// add keeps a new lot. That it was not there before is, to the history, that it was removed.
func (w *work) add(n book.New) error {
	if n.State == "" {
		n.State = lot.ToLookAt
	}
	l, err := w.s.insert(w.place, book.Lot{State: n.State, Archived: n.Archived, Case: n.Case, Build: n.Build})
	if err != nil {
		return fmt.Errorf("lot %s: %w", n.Case.Lot.Number, err)
	}
	if n.Freeze != nil {
		if err := w.s.freeze(w.place, l.ID, *n.Freeze); err != nil {
			return fmt.Errorf("lot %s: %w", n.Case.Lot.Number, err)
		}
	}
	w.was[l.ID], w.now[l.ID] = l, l
	w.made.Lots = append(w.made.Lots, lotChange{Lot: l.ID, New: string(n.State),
		Fields: []field{{[]string{"status.removed"}, raw(true), raw(false)}}})
	return nil
}

// resolve keeps a decision on a learned factor.
func (w *work) resolve(d book.Decision, forced bool) error {
	before, err1 := treeOf(d.Before)
	after, err2 := treeOf(d.After)
	if err := cmp.Or(err1, err2); err != nil {
		return err
	}
	made, left, err := w.decide(decisionChange{d.What, d.Factor, d.Words, compare([]string{"factors"}, before, after)}, raw(before), forced)
	if err != nil || len(left) > 0 {
		return clashOr(err, "", left)
	}
	w.made.Decision = made
	return nil
}

// summary returns what was done, for those who show it.
func (w *work) summary() book.Done {
	parts, settings := map[string]bool{}, map[string]bool{}
	for _, c := range w.made.Lots {
		if !slices.Contains(w.done.Lots, c.Lot) {
			w.done.Lots = append(w.done.Lots, c.Lot)
			w.done.Revisions = append(w.done.Revisions, w.now[c.Lot].Revision)
		}
		maps.Copy(parts, c.parts())
	}
	for _, f := range w.made.Settings {
		settings[f.Path[0]] = true
	}
	for _, f := range w.made.Shelf {
		if id := placeOf(f.Path[0]); len(w.done.Shelf) == 0 || w.done.Shelf[len(w.done.Shelf)-1] != id {
			w.done.Shelf = append(w.done.Shelf, id)
		}
	}
	w.done.Parts, w.done.Settings = slices.Sorted(maps.Keys(parts)), slices.Sorted(maps.Keys(settings))
	if w.done.Did = w.done.Did || !w.made.empty(); !w.done.Did {
		return book.Done{}
	}
	return w.done
}
