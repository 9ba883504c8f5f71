package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"

	"walkline/valuation"
	"walkline/valuation/build"
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
	Build build.Build    // what came of the lot, as it stands now
	Label string         // of the save that was taken back or done again
	Done  bool           // false: there was nothing to do, and the rest is empty
}

// Save writes the case of a lot, and only what differs from what is stored, with a step of history that label names;
// steps that were undone are forgotten. A case that is as stored writes nothing and makes no step.
// Errors: [ErrNotFound]; [ErrRefused] when c holds a word or number that can't be kept; nothing is written then.
func (s *Store) Save(ctx context.Context, id int64, label string, c valuation.Case) error {
	var revision int64
	err := s.write(ctx, fmt.Sprintf("saving lot %d", id), func(tx *sql.Tx) error {
		p := place{ctx, tx, id}
		stored, at, err := s.stored(p)
		if err != nil {
			return err
		}
		ch, err := difference(stored, c)
		if err != nil || ch.empty() {
			return err
		}
		revision = at + 1
		if err := s.remember(p, label, ch); err != nil {
			return err
		}
		return s.writeChange(p, ch, c)
	})
	if err == nil && revision > 0 {
		s.recent.keep(id, revision, c)
	}
	return err
}

// remember adds a step to the history of a lot.
func (s *Store) remember(p place, label string, ch change) error {
	text, err := ch.text()
	if err != nil {
		return err
	}
	if err := p.exec(`DELETE FROM steps WHERE lot = ? AND undone = 1`, p.lot); err != nil {
		return err
	}
	if err := p.exec(`INSERT INTO steps (lot, number, label, change, made_at)
		VALUES (?, (SELECT coalesce(max(number), 0) + 1 FROM steps WHERE lot = ?), ?, ?, ?)`, p.lot, p.lot, label, text, s.stamp()); err != nil {
		return err
	}
	return p.exec(`DELETE FROM steps WHERE lot = ? AND number <= (SELECT max(number) FROM steps WHERE lot = ?) - ?`, p.lot, p.lot, Steps)
}

// Undo takes the last save of a lot back. Errors: [ErrNotFound]; [ErrDamaged] when the history does not fit the case.
func (s *Store) Undo(ctx context.Context, id int64) (Undone, error) {
	return s.travel(ctx, id, backwards)
}

// Redo does the save again that was undone last. Errors: as [Store.Undo].
func (s *Store) Redo(ctx context.Context, id int64) (Undone, error) {
	return s.travel(ctx, id, forwards)
}

// direction is one way through the history.
type direction struct {
	doing string
	find  func(p place) (kept, bool, error) // the next step that way, and whether there is one
	turn  func(change) change
}

var (
	backwards = direction{"undoing in", lastDone, change.inverse}
	forwards  = direction{"redoing in", firstUndone, func(c change) change { return c }}
)

// kept is one step of the history as it is stored.
type kept struct {
	number int
	label  string
	change []byte
}

// travel moves one step through the history of a lot.
func (s *Store) travel(ctx context.Context, id int64, d direction) (u Undone, err error) {
	err = s.write(ctx, fmt.Sprintf("%s lot %d", d.doing, id), func(tx *sql.Tx) error {
		u, err = s.step(place{ctx, tx, id}, d)
		return err
	})
	if err != nil {
		return Undone{}, err
	}
	return u, nil
}

// step finds the next step of a direction, turns its change and applies it.
func (s *Store) step(p place, d direction) (Undone, error) {
	stored, err := load(p)
	if err != nil {
		return Undone{}, err
	}
	k, ok, err := d.find(p)
	if err != nil || !ok {
		return Undone{}, err
	}
	var ch change
	if err := json.Unmarshal(k.change, &ch); err != nil {
		return Undone{}, fmt.Errorf("%w: step %d can't be read (%w)", ErrDamaged, k.number, err)
	}
	ch = d.turn(ch)
	after, err := ch.apply(stored)
	if err != nil {
		return Undone{}, err
	}
	if err := p.exec(`UPDATE steps SET undone = 1 - undone WHERE lot = ? AND number = ?`, p.lot, k.number); err != nil {
		return Undone{}, err
	}
	came, err := s.stepBuild(p, ch.Build)
	if err != nil {
		return Undone{}, err
	}
	if err := stepPhotos(p, ch.Photos); err != nil {
		return Undone{}, err
	}
	u := Undone{Case: after, Build: came, Label: k.label, Done: true}
	if ch.empty() {
		return u, nil // the case is as it was, and so is its answer
	}
	return u, s.writeChange(p, ch, after)
}

func lastDone(p place) (kept, bool, error) {
	return scanStep(p.row(`SELECT number, label, change FROM steps WHERE lot = ? AND undone = 0 ORDER BY number DESC LIMIT 1`))
}

func firstUndone(p place) (kept, bool, error) {
	return scanStep(p.row(`SELECT number, label, change FROM steps WHERE lot = ? AND undone = 1 ORDER BY number LIMIT 1`))
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
		p := place{ctx, tx, id}
		back, ok, err := lastDone(p)
		if err != nil {
			return err
		}
		r.CanUndo, r.Undo = ok, back.label
		forth, ok, err := firstUndone(p)
		r.CanRedo, r.Redo = ok, forth.label
		return err
	})
	return r, err
}
