package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"

	"walkline/valuation/lot"
)

// Place is a history beside those of the lots.
type Place string

// The places. What is done to the list of lots is stepped through apart from what is done to the shop's own values, so that an undo
// never takes back what is not in sight.
const (
	Board Place = "board"
	Bench Place = "bench"
)

// shopChange is one step of a place, both ways.
type shopChange struct {
	Lots     []mark        `json:"lots"`
	Settings []settingSwap `json:"settings"`
	Edits    []edit        `json:"edits"`
}

// mark is what a lot is marked with before and after.
type mark struct {
	Lot    int64  `json:"lot"`
	Before status `json:"before"`
	After  status `json:"after"`
}

// status is all that a lot is marked with.
type status struct {
	State    lot.State `json:"state"`
	Archived bool      `json:"archived"`
	Removed  string    `json:"removed"` // when; empty: it is on the list
}

// settingSwap is one setting before and after; Before is null when there was none.
type settingSwap struct {
	Name   string          `json:"name"`
	Before json.RawMessage `json:"before"`
	After  json.RawMessage `json:"after"`
}

// edit is one step of a lot's own history that was made together with others.
type edit struct {
	Lot    int64 `json:"lot"`
	Number int   `json:"number"`
}

func (c shopChange) empty() bool {
	return len(c.Lots) == 0 && len(c.Settings) == 0 && len(c.Edits) == 0
}

// rememberShop adds a step to the history of a place; steps that were undone are forgotten, and those beyond [Steps].
func (s *Store) rememberShop(ctx context.Context, tx *sql.Tx, at Place, label string, c shopChange) error {
	if c.empty() {
		return nil
	}
	text, err := json.Marshal(c)
	if err != nil {
		return fmt.Errorf("%w (%w)", ErrRefused, err)
	}
	for _, write := range []struct {
		statement string
		args      []any
	}{
		{`DELETE FROM shop_steps WHERE place = ? AND undone = 1`, []any{at}},
		{`INSERT INTO shop_steps (place, label, change, made_at) VALUES (?, ?, ?, ?)`, []any{at, label, string(text), s.stamp()}},
		{`DELETE FROM shop_steps WHERE place = ?1 AND number NOT IN (SELECT number FROM shop_steps WHERE place = ?1 ORDER BY number DESC LIMIT ?2)`, []any{at, Steps}},
	} {
		if _, err := tx.ExecContext(ctx, write.statement, write.args...); err != nil {
			return err
		}
	}
	return nil
}

// UndoAt takes the last step of a place back and returns its label; done is false when there was none.
// Errors: [ErrDamaged] when the history can't be read.
func (s *Store) UndoAt(ctx context.Context, at Place) (label string, done bool, err error) {
	return s.stepAt(ctx, at, true)
}

// RedoAt does the step of a place again that was undone last. Errors: as [Store.UndoAt].
func (s *Store) RedoAt(ctx context.Context, at Place) (label string, done bool, err error) {
	return s.stepAt(ctx, at, false)
}

func (s *Store) stepAt(ctx context.Context, at Place, back bool) (label string, done bool, err error) {
	err = s.write(ctx, "stepping through the history of the "+string(at), func(tx *sql.Tx) error {
		k, ok, err := nextAt(ctx, tx, at, back)
		if err != nil || !ok {
			return err
		}
		var c shopChange
		if err := json.Unmarshal(k.change, &c); err != nil {
			return fmt.Errorf("%w: step %d can't be read (%w)", ErrDamaged, k.number, err)
		}
		if err := s.applyShop(ctx, tx, c, back); err != nil {
			return err
		}
		label, done = k.label, true
		_, err = tx.ExecContext(ctx, `UPDATE shop_steps SET undone = 1 - undone WHERE number = ?`, k.number)
		return err
	})
	return label, done, err
}

// nextAt finds the step of a place that an undo, or a redo, is about.
func nextAt(ctx context.Context, tx *sql.Tx, at Place, back bool) (kept, bool, error) {
	query := `SELECT number, label, change FROM shop_steps WHERE place = ? AND undone = 1 ORDER BY number LIMIT 1`
	if back {
		query = `SELECT number, label, change FROM shop_steps WHERE place = ? AND undone = 0 ORDER BY number DESC LIMIT 1`
	}
	return scanStep(tx.QueryRowContext(ctx, query, at))
}

// applyShop does a step of a place, or takes it back.
func (s *Store) applyShop(ctx context.Context, tx *sql.Tx, c shopChange, back bool) error {
	for _, m := range c.Lots {
		to := m.After
		if back {
			to = m.Before
		}
		if err := putStatus(ctx, tx, m.Lot, to); err != nil {
			return err
		}
	}
	for _, w := range c.Settings {
		to := w.After
		if back {
			to = w.Before
		}
		if err := s.putSetting(ctx, tx, w.Name, to); err != nil {
			return err
		}
	}
	for _, e := range c.Edits {
		if err := s.stepBeside(place{ctx, tx, e.Lot}, e.Number, back); err != nil {
			return err
		}
	}
	return nil
}

// stepBeside takes one step of a lot's own history back, or does it again, if the lot stands at that step: what was
// edited since is never touched.
func (s *Store) stepBeside(p place, number int, back bool) error {
	d := forwards
	if back {
		d = backwards
	}
	k, ok, err := d.find(p)
	if err != nil || !ok || k.number != number {
		return err
	}
	_, err = s.step(p, d)
	return err
}

// ReachAt returns what undo and redo of a place would do next.
func (s *Store) ReachAt(ctx context.Context, at Place) (r Reach, err error) {
	err = s.read(ctx, "reading the history of the "+string(at), func(tx *sql.Tx) error {
		back, ok, err := nextAt(ctx, tx, at, true)
		if err != nil {
			return err
		}
		r.CanUndo, r.Undo = ok, back.label
		forth, ok, err := nextAt(ctx, tx, at, false)
		r.CanRedo, r.Redo = ok, forth.label
		return err
	})
	return r, err
}

// statusOf returns what a lot is marked with. Errors: [ErrNotFound].
func statusOf(ctx context.Context, tx *sql.Tx, id int64) (st status, number string, err error) {
	var removed sql.NullString
	err = tx.QueryRowContext(ctx, `SELECT state, archived, removed_at, number FROM lots WHERE id = ?`, id).Scan(&st.State, &st.Archived, &removed, &number)
	if errors.Is(err, sql.ErrNoRows) {
		err = ErrNotFound
	}
	st.Removed = removed.String
	return st, number, err
}

func putStatus(ctx context.Context, tx *sql.Tx, id int64, st status) error {
	_, err := tx.ExecContext(ctx, `UPDATE lots SET state = ?, archived = ?, removed_at = ? WHERE id = ?`,
		string(st.State), st.Archived, sql.NullString{String: st.Removed, Valid: st.Removed != ""}, id)
	return err
}
