package store

import (
	"context"
	"database/sql"
	"fmt"

	"walkline/valuation"
	"walkline/valuation/lot"
)

// Listed is what a lot on the list says of its vehicle and sale.
type Listed struct {
	ID    int64
	State lot.State
	Lot   lot.Lot
}

// Lots returns the facts of every lot that is not removed, archived ones too, in the order in which they came.
func (s *Store) Lots(ctx context.Context) (list []Listed, err error) {
	err = s.read(ctx, "reading the lots", func(tx *sql.Tx) error {
		rows, err := tx.QueryContext(ctx, `SELECT id, state, `+factColumns+` FROM lots WHERE removed_at IS NULL ORDER BY id`)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var l Listed
			var c valuation.Case
			if err := scanFactRow(rows.Scan, &c, &l.ID, &l.State); err != nil {
				return err
			}
			l.Lot = c.Lot
			list = append(list, l)
		}
		return rows.Err()
	})
	return list, err
}

// Enlist keeps new lots, to look at, and new facts of lots that are there, as one step of the Board that label names; the
// new facts are a step of each lot's own history too. All is kept or nothing.
// Errors: [ErrNotFound]; [ErrRefused] when something can't be kept.
func (s *Store) Enlist(ctx context.Context, label string, added []valuation.Case, changed []Listed) error {
	return s.write(ctx, "taking in a list", func(tx *sql.Tx) error {
		var step shopChange
		for _, c := range added {
			id, err := s.add(place{ctx: ctx, tx: tx}, c)
			if err != nil {
				return fmt.Errorf("lot %s: %w", c.Lot.Number, err)
			}
			step.Lots = append(step.Lots, s.appeared(id))
		}
		for _, l := range changed {
			e, err := s.restate(place{ctx, tx, l.ID}, label, l.Lot)
			if err != nil {
				return fmt.Errorf("lot %s: %w", l.Lot.Number, err)
			}
			step.Edits = append(step.Edits, e)
		}
		return s.rememberShop(ctx, tx, Board, label, step)
	})
}

// restate saves other facts of a lot, with a step of its history.
func (s *Store) restate(p place, label string, facts lot.Lot) (edit, error) {
	before, _, err := s.stored(p)
	if err != nil {
		return edit{}, err
	}
	after := before.Clone()
	after.Lot = facts
	ch, err := difference(before, after)
	if err != nil {
		return edit{}, err
	}
	if err := s.remember(p, label, ch); err != nil {
		return edit{}, err
	}
	if err := s.writeChange(p, ch, after); err != nil {
		return edit{}, err
	}
	k, _, err := lastDone(p)
	return edit{p.lot, k.number}, err
}
