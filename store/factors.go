package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"time"

	"walkline/store/book"
)

// Decisions returns the history of the learned factors, oldest first. The factors in force are those after the last decision.
func (s *Store) Decisions(ctx context.Context) ([]book.Decision, error) {
	return collect(ctx, s, query{"reading the history of the factors",
		`SELECT id, decided_at, decision, factor, words, before, after FROM factors f WHERE ` + intact("factors", "f") + ` ORDER BY id`},
		scanDecision)
}

func scanDecision(rows *sql.Rows) (d book.Decision, err error) {
	var made string
	var before, after []byte
	if err := rows.Scan(&d.ID, &made, &d.What, &d.Factor, &d.Words, &before, &after); err != nil {
		return d, err
	}
	if d.At, err = time.Parse(time.RFC3339Nano, made); err != nil {
		return d, err
	}
	return d, errors.Join(decode("the factors before", before, &d.Before), decode("the factors after", after, &d.After))
}

// decisionChange is a decision on a learned factor as a step holds it.
type decisionChange struct {
	What   string  `json:"what"`
	Factor string  `json:"factor"`
	Words  string  `json:"words"`
	Fields []field `json:"fields,omitempty"` // of the factors
}

// decide adds a decision to the history of the factors, which never changes, and returns it as it was made.
// The factors after it are those in force with its fields put in; first are in force where nothing was decided yet. What clashes
// is in left; nothing is added then.
func (w *work) decide(d decisionChange, first json.RawMessage, forced bool) (made *decisionChange, left [][]string, err error) {
	before := first
	err = w.row(`SELECT after FROM factors f WHERE ` + intact("factors", "f") + ` ORDER BY id DESC LIMIT 1`).Scan((*[]byte)(&before))
	if err != nil && !errors.Is(err, sql.ErrNoRows) {
		return nil, nil, err
	}
	tree, err := parse(before)
	if err != nil {
		return nil, nil, err
	}
	after, fields, left, err := putAll(tree, d.Fields, forced)
	if err != nil || len(left) > 0 {
		return nil, left, err
	}
	id, err := w.insert(`INSERT INTO factors (decided_at, decision, factor, words, before, after) VALUES (?, ?, ?, ?, ?, ?)`,
		w.s.stamp(), d.What, d.Factor, d.Words, string(before), string(raw(after)))
	if err != nil {
		return nil, nil, err
	}
	d.Fields = fields
	return &d, nil, w.seal("factors", `id = ?`, id)
}

// takenBack is how a decision that is undone is kept: a row of its own that puts in force what was before.
func (d decisionChange) takenBack() decisionChange {
	d.What, d.Words = book.Restored, "Taken back: "+d.Words
	return d
}
