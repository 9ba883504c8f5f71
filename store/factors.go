package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"time"
)

// Decision is one step in the history of the learned factors.
type Decision struct {
	ID     int64
	At     time.Time
	What   string          // Accepted | Refused | Restored
	Factor string          // which one was decided on
	Words  string          // old, new and the evidence, as the user was shown them
	Before json.RawMessage // all factors before
	After  json.RawMessage // and after
}

// What can be decided.
const (
	Accepted = "accepted"
	Refused  = "refused"
	Restored = "restored"
)

// Decide adds a step to the history of the factors, which never changes. Its id and time are given here.
// Errors: [ErrRefused] when What is none of the three or a document is no JSON.
func (s *Store) Decide(ctx context.Context, d Decision) error {
	return s.write(ctx, fmt.Sprintf("keeping the decision on %s", d.Factor), func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO factors (decided_at, decision, factor, words, before, after) VALUES (?, ?, ?, ?, ?, ?)`,
			s.stamp(), d.What, d.Factor, d.Words, string(d.Before), string(d.After))
		return err
	})
}

// Decisions returns the history of the factors, oldest first. The factors in force are those after the last step.
func (s *Store) Decisions(ctx context.Context) (list []Decision, err error) {
	err = s.read(ctx, "reading the history of the factors", func(tx *sql.Tx) error {
		rows, err := tx.QueryContext(ctx, `SELECT id, decided_at, decision, factor, words, before, after FROM factors ORDER BY id`)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			d, err := scanDecision(rows)
			if err != nil {
				return err
			}
			list = append(list, d)
		}
		return rows.Err()
	})
	return list, err
}

func scanDecision(rows *sql.Rows) (d Decision, err error) {
	var at string
	var before, after []byte
	if err := rows.Scan(&d.ID, &at, &d.What, &d.Factor, &d.Words, &before, &after); err != nil {
		return d, err
	}
	d.Before, d.After = before, after
	d.At, err = time.Parse(time.RFC3339Nano, at)
	return d, err
}
