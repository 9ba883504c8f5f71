package store

import (
	"cmp"
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"walkline/store/book"
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

// SettingNames returns the names of all settings that begin with a prefix, in order.
func (s *Store) SettingNames(ctx context.Context, prefix string) ([]string, error) {
	all, err := collect(ctx, s, query{"reading the settings", `SELECT name FROM settings s WHERE ` + intact("settings", "s") +
		` ORDER BY name`},
		func(rows *sql.Rows) (name string, err error) { return name, rows.Scan(&name) })
	return slices.DeleteFunc(all, func(name string) bool { return !strings.HasPrefix(name, prefix) }), err
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
	err := p.row(`SELECT value FROM settings s WHERE name = ? AND `+intact("settings", "s"), name).Scan(&value)
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
	if err := p.exec(`INSERT INTO settings (name, value, saved_at) VALUES (?, ?, ?)
		ON CONFLICT (name) DO UPDATE SET value = excluded.value, saved_at = excluded.saved_at`, name, string(body), s.stamp()); err != nil {
		return err
	}
	return p.seal("settings", `name = ?`, name)
}

// set does a change to a setting.
func (w *work) set(x book.Setting, forced bool) error {
	before, err1 := settingTree(x.Before)
	after, err2 := settingTree(x.After)
	stored, err3 := rawSetting(w.place, x.Name)
	if err := cmp.Or(err1, err2, err3); err != nil {
		return err
	}
	fields := compare([]string{x.Name}, before, after)
	if stored == nil && before != absent && len(fields) > 0 { // it was made from the starter values: they are what it differs from
		if err := w.s.putSetting(w.place, x.Name, raw(before)); err != nil {
			return err
		}
	}
	left, err := w.setFields(w.settings(), fields, forced)
	if err != nil || len(left) > 0 {
		return clashOr(err, "", left)
	}
	now, err := rawSetting(w.place, x.Name)
	if err != nil {
		return err
	}
	tree, err := parse(now)
	w.done.Merged = w.done.Merged || !same(tree, after)
	return err
}

// settingTree returns a setting as a tree; nil is no setting.
func settingTree(v any) (any, error) {
	tree, err := treeOf(v)
	if tree == nil {
		tree = absent
	}
	return tree, err
}

// named are documents that are kept by a name: settings, or the comparables of the shelf.
type named struct {
	read  func(name string) (json.RawMessage, error) // nil: there is none
	write func(name string, body json.RawMessage) error
	made  *[]field // what the work did to them
}

// settings are the documents of the shop's values.
func (w *work) settings() named {
	return named{func(name string) (json.RawMessage, error) { return rawSetting(w.place, name) },
		func(name string, body json.RawMessage) error { return w.s.putSetting(w.place, name, body) }, &w.made.Settings}
}

// setFields puts fields into named documents as far as they fit, and returns the paths of those that do not.
func (w *work) setFields(of named, fields []field, forced bool) (left [][]string, err error) {
	for _, f := range fields {
		stored, err := of.read(f.Path[0])
		if err != nil {
			return nil, err
		}
		if f.whole(stored) {
			if err := of.write(f.Path[0], f.After); err != nil {
				return nil, err
			}
			*of.made = append(*of.made, f)
			continue
		}
		tree, err := parse(stored)
		if err != nil {
			return nil, err
		}
		tree, made, clash, err := putAll(tree, []field{f}, forced)
		if err != nil {
			return nil, err
		}
		left = append(left, clash...)
		if len(made) > 0 {
			if err := of.write(f.Path[0], raw(tree)); err != nil {
				return nil, err
			}
			*of.made = append(*of.made, made...)
		}
	}
	return left, nil
}
