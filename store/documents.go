package store

import (
	"database/sql"
	"encoding/json"
	"fmt"
	"reflect"

	"walkline/store/book"
)

// pageItems is how many items of a list one document holds, so that a change of one of thousands writes little. Ours.
const pageItems = 50

// bodies returns the documents of a lot by their part, the pages of a list put together.
func (p place) bodies(id int64, only string) (map[string]json.RawMessage, error) {
	all := map[string]json.RawMessage{}
	of := `SELECT part, body FROM documents d WHERE lot = ? AND ` + intact("documents", "d") + only + ` ORDER BY part, page`
	return all, p.each(of, func(rows *sql.Rows) error {
		var part string
		var body []byte
		if err := rows.Scan(&part, &body); err != nil {
			return err
		}
		before, more := all[part]
		switch n := len(before); {
		case !more:
			all[part] = body
		case n < 2 || len(body) < 2:
			return fmt.Errorf("%w: a page of the %s can't be read", ErrDamaged, part)
		default:
			all[part] = append(append(before[:n-1], ','), body[1:]...) // of two lists, neither without items
		}
		return nil
	}, id)
}

// putDocument writes one document of a lot, or a page of one. Errors: [ErrRefused] when it holds a number that is not finite.
func (p place) putDocument(id int64, part string, page int, v any) error {
	body, err := encoded(part, v)
	if err != nil {
		return err
	}
	if err := p.exec(`INSERT INTO documents (lot, part, page, body) VALUES (?, ?, ?, ?)
		ON CONFLICT (lot, part, page) DO UPDATE SET body = excluded.body`, id, part, page, body); err != nil {
		return err
	}
	return p.seal("documents", `lot = ? AND part = ? AND page = ?`, id, part, page)
}

// encoded returns a document as it is kept.
func encoded(part string, v any) (string, error) {
	body, err := json.Marshal(v)
	if err != nil {
		return "", fmt.Errorf("%w: %s (%w)", ErrRefused, part, err)
	}
	return string(body), nil
}

// putPages writes the pages of a list of a lot that hold its items from one place up to another, and takes away those that hold
// none any more.
func (p place) putPages(l book.Lot, of list, from, to int) error {
	items := reflect.ValueOf(of.of(&l)).Elem()
	last := max(0, items.Len()-1) / pageItems
	for page := min(from/pageItems, last); page <= last && page*pageItems <= to; page++ {
		part := items
		if items.Len() > 0 {
			part = items.Slice(page*pageItems, min((page+1)*pageItems, items.Len()))
		}
		if err := p.putDocument(l.ID, of.name, page, part.Interface()); err != nil {
			return err
		}
	}
	return p.exec(`DELETE FROM documents WHERE lot = ? AND part = ? AND page > ?`, l.ID, of.name, last)
}
