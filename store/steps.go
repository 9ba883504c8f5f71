package store

import (
	"cmp"
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"walkline/store/book"
)

// Steps is how many steps of one subject can be undone; older ones are forgotten. Starter value, ours.
const Steps = 200

// typingPause is how long a step of typing waits for more of it: what is typed in the same field within it is the same step.
// Starter value, ours.
const typingPause = 3 * time.Second

// kept is one step of the history as it is stored.
type kept struct {
	number int64
	label  string
	typing string
	made   time.Time
	change change
}

// subjects returns whose steps a history walks: a section of the Bench those of the whole Bench too, which files of older formats hold.
func subjects(of book.Subject) (book.Subject, book.Subject) {
	if _, ok := of.Section(); ok {
		return of, "bench"
	}
	return of, of
}

// next finds the step of a subject that an undo, or a redo, is about, and whether there is one.
func (p place) next(of book.Subject, back bool) (k kept, ok bool, err error) {
	var made string
	var text []byte
	ok, err = p.nextStep(of, back, `number, label, typing, made_at, change`, &k.number, &k.label, &k.typing, &made, &text)
	if !ok || err != nil {
		return k, false, err
	}
	k.made, _ = time.Parse(time.RFC3339Nano, made) // a time that can't be read was long ago
	if err := json.Unmarshal(text, &k.change); err != nil {
		return k, false, fmt.Errorf("%w: step %d can't be read (%w)", ErrDamaged, k.number, err)
	}
	return k, true, nil
}

// nextStep reads columns of that step.
func (p place) nextStep(of book.Subject, back bool, columns string, into ...any) (ok bool, err error) {
	undone, order := 1, ""
	if back {
		undone, order = 0, " DESC"
	}
	own, old := subjects(of)
	err = p.row(`SELECT `+columns+` FROM steps s WHERE number = (SELECT number FROM steps WHERE subject IN (?, ?) AND undone = ?
		ORDER BY number`+order+` LIMIT 1) AND `+intact("steps", "s"), own, old, undone).Scan(into...)
	if errors.Is(err, sql.ErrNoRows) {
		return false, nil
	}
	return err == nil, err
}

// labelAndLength is what [book.Reach] says of a step: a long one holds half a megabyte, about 1,500 comparables. Ours.
const labelAndLength = `label, octet_length(change) > 500000`

// Reach returns what undo and redo of a subject would do next.
func (s *Store) Reach(ctx context.Context, of book.Subject) (r book.Reach, err error) {
	err = s.read(ctx, "reading the history of "+string(of), func(tx *sql.Tx) error {
		_, err1 := place{ctx, tx}.nextStep(of, true, labelAndLength, &r.Undo, &r.LongUndo)
		_, err2 := place{ctx, tx}.nextStep(of, false, labelAndLength, &r.Redo, &r.LongRedo)
		return cmp.Or(err1, err2)
	})
	return r, err
}

// record makes a step of what the work did, or makes it part of the step before where both are typing in one field. The steps of
// the subject that were undone are forgotten, and those beyond [Steps].
func (w *work) record(step book.Step) error {
	if w.made.empty() {
		return nil
	}
	if step.Typing != "" {
		if joined, err := w.join(step); joined || err != nil {
			return err
		}
	}
	text, err := json.Marshal(w.made)
	if err != nil {
		return err
	}
	if err := w.exec(`DELETE FROM steps WHERE subject = ? AND undone = 1`, step.Subject); err != nil {
		return err
	}
	number, err := w.insert(`INSERT INTO steps (subject, label, typing, change, made_at) VALUES (?, ?, ?, '{}', ?)`,
		step.Subject, step.Label, step.Typing, w.s.stamp())
	if err != nil {
		return err
	}
	if err := w.putChange(number, string(text)); err != nil {
		return err
	}
	return w.exec(`DELETE FROM steps WHERE subject = ?1 AND number <= (SELECT number FROM steps WHERE subject = ?1
		ORDER BY number DESC LIMIT 1 OFFSET ?2)`, step.Subject, Steps)
}

