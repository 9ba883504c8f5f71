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
		value, err := rawSetting(place{ctx, tx}, name)
		if err != nil || value == nil {
			return err
		}
		found = true
		return json.Unmarshal(value, into)
	})
	return found, err
}

// PutSetting keeps value, as JSON, as the setting of that name: what the window remembers, which is no step of any history.
// Errors: [ErrRefused] when value has no JSON form.
func (s *Store) PutSetting(ctx context.Context, name string, value any) error {
	return s.write(ctx, "keeping the setting "+name, func(tx *sql.Tx) error {
		body, err := json.Marshal(value)
		if err != nil {
			return fmt.Errorf("%w (%w)", ErrRefused, err)
		}
		return s.putSetting(place{ctx, tx}, name, body)
	})
}

// rawSetting returns the JSON of a setting, nil when there is none.
func rawSetting(p place, name string) (json.RawMessage, error) {
	var value []byte
	err := p.row(`SELECT value FROM settings WHERE name = ?`, name).Scan(&value)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	return value, err
}

// putSetting writes the JSON of a setting; null takes the setting away.
func (s *Store) putSetting(p place, name string, body json.RawMessage) error {
	if len(body) == 0 || string(body) == "null" {
		return p.exec(`DELETE FROM settings WHERE name = ?`, name)
	}
	return p.exec(`INSERT INTO settings (name, value, saved_at) VALUES (?, ?, ?)
		ON CONFLICT (name) DO UPDATE SET value = excluded.value, saved_at = excluded.saved_at`, name, string(body), s.stamp())
}
