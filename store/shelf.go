package store

import (
	"cmp"
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"strconv"
	"sync"

	"walkline/store/book"
)

// shelves remembers the shelf as it was last read: a lot is opened more often than the shelf changes.
type shelves struct {
	sync.Mutex
	known bool
	all   []book.Comparable
}

func (s *shelves) forget() {
	s.Lock()
	defer s.Unlock()
	s.known, s.all = false, nil
}

// Shelf returns every comparable on the shelf, in the order in which they came. What it returns is shared and must not be changed.
func (s *Store) Shelf(ctx context.Context) ([]book.Comparable, error) {
	s.shelves.Lock()
	defer s.shelves.Unlock()
	if s.shelves.known {
		return s.shelves.all, nil
	}
	all, err := collect(ctx, s, query{"reading the shelf", `SELECT id, body FROM shelf s WHERE ` + intact("shelf", "s") + ` ORDER BY id`},
		func(rows *sql.Rows) (c book.Comparable, err error) {
			var body []byte
			if err := rows.Scan(&c.ID, &body); err != nil {
				return c, err
			}
			id := c.ID
			err = decodeOver(fmt.Sprintf("comparable %d", id), body, &c)
			c.ID = id
			return c, err
		})
	if err == nil {
		s.shelves.known, s.shelves.all = true, all
	}
	return all, err
}

// shelf are the documents of the comparables, by their places in words.
func (w *work) shelf() named {
	return named{
		func(name string) (json.RawMessage, error) {
			var body []byte
			err := w.row(`SELECT body FROM shelf s WHERE id = ? AND `+intact("shelf", "s"), placeOf(name)).Scan(&body)
			if err == sql.ErrNoRows {
				return nil, nil
			}
			return body, err
		},
		func(name string, body json.RawMessage) error {
			if len(body) == 0 {
				return w.exec(`DELETE FROM shelf WHERE id = ?`, placeOf(name))
			}
			if err := w.exec(`INSERT INTO shelf (id, body) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET body = excluded.body`,
				placeOf(name), string(body)); err != nil {
				return err
			}
			return w.seal("shelf", `id = ?`, placeOf(name))
		}, &w.made.Shelf}
}

// placeOf is the inverse of writing a place in words; 0 for none.
func placeOf(name string) int64 {
	id, err := strconv.ParseInt(name, 10, 64)
	if err != nil {
		return 0
	}
	return id
}

// shelve does a change to a comparable. A new one is given its place.
func (w *work) shelve(x book.Shelved, forced bool) error {
	if x.Before == nil {
		return w.lay(x.After)
	}
	name := strconv.FormatInt(x.Before.ID, 10)
	before, err1 := treeOf(x.Before)
	after, err2 := absent, error(nil)
	if x.After != nil {
		after, err2 = treeOf(x.After)
	}
	if err := cmp.Or(err1, err2); err != nil {
		return err
	}
	left, err := w.setFields(w.shelf(), compare([]string{name}, before, after), forced)
	if err != nil || len(left) > 0 {
		return clashOr(err, "", left)
	}
	return nil
}

// lay puts a comparable that is new on the shelf.
func (w *work) lay(c *book.Comparable) error {
	body, err := json.Marshal(c)
	if err != nil {
		return fmt.Errorf("%w: a comparable (%w)", ErrRefused, err)
	}
	id, err := w.insert(`INSERT INTO shelf (body) VALUES (?)`, string(body))
	if err == nil {
		err = w.seal("shelf", `id = ?`, id)
		w.made.Shelf = append(w.made.Shelf, field{Path: []string{strconv.FormatInt(id, 10)}, After: body})
	}
	return err
}
