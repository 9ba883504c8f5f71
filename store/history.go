package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"

	"walkline/valuation"
)

// Steps is how many saves of one lot can be undone; older ones are forgotten. Starter value, ours.
const Steps = 200

// Reach is what undo and redo would do next.
type Reach struct {
	CanUndo, CanRedo bool
	Undo, Redo       string // the labels of those saves
}

// Undone is what an undo or a redo did.
type Undone struct {
	Case  valuation.Case // as it stands now
	Label string         // of the save that was taken back or done again
	Done  bool           // false: there was nothing to do, and Case and Label are empty
}

// Save writes the case of a lot, and only what differs from what is stored, with a step of history that label names;
// steps that were undone are forgotten. A case that is as stored writes nothing and makes no step.
// Errors: [ErrNotFound]; [ErrRefused] when c holds a word or number that can't be kept; nothing is written then.
func (s *Store) Save(ctx context.Context, id int64, label string, c valuation.Case) error {
	return s.write(ctx, fmt.Sprintf("saving lot %d", id), func(tx *sql.Tx) error {
		stored, err := load(ctx, tx, id)
		if err != nil {
			return err
		}
		ch, err := difference(stored, c)
		if err != nil || ch.empty() {
			return err
		}
		if err := s.remember(ctx, tx, id, label, ch); err != nil {
			return err
		}
		return s.writeChange(ctx, tx, id, ch, c)
	})
}

// remember adds a step to the history of a lot.
func (s *Store) remember(ctx context.Context, tx *sql.Tx, id int64, label string, ch change) error {
	text, err := ch.text()
	if err != nil {
		return err
	}
	if _, err := tx.ExecContext(ctx, `DELETE FROM steps WHERE lot = ? AND undone = 1`, id); err != nil {
		return err
	}
	if _, err := tx.ExecContext(ctx, `INSERT INTO steps (lot, number, label, change, made_at)
		VALUES (?, (SELECT coalesce(max(number), 0) + 1 FROM steps WHERE lot = ?), ?, ?, ?)`, id, id, label, text, s.stamp()); err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, `DELETE FROM steps WHERE lot = ? AND number <= (SELECT max(number) FROM steps WHERE lot = ?) - ?`, id, id, Steps)
	return err
}

// Undo takes the last save of a lot back. Errors: [ErrNotFound]; [ErrDamaged] when the history does not fit the case.
func (s *Store) Undo(ctx context.Context, id int64) (Undone, error) {
	return s.step(ctx, id, fmt.Sprintf("undoing in lot %d", id), lastDone, change.inverse)
}

// Redo does the save again that was undone last. Errors: as [Store.Undo].
func (s *Store) Redo(ctx context.Context, id int64) (Undone, error) {
	return s.step(ctx, id, fmt.Sprintf("redoing in lot %d", id), firstUndone, func(c change) change { return c })
}

// kept is one step of the history as it is stored.
type kept struct {
	number int
	label  string
	change []byte
}

// step moves one step through the history of a lot: it finds the step, turns its change and applies it.
func (s *Store) step(ctx context.Context, id int64, doing string, find finder, turn func(change) change) (u Undone, err error) {
	err = s.write(ctx, doing, func(tx *sql.Tx) error {
		stored, err := load(ctx, tx, id)
		if err != nil {
			return err
		}
		k, ok, err := find(ctx, tx, id)
		if err != nil || !ok {
			return err
		}
		var ch change
		if err := json.Unmarshal(k.change, &ch); err != nil {
			return fmt.Errorf("%w: step %d can't be read (%w)", ErrDamaged, k.number, err)
		}
		ch = turn(ch)
		u = Undone{Label: k.label, Done: true}
		if u.Case, err = ch.apply(stored); err != nil {
			return err
		}
		if _, err := tx.ExecContext(ctx, `UPDATE steps SET undone = 1 - undone WHERE lot = ? AND number = ?`, id, k.number); err != nil {
			return err
		}
		return s.writeChange(ctx, tx, id, ch, u.Case)
	})
	if err != nil {
		return Undone{}, err
	}
	return u, nil
}

// finder returns one step of a lot's history and whether there is one.
type finder func(ctx context.Context, tx *sql.Tx, id int64) (kept, bool, error)

func lastDone(ctx context.Context, tx *sql.Tx, id int64) (kept, bool, error) {
	return scanStep(tx.QueryRowContext(ctx, `SELECT number, label, change FROM steps WHERE lot = ? AND undone = 0 ORDER BY number DESC LIMIT 1`, id))
}

func firstUndone(ctx context.Context, tx *sql.Tx, id int64) (kept, bool, error) {
	return scanStep(tx.QueryRowContext(ctx, `SELECT number, label, change FROM steps WHERE lot = ? AND undone = 1 ORDER BY number LIMIT 1`, id))
}

func scanStep(row *sql.Row) (k kept, ok bool, err error) {
	err = row.Scan(&k.number, &k.label, &k.change)
	if errors.Is(err, sql.ErrNoRows) {
		return k, false, nil
	}
	return k, err == nil, err
}

// Reach returns what undo and redo of a lot would do next; neither for a lot that there is not.
func (s *Store) Reach(ctx context.Context, id int64) (r Reach, err error) {
	err = s.read(ctx, fmt.Sprintf("reading the history of lot %d", id), func(tx *sql.Tx) error {
		back, ok, err := lastDone(ctx, tx, id)
		if err != nil {
			return err
		}
		r.CanUndo, r.Undo = ok, back.label
		forth, ok, err := firstUndone(ctx, tx, id)
		r.CanRedo, r.Redo = ok, forth.label
		return err
	})
	return r, err
}
