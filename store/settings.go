package store

import (
	"bytes"
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
		value, err := rawSetting(ctx, tx, name)
		if err != nil || value == nil {
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
		return s.putSetting(ctx, tx, name, body)
	})
}

// Keep keeps value as the setting of that name, as a step of the Bench that label names. A value that is as kept makes no
// step. Errors: [ErrRefused] when value has no JSON form.
func (s *Store) Keep(ctx context.Context, label, name string, value any) error {
	return s.write(ctx, "keeping the setting "+name, func(tx *sql.Tx) error {
		after, err := json.Marshal(value)
		if err != nil {
			return fmt.Errorf("%w (%w)", ErrRefused, err)
		}
		before, err := rawSetting(ctx, tx, name)
		if err != nil || bytes.Equal(before, after) {
			return err
		}
		if err := s.putSetting(ctx, tx, name, after); err != nil {
			return err
		}
		return s.rememberShop(ctx, tx, Bench, label, shopChange{Settings: []settingSwap{{name, before, after}}})
	})
}

// rawSetting returns the JSON of a setting, nil when there is none.
func rawSetting(ctx context.Context, tx *sql.Tx, name string) (json.RawMessage, error) {
	var value []byte
	err := tx.QueryRowContext(ctx, `SELECT value FROM settings WHERE name = ?`, name).Scan(&value)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	return value, err
}

// putSetting writes the JSON of a setting; null takes the setting away.
func (s *Store) putSetting(ctx context.Context, tx *sql.Tx, name string, body json.RawMessage) error {
	if len(body) == 0 || string(body) == "null" {
		_, err := tx.ExecContext(ctx, `DELETE FROM settings WHERE name = ?`, name)
		return err
	}
	_, err := tx.ExecContext(ctx, `INSERT INTO settings (name, value, saved_at) VALUES (?, ?, ?)
		ON CONFLICT (name) DO UPDATE SET value = excluded.value, saved_at = excluded.saved_at`, name, string(body), s.stamp())
	return err
}
