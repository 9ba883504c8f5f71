package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"walkline/store/casefile"
	"walkline/valuation"
)

// Prediction is what was foretold of a lot and all that it takes to foretell it again.
type Prediction struct {
	Case    valuation.Case
	Answer  valuation.Answer
	Factors json.RawMessage // the learned factors that were in force; empty: none
	Seed    int64
	Engine  string // version of the engine that answered
	// Forecast is what the engine foretold figure by figure, as a document, so that past buys are learned from without
	// playing them anew; empty: none.
	Forecast json.RawMessage
}

// Frozen is a prediction as it was kept.
type Frozen struct {
	ID       int64
	FrozenAt time.Time
	Case     valuation.Case
	Document []byte          // the case file, as written when the prediction was frozen
	Answer   json.RawMessage // the answer document (walkline-answer/1)
	Factors  json.RawMessage // null: none
	Seed     int64
	Engine   string
}

// Freeze keeps a prediction of a lot for good and returns its id; it can never be changed or deleted. A case that could
// not be read back and valued again is not frozen.
// Errors: [ErrNotFound]; [ErrRefused] with the faults of the case, or when Factors or Forecast is no JSON.
func (s *Store) Freeze(ctx context.Context, id int64, p Prediction) (frozen int64, err error) {
	err = s.write(ctx, fmt.Sprintf("freezing a prediction of lot %d", id), func(tx *sql.Tx) error {
		document := casefile.Write(p.Case)
		if _, err := replayable(document); err != nil {
			return err
		}
		factors := p.Factors
		if len(factors) == 0 {
			factors = json.RawMessage("null")
		}
		done, err := tx.ExecContext(ctx, `INSERT INTO predictions (lot, frozen_at, case_file, answer, factors, seed, engine)
			SELECT id, ?, ?, ?, ?, ?, ? FROM lots WHERE id = ? AND removed_at IS NULL`,
			s.stamp(), string(document), string(casefile.WriteAnswer(p.Answer)), string(factors), p.Seed, p.Engine, id)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil || n == 0 {
			return errors.Join(ErrNotFound, err)
		}
		if frozen, err = done.LastInsertId(); err != nil || len(p.Forecast) == 0 {
			return err
		}
		_, err = tx.ExecContext(ctx, `INSERT INTO forecasts (prediction, body) VALUES (?, ?)`, frozen, string(p.Forecast))
		return err
	})
	return frozen, err
}

// replayable returns the case that a document holds. Errors: [ErrRefused] with every fault in it.
func replayable(document []byte) (valuation.Case, error) {
	c, faults := casefile.Read(document)
	if len(faults) == 0 {
		return c, nil
	}
	err := fmt.Errorf("%w: the case has %d faults", ErrRefused, len(faults))
	for _, f := range faults {
		err = fmt.Errorf("%w\n%v", err, f)
	}
	return c, err
}

// Predictions returns what was foretold of a lot, oldest first; a removed lot's predictions too. Errors: [ErrDamaged]
// when a kept case can't be read by this version.
func (s *Store) Predictions(ctx context.Context, id int64) (list []Frozen, err error) {
	err = s.read(ctx, fmt.Sprintf("reading the predictions of lot %d", id), func(tx *sql.Tx) error {
		rows, err := tx.QueryContext(ctx, `SELECT id, frozen_at, case_file, answer, factors, seed, engine
			FROM predictions WHERE lot = ? ORDER BY id`, id)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			f, err := scanFrozen(rows)
			if err != nil {
				return err
			}
			list = append(list, f)
		}
		return rows.Err()
	})
	return list, err
}

func scanFrozen(rows *sql.Rows) (f Frozen, err error) {
	var frozenAt string
	var answer, factors []byte
	if err := rows.Scan(&f.ID, &frozenAt, &f.Document, &answer, &factors, &f.Seed, &f.Engine); err != nil {
		return f, err
	}
	f.Answer, f.Factors = answer, factors
	if f.FrozenAt, err = time.Parse(time.RFC3339Nano, frozenAt); err != nil {
		return f, err
	}
	if f.Case, err = replayable(f.Document); err != nil {
		return f, fmt.Errorf("%w: prediction %d (%w)", ErrDamaged, f.ID, err)
	}
	return f, nil
}
