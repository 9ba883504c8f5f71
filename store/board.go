package store

import (
	"context"
	"database/sql"
	"fmt"
	"time"

	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Entry is one lot as a list shows it.
type Entry struct {
	ID        int64
	State     lot.State
	Archived  bool
	Number    string
	Sale      string
	SaleDate  lot.Date
	ModelYear int
	Make      string
	Model     string
	Trim      string
	Currency  string
	SavedAt   time.Time
	Answer    *Summary // nil: not valued yet
}

// Summary is what the last valuation of a lot said.
type Summary struct {
	Decision   string        // bid | do_not_bid
	WalkAway   *money.Amount // nil: no bid holds
	Binding    string
	LossChance float64
	MeanProfit float64  // major units
	PerHour    *float64 // major units; nil: no own hours
	Stale      bool     // the case was saved again since
}

// Entries returns every lot that is not removed, archived ones too, by sale day (unknown days last) and number.
func (s *Store) Entries(ctx context.Context) (entries []Entry, err error) {
	err = s.read(ctx, "reading the lots", func(tx *sql.Tx) error {
		rows, err := tx.QueryContext(ctx, `SELECT l.id, l.state, l.archived, l.number, l.sale, l.sale_date, l.model_year, l.make, l.model, l.trim,
				l.currency, l.saved_at, a.decision, a.walk_away, a.binding, a.loss_chance, a.mean_profit, a.per_hour, a.revision <> l.revision
			FROM lots l LEFT JOIN answers a ON a.lot = l.id
			WHERE l.removed_at IS NULL
			ORDER BY l.sale_date = '', l.sale_date, l.sale, length(l.number), l.number, l.id`)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			e, err := scanEntry(rows)
			if err != nil {
				return err
			}
			entries = append(entries, e)
		}
		return rows.Err()
	})
	return entries, err
}

func scanEntry(rows *sql.Rows) (Entry, error) {
	var e Entry
	var a Summary
	var savedAt string
	var decision, binding sql.NullString
	var loss, mean sql.NullFloat64
	var stale sql.NullBool
	err := rows.Scan(&e.ID, &e.State, &e.Archived, &e.Number, &e.Sale, &e.SaleDate, &e.ModelYear, &e.Make, &e.Model, &e.Trim,
		&e.Currency, &savedAt, &decision, &a.WalkAway, &binding, &loss, &mean, &a.PerHour, &stale)
	if err != nil {
		return e, err
	}
	if decision.Valid {
		a.Decision, a.Binding, a.LossChance, a.MeanProfit, a.Stale = decision.String, binding.String, loss.Float64, mean.Float64, stale.Bool
		e.Answer = &a
	}
	e.SavedAt, err = time.Parse(time.RFC3339Nano, savedAt)
	return e, err
}

// SetState moves a lot to a state, as a step of the Board. Errors: [ErrNotFound]; [ErrRefused] when it is none of lot.States.
func (s *Store) SetState(ctx context.Context, id int64, state lot.State) error {
	return s.mark(ctx, id, "mark%s as "+string(state), func(st *status) { st.State = state })
}

// Archive puts a lot out of sight or back, as a step of the Board. Errors: [ErrNotFound].
func (s *Store) Archive(ctx context.Context, id int64, archived bool) error {
	label := "archive%s"
	if !archived {
		label = "take%s out of the archive"
	}
	return s.mark(ctx, id, label, func(st *status) { st.Archived = archived })
}

// Remove takes a lot off every list, as a step of the Board; taken back, or with [Store.Restore], it has all that it had.
// Errors: [ErrNotFound].
func (s *Store) Remove(ctx context.Context, id int64) error {
	return s.mark(ctx, id, "remove%s", func(st *status) { st.Removed = s.stamp() })
}

// mark changes what a lot on the list is marked with, as a step of the Board; %s of the label is the lot's number.
func (s *Store) mark(ctx context.Context, id int64, label string, change func(*status)) error {
	return s.write(ctx, fmt.Sprintf("marking lot %d", id), func(tx *sql.Tx) error {
		before, number, err := statusOf(ctx, tx, id)
		switch {
		case err != nil:
			return err
		case before.Removed != "":
			return ErrNotFound
		}
		after := before
		change(&after)
		if after == before {
			return nil
		}
		if err := putStatus(ctx, tx, id, after); err != nil {
			return err
		}
		return s.rememberShop(ctx, tx, Board, fmt.Sprintf(label, called(number)), shopChange{Lots: []mark{{id, before, after}}})
	})
}

// called names a lot by its number on the list, where it has one.
func called(number string) string {
	if number == "" {
		return " a lot"
	}
	return " lot " + number
}

// Restore brings a removed lot back. Errors: [ErrNotFound] when it is not removed.
func (s *Store) Restore(ctx context.Context, id int64) error {
	return s.write(ctx, fmt.Sprintf("restoring lot %d", id), func(tx *sql.Tx) error {
		before, number, err := statusOf(ctx, tx, id)
		switch {
		case err != nil:
			return err
		case before.Removed == "":
			return ErrNotFound
		}
		after := before
		after.Removed = ""
		if err := putStatus(ctx, tx, id, after); err != nil {
			return err
		}
		return s.rememberShop(ctx, tx, Board, "restore"+called(number), shopChange{Lots: []mark{{id, before, after}}})
	})
}
