package store

import (
	"database/sql"
	"database/sql/driver"
	"encoding/json"
	"slices"
	"strings"

	"walkline/store/book"
)

// rack holds the comparables that a step is about as they stand in its transaction. They are read at once and written at once: a long
// table is one step, and a statement for each of its rows would take many times as long.
type rack struct {
	place
	bodies  map[int64]json.RawMessage // what lies at a place; none: nothing does
	changed []int64
}

// rack returns those that fields are about.
func (p place) rack(fields []field) (*rack, error) {
	r := &rack{place: p, bodies: map[int64]json.RawMessage{}}
	var ids []int64
	for _, f := range fields {
		ids = append(ids, placeOf(f.Path[0]))
	}
	of, err := json.Marshal(ids)
	if err != nil || len(ids) == 0 {
		return r, err
	}
	return r, p.each(`SELECT id, body FROM shelf s WHERE id IN (SELECT value FROM json_each(?)) AND `+intact("shelf", "s"),
		func(rows *sql.Rows) error {
			var id int64
			var body []byte
			err := rows.Scan(&id, &body)
			r.bodies[id] = body
			return err
		}, string(of))
}

// named are the comparables by their places in words; what is done to them goes to made.
func (r *rack) named(made *[]field) named {
	return named{
		func(name string) (json.RawMessage, error) { return r.bodies[placeOf(name)], nil },
		func(name string, body json.RawMessage) error {
			id := placeOf(name)
			r.bodies[id], r.changed = body, append(r.changed, id)
			return nil
		}, made}
}

// setShelf puts fields into the comparables as far as they fit, and returns the paths of those that do not.
func (w *work) setShelf(fields []field, forced bool) (left [][]string, err error) {
	r, err := w.rack(fields)
	if err != nil {
		return nil, err
	}
	if left, err = w.setFields(r.named(&w.made.Shelf), fields, forced); err != nil {
		return nil, err
	}
	return left, r.put()
}

// rackRows is how many comparables one statement writes. Ours.
const rackRows = 200

// racked is the share of keeping a step that its comparables take; its history takes the rest. Ours.
const racked = 0.6

// put writes what was changed.
func (r *rack) put() error {
	slices.Sort(r.changed)
	r.changed = slices.Compact(r.changed)
	var gone []int64
	for n, ids := range slices.Collect(slices.Chunk(r.changed, rackRows)) {
		book.Tell(r.ctx, laying+(racked-laying)*float64(n*rackRows)/float64(len(r.changed)))
		var rows []any
		for _, id := range ids {
			if body := r.bodies[id]; len(body) == 0 {
				gone = append(gone, id)
			} else {
				rows = append(rows, id, string(body), sumOf([]driver.Value{id, string(body)}))
			}
		}
		if len(rows) == 0 {
			continue
		}
		if err := r.exec(`INSERT INTO shelf (id, body, sum) VALUES `+strings.TrimSuffix(strings.Repeat(`(?, ?, ?), `, len(rows)/3), ", ")+
			` ON CONFLICT (id) DO UPDATE SET body = excluded.body, sum = excluded.sum`, rows...); err != nil {
			return err
		}
	}
	of, err := json.Marshal(gone)
	if err != nil || len(gone) == 0 {
		return err
	}
	return r.exec(`DELETE FROM shelf WHERE id IN (SELECT value FROM json_each(?))`, string(of))
}