// putChange writes what a step holds, and seals it: at once, for that of a long table has a megabyte for every three thousand rows.
func (p place) putChange(number int64, text string) error {
	columns := strings.Replace(summed["steps"].columns, "change", "?1", 1)
	return p.exec(`UPDATE steps SET change = ?1, sum = sum_of(`+columns+`) WHERE number = ?2`, text, number)
}

// join makes the work part of the last step of its subject, if both are typing in one field and no pause lies between. A step
// that ends as it began goes.
func (w *work) join(step book.Step) (bool, error) {
	var undone int
	if err := w.row(`SELECT count(*) FROM steps WHERE subject = ? AND undone = 1`, step.Subject).Scan(&undone); err != nil {
		return false, err
	}
	last, ok, err := w.next(step.Subject, true)
	if err != nil || !ok || undone > 0 || last.typing != step.Typing || w.s.now().Sub(last.made) > typingPause ||
		last.change.Decision != nil || w.made.Decision != nil || len(step.New) > 0 {
		return false, err
	}
	both, ok, err := w.both(last.change)
	if err != nil || !ok {
		return false, err
	}
	if both.empty() {
		return true, w.exec(`DELETE FROM steps WHERE number = ?`, last.number)
	}
	text, err := json.Marshal(both)
	if err != nil {
		return false, err
	}
	if err := w.exec(`UPDATE steps SET label = ?, made_at = ? WHERE number = ?`, step.Label, w.s.stamp(), last.number); err != nil {
		return false, err
	}
	return true, w.putChange(last.number, string(text))
}

// both returns the change of a step and of the work after it, as one: what differs between before the one and after the other.
// It reports false where the step can no longer be taken back whole.
func (w *work) both(step change) (both change, ok bool, err error) {
	for _, c := range append(append([]lotChange(nil), step.Lots...), w.made.Lots...) {
		if _, err := w.lot(c.Lot); err != nil {
			return both, false, err
		}
	}
	first := map[int64]book.Lot{}
	maps.Copy(first, w.was)
	for _, c := range step.inverse().Lots {
		l, _, left, err := c.apply(first[c.Lot], nil)
		if err != nil || len(left) > 0 {
			return both, false, err
		}
		first[c.Lot] = l
	}
	for _, id := range slices.Sorted(maps.Keys(first)) {
		c, err := difference(first[id], w.now[id])
		if err != nil {
			return both, false, err
		}
		if !c.empty() {
			both.Lots = append(both.Lots, c)
		}
	}
	both.Settings, ok, err = bothNamed(w.settings(), append(slices.Clip(step.Settings), w.made.Settings...))
	if !ok || err != nil {
		return both, ok, err
	}
	fields := append(slices.Clip(step.Shelf), w.made.Shelf...)
	r, err := w.rack(fields)
	if err != nil {
		return both, false, err
	}
	both.Shelf, ok, err = bothNamed(r.named(nil), fields)
	return both, ok, err
}

// bothNamed is both for fields of named documents that were written one after the other.
func bothNamed(of named, fields []field) (list []field, ok bool, err error) {
	own := map[string][]field{}
	for _, f := range fields {
		own[f.Path[0]] = append(own[f.Path[0]], f)
	}
	for _, name := range slices.Sorted(maps.Keys(own)) {
		stored, err := of.read(name)
		if err != nil {
			return nil, false, err
		}
		now, err1 := parse(stored)
		first, err2 := parse(stored)
		first, _, left, err3 := putAll(first, inverse(own[name]), false)
		if err := errors.Join(err1, err2, err3); err != nil || len(left) > 0 {
			return nil, false, err
		}
		list = append(list, compare([]string{name}, first, now)...)
	}
	return list, true, nil
}
