package store

import (
	"cmp"
	"context"
	"database/sql"
	"encoding/json"
	"slices"
	"strings"

	"walkline/store/book"
	"walkline/valuation/lot"
)

// Undo takes the last step of a subject back, field by field: what was changed since is left alone and named in what is
// returned. A lot that the step made stays where anything else was done to it since that stands. Errors: [*book.Clash] when all of it was
// changed since, and the step stays; [ErrDamaged].
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
	stayed, err := w.spare(&c, k.number)
	if err != nil {
		return err
	}
	if back { // in the order in which they came
		slices.Reverse(stayed)
	}
	left, err := w.applyAll(c, back)
	if err != nil {
		return err
	}
	if w.done.Stayed = stayed; w.made.empty() && len(stayed) > 0 {
		left = cmp.Or(left, &book.Clash{})
		left.Stayed = stayed
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
	if err := w.exec(`UPDATE steps SET undone = 1 - undone WHERE number = ?`, k.number); err != nil {
		return err
	}
	return w.putChange(k.number, string(text))
}

// since returns the lots that steps after one changed, of whatever subject, as far as those steps are not taken back, and the subjects of
// such steps: what was put on the shelf before a lot is a step of its worksheet that changes no lot.
func (w *work) since(number int64) (lots map[int64]bool, of map[book.Subject]bool, err error) {
	lots, of = map[int64]bool{}, map[book.Subject]bool{}
	var id int64
	var subject book.Subject
	err = w.each(`SELECT DISTINCT subject FROM steps s WHERE number > ? AND undone = 0 AND `+intact("steps", "s"), func(rows *sql.Rows) error {
		err := rows.Scan(&subject)
		of[subject] = true
		return err
	}, number)
	if err != nil {
		return nil, nil, err
	}
	err = w.each(`SELECT DISTINCT c.value ->> '$.lot' FROM steps s, json_each(s.change, '$.lots') c
		WHERE s.number > ? AND s.undone = 0 AND `+intact("steps", "s"), func(rows *sql.Rows) error {
		err := rows.Scan(&id)
		lots[id] = true
		return err
	}, number)
	return lots, of, err
}

// spare takes out of the change of a step the lots that it would take off although something was done to them after it: to mark one
// as won is such a thing though its step is long forgotten. It returns what they are called.
func (w *work) spare(c *change, number int64) (stayed []string, err error) {
	if !slices.ContainsFunc(c.Lots, takesOff) {
		return nil, nil
	}
	since, of, err := w.since(number)
	if err != nil {
		return nil, err
	}
	var rest []lotChange
	for _, lc := range c.Lots {
		l, err := w.lot(lc.Lot)
		if err != nil {
			return nil, err
		}
		changed := since[lc.Lot] || of[book.Worksheet(lc.Lot)]
		if l.Removed || !takesOff(lc) || !changed && (lc.New == "" || lc.New == string(l.State)) {
			rest = append(rest, lc)
			continue
		}
		name := called(l)
		if l.State != lot.ToLookAt {
			name += " (" + string(l.State) + ")"
		}
		stayed = append(stayed, name)
	}
	c.Lots = rest
	return stayed, nil
}

// takesOff reports whether a change takes a lot off the list.
func takesOff(c lotChange) bool {
	return slices.ContainsFunc(c.Fields, func(f field) bool { return f.Path[0] == "status.removed" && string(f.After) == "true" })
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
	if left, err = w.setShelf(c.Shelf, false); err != nil {
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

// called names a lot by its number on the list, or by its make and model, where it has one.
func called(l book.Lot) string {
	x := l.Case.Lot
	if x.Number != "" {
		return "lot " + x.Number
	}
	if name := strings.TrimSpace(x.Make + " " + x.Model); name != "" {
		return "the " + name
	}
	return "a lot"
}
