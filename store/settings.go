package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
)

// Setting reads the setting of that name into the value that into points to, and returns whether there is one; without
// one, into keeps what it holds. Errors: the setting does not fit into.
func (s *Store) Setting(ctx context.Context, name string, into any) (found bool, err error) {
	err = s.read(ctx, "reading the setting "+name, func(tx *sql.Tx) error {
		var value []byte
		err := tx.QueryRowContext(ctx, `SELECT value FROM settings WHERE name = ?`, name).Scan(&value)
		if errors.Is(err, sql.ErrNoRows) {
			return nil
		}
		if err != nil {
			return err
		}
		found = true
		return json.Unmarshal(value, into)
	})
	return found, err
}

// PutSetting keeps value, as JSON, as the setting of that name. Errors: [ErrRefused] when value has no JSON form.
func (s *Store) PutSetting(ctx context.Context, name string, value any) error {
	return s.write(ctx, "keeping the setting "+name, func(tx *sql.Tx) error {
		body, err := json.Marshal(value)
		if err != nil {
			return fmt.Errorf("%w (%w)", ErrRefused, err)
		}
		_, err = tx.ExecContext(ctx, `INSERT INTO settings (name, value, saved_at) VALUES (?, ?, ?)
			ON CONFLICT (name) DO UPDATE SET value = excluded.value, saved_at = excluded.saved_at`, name, string(body), s.stamp())
		return err
	})
}
