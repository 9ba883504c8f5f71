package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// Bought is one lot that was won or lost, with what came of it and what was foretold last.
type Bought struct {
	ID        int64
	State     lot.State
	Archived  bool
	Number    string
	Sale      string
	SaleDate  lot.Date
	VIN       string
	ModelYear int
	Make      string
	Model     string
	Trim      string
	Currency  string
	Build     build.Build
	Foretold  *Foretold // nil: nothing was
}

// Foretold is a frozen prediction as a list of builds needs it. Its documents are those of [Store.Predictions] and
// [Store.FrozenCases].
type Foretold struct {
	FrozenAt time.Time
	Seed     int64
	Engine   string
	Forecast json.RawMessage // unread; empty: none was kept
}

// Builds returns every lot that was won or lost, archived ones too, removed ones not. What was entered of a lot that is marked
// otherwise since is kept, and is not among them.
func (s *Store) Builds(ctx context.Context) (list []Bought, err error) {
	err = s.read(ctx, "reading the builds", func(tx *sql.Tx) error {
		if list, err = scanBought(ctx, tx); err != nil {
			return err
		}
		at := map[int64]*build.Build{}
		for i := range list {
			at[list[i].ID] = &list[i].Build
		}
		find := func(id int64) *build.Build { return at[id] }
		if err := scanHeads(ctx, tx, find); err != nil {
			return err
		}
		for _, l := range listings {
			if err := l.read(ctx, tx, everyLot, find); err != nil {
				return err
			}
		}
		return nil
	})
	return list, err
}

func scanBought(ctx context.Context, tx *sql.Tx) (list []Bought, err error) {
	rows, err := tx.QueryContext(ctx, `SELECT l.id, l.state, l.archived, l.number, l.sale, l.sale_date, l.vin, l.model_year, l.make, l.model, l.trim,
			l.currency, p.frozen_at, p.seed, p.engine, f.body
		FROM lots l LEFT JOIN predictions p ON p.id = (SELECT max(id) FROM predictions WHERE lot = l.id)
		LEFT JOIN forecasts f ON f.prediction = p.id
		WHERE l.removed_at IS NULL AND l.state IN ('won', 'lost')
		ORDER BY l.sale_date = '', l.sale_date, l.id`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		b, err := scanBoughtRow(rows)
		if err != nil {
			return nil, err
		}
		list = append(list, b)
	}
	return list, rows.Err()
}

func scanBoughtRow(rows *sql.Rows) (b Bought, err error) {
	var f Foretold
	var frozenAt, engine sql.NullString
	var seed sql.NullInt64
	var forecast []byte
	err = rows.Scan(&b.ID, &b.State, &b.Archived, &b.Number, &b.Sale, &b.SaleDate, &b.VIN, &b.ModelYear, &b.Make, &b.Model, &b.Trim,
		&b.Currency, &frozenAt, &seed, &engine, &forecast)
	if err != nil || !frozenAt.Valid {
		return b, err
	}
	f.Forecast, f.Seed, f.Engine = forecast, seed.Int64, engine.String
	f.FrozenAt, err = time.Parse(time.RFC3339Nano, frozenAt.String)
	b.Foretold = &f
	return b, err
}

// FrozenCases returns the case file that was frozen last of each lot that is not removed, as it was written then.
func (s *Store) FrozenCases(ctx context.Context) (files map[int64][]byte, err error) {
	err = s.read(ctx, "reading the frozen cases", func(tx *sql.Tx) error {
		rows, err := tx.QueryContext(ctx, `SELECT p.lot, p.case_file FROM predictions p JOIN lots l ON l.id = p.lot
			WHERE l.removed_at IS NULL AND p.id = (SELECT max(id) FROM predictions WHERE lot = p.lot)`)
		if err != nil {
			return err
		}
		defer rows.Close()
		files = map[int64][]byte{}
		for rows.Next() {
			var id int64
			var file []byte
			if err := rows.Scan(&id, &file); err != nil {
				return err
			}
			files[id] = file
		}
		return rows.Err()
	})
	return files, err
}

func scanHeads(ctx context.Context, tx *sql.Tx, find func(id int64) *build.Build) error {
	rows, err := tx.QueryContext(ctx, `SELECT `+headColumns+` FROM builds b`)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		id, head, err := scanHead(rows)
		if err != nil {
			return err
		}
		if b := find(id); b != nil {
			*b = head
		}
	}
	return rows.Err()
}

// Past is one buy from before the program.
type Past struct {
	Case  valuation.Case // its facts
	Build build.Build    // Imported.As is not empty
}

// Took says what became of past buys: every one is in one of the counts.
type Took struct{ New, Same, Changed int }

// AddPast keeps past buys as won lots in one transaction; those that have ended are archived, out of the way of coming
// sales. One that is there, by what its table calls it, with the same row as it was last imported is left alone, whatever
// was entered by hand since; one whose row has changed has its build replaced, as a step of its history. A removed one
// stays removed and counts as the same.
// Errors: [ErrRefused] when a value can't be kept; nothing is kept then.
func (s *Store) AddPast(ctx context.Context, list []Past) (t Took, err error) {
	err = s.write(ctx, "keeping past buys", func(tx *sql.Tx) error {
		t = Took{}
		for _, past := range list {
			if err := s.addPast(place{ctx: ctx, tx: tx}, past, &t); err != nil {
				return fmt.Errorf("%s: %w", past.Build.Imported.As, err)
			}
		}
		return nil
	})
	return t, err
}

func (s *Store) addPast(p place, past Past, t *Took) error {
	var row string
	var removed bool
	err := p.tx.QueryRowContext(p.ctx, `SELECT b.lot, b.imported_row, l.removed_at IS NOT NULL FROM builds b JOIN lots l ON l.id = b.lot
		WHERE b.imported_as = ? AND b.imported_as <> ''`, past.Build.Imported.As).Scan(&p.lot, &row, &removed)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		t.New++
		return s.newPast(p, past)
	case err != nil:
		return err
	case row == past.Build.Imported.Row || removed:
		t.Same++
		return nil
	}
	t.Changed++
	stored, err := loadBuild(p)
	if err != nil {
		return err
	}
	ch, err := buildDifference(stored, past.Build)
	if err != nil {
		return err
	}
	if err := s.remember(p, "import past buys", change{Build: &ch}); err != nil {
		return err
	}
	return ch.write(p, past.Build)
}

// newPast keeps a past buy that is not there yet.
func (s *Store) newPast(p place, past Past) error {
	id, err := s.add(p, past.Case)
	if err != nil {
		return err
	}
	p.lot = id
	if err := p.exec(`UPDATE lots SET state = 'won', archived = ? WHERE id = ?`, past.Build.Outcome.Ended(), id); err != nil {
		return err
	}
	ch, err := buildDifference(build.Build{}, past.Build)
	if err != nil {
		return err
	}
	return ch.write(p, past.Build)
}
