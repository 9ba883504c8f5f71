package store

import (
	"cmp"
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"slices"
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

// shelve does changes to comparables, all at once. New ones are given their places, in their order.
func (w *work) shelve(list []book.Shelved, forced bool) error {
	fields, err := w.shelved(list)
	if err != nil {
		return err
	}
	left, err := w.setShelf(fields, forced)
	if err != nil || len(left) > 0 {
		return clashOr(err, "", left)
	}
	return nil
}

// laying is the share of keeping a step that it takes to write its comparables as documents. Ours.
const laying = 0.2

// shelved returns what changes to comparables alter, field by field. Errors: [ErrRefused] when one holds a number that is not finite.
func (w *work) shelved(list []book.Shelved) (fields []field, err error) {
	var last int64
	if slices.ContainsFunc(list, func(x book.Shelved) bool { return x.Before == nil }) {
		last, err = w.lastPlace()
	}
	for i, x := range list {
		if i%rackRows == 0 {
			book.Tell(w.ctx, laying*float64(i)/float64(len(list)))
		}
		var f field
		switch {
		case err != nil:
			return nil, err
		case x.Before == nil:
			last++
			f, err = wholly(last, nil, x.After)
		case x.After == nil:
			f, err = wholly(x.Before.ID, x.Before, nil)
		default:
			before, err1 := treeOf(x.Before)
			after, err2 := treeOf(x.After)
			err = cmp.Or(err1, err2)
			fields = append(fields, compare([]string{strconv.FormatInt(x.Before.ID, 10)}, before, after)...)
			continue
		}
		fields = append(fields, f)
	}
	return fields, err
}

// wholly returns the field of a comparable that comes to a place, or goes from it.
func wholly(id int64, before, after *book.Comparable) (field, error) {
	f := field{Path: []string{strconv.FormatInt(id, 10)}}
	body, err := json.Marshal(cmp.Or(after, before))
	if f.After = body; after == nil {
		f.Before, f.After = body, nil
	}
	if err != nil {
		return f, fmt.Errorf("%w: a comparable (%w)", ErrRefused, err)
	}
	return f, nil
}

// lastPlace returns the highest place on the shelf that was ever given.
func (p place) lastPlace() (id int64, err error) {
	err = p.row(`SELECT max(coalesce((SELECT seq FROM sqlite_sequence WHERE name = 'shelf'), 0),
		coalesce((SELECT max(id) FROM shelf), 0))`).Scan(&id)
	return id, err
}

// placeOf is the inverse of writing a place in words; 0 for none.
func placeOf(name string) int64 {
	id, err := strconv.ParseInt(name, 10, 64)
	if err != nil {
		return 0
	}
	return id
}
