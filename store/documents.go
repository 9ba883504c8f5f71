package store

import (
	"database/sql"
	"encoding/json"
	"fmt"
	"hash/crc32"
	"reflect"

	"walkline/store/book"
)

// pageItems is how many items of a list one document holds, so that a change of one of thousands writes little. Ours.
const pageItems = 50

// bodies returns the documents of a lot by their part, the pages of a list put together.
func (p place) bodies(id int64, only string) (map[string]json.RawMessage, error) {
	all := map[string]json.RawMessage{}
	return all, p.each(`SELECT `+summed+` FROM documents WHERE lot = ? `+only+` ORDER BY part, page`, func(rows *sql.Rows) error {
		part, body, err := scanSummed(rows)
		if err != nil {
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
	return p.exec(`INSERT INTO documents (lot, part, page, body, sum) VALUES (?, ?, ?, ?, ?)
		ON CONFLICT (lot, part, page) DO UPDATE SET body = excluded.body, sum = excluded.sum`, id, part, page, body, sumOf(id, part, page, body))
}

// encoded returns a document as it is kept.
func encoded(part string, v any) (string, error) {
	body, err := json.Marshal(v)
	if err != nil {
		return "", fmt.Errorf("%w: %s (%w)", ErrRefused, part, err)
	}
	return string(body), nil
}

// sumOf returns the CRC-32 of a document and of where it stands. SQLite has no sums of its own: a bit that flips in a figure would pass
// for another figure.
func sumOf(id int64, part string, page int, body string) int64 {
	return int64(crc32.ChecksumIEEE(fmt.Appendf(nil, "%d %s %d %s", id, part, page, body)))
}

// summed are the columns that [scanSummed] reads.
const summed = `lot, part, page, body, sum`

// scanSummed returns a document. One that was last written before there were sums has none. Errors: [ErrDamaged].
func scanSummed(rows *sql.Rows) (part string, body []byte, err error) {
	var id int64
	var page int
	var sum sql.NullInt64
	if err := rows.Scan(&id, &part, &page, &body, &sum); err != nil {
		return part, nil, err
	}
	if sum.Valid && sum.Int64 != sumOf(id, part, page, string(body)) {
		return part, nil, fmt.Errorf("%w: %w (%s)", ErrDamaged, ErrAltered, part)
	}
	return part, body, nil
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
