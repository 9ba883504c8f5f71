package store

import (
	"database/sql"
	"database/sql/driver"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"math"
	"strings"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// SQLite has no sums: a bit that flips in a figure would pass for another figure. So each row has a CRC-32 beside it, over all that it says
// and where it stands. Whoever writes a row seals it, whoever reads one asks for an intact one.

// summed are the tables whose rows have sums: what a row is called, the column that says which it is, and all columns under the sum.
var summed = map[string]struct{ words, key, columns string }{
	"lots":      {"lot", "id", "id, " + listed + ", removed_at, saved_at, revision"},
	"documents": {"part of lot", "lot", "lot, part, page, body"},
	"answers": {"answer for lot", "lot",
		"lot, revision, decision, walk_away, binding, loss_chance, mean_profit, per_hour, noted_at, said"},
	"predictions": {"frozen prediction of lot", "lot", "id, lot, frozen_at, case_file, answer, factors, seed, engine"},
	"forecasts":   {"frozen forecast", "prediction", "prediction, body"},
	"steps":       {"step to undo or redo", "number", "number, subject, label, typing, change, undone, made_at"},
	"shelf":       {"comparable on the shelf", "id", "id, body"},
	"factors":     {"decision on a learned factor", "id", "id, decided_at, decision, factor, words, before, after"},
	"settings":    {"setting", "name", "name, value, saved_at"},
}

func init() {
	sqlite.MustRegisterDeterministicScalarFunction("sum_of", -1, func(_ *sqlite.FunctionContext, row []driver.Value) (driver.Value, error) {
		return sumOf(row), nil
	})
	sqlite.MustRegisterDeterministicScalarFunction("intact", -1, func(_ *sqlite.FunctionContext, a []driver.Value) (driver.Value, error) {
		if sum, ok := a[2].(int64); ok && sum == sumOf(a[3:]) {
			return int64(1), nil
		}
		return nil, fmt.Errorf("%w: %v %v", ErrAltered, a[0], a[1])
	})
}

// sumOf returns the CRC-32 of the values of a row, each with its kind and length.
func sumOf(row []driver.Value) int64 {
	sum, head := crc32.NewIEEE(), make([]byte, 0, 9)
	for _, v := range row {
		switch v := v.(type) {
		case int64:
			sum.Write(binary.BigEndian.AppendUint64(append(head, 'i'), uint64(v)))
		case float64:
			sum.Write(binary.BigEndian.AppendUint64(append(head, 'f'), math.Float64bits(v)))
		case string:
			sum.Write(binary.BigEndian.AppendUint64(append(head, 's'), uint64(len(v))))
			sum.Write([]byte(v))
		case nil:
			sum.Write(append(head, '0'))
		default: // no column is kept as anything else
			fmt.Fprintf(sum, "?%v", v)
		}
	}
	return int64(sum.Sum32())
}

// intact is the condition that a row of a table, which a query calls by a name of its own, is what was written. One that is not ends the
// query. Errors: [ErrDamaged] beside [ErrAltered], with the row that it is.
func intact(table, alias string) string {
	t := summed[table]
	columns := strings.ReplaceAll(t.columns, ", ", ", "+alias+".")
	return fmt.Sprintf("intact('%s', %s.%s, %s.sum, %s.%s)", t.words, alias, t.key, alias, alias, columns)
}

// seal gives rows of a table their sums: whoever writes one calls it in the same transaction.
func (p place) seal(table, where string, args ...any) error {
	return p.exec("UPDATE "+table+" SET sum = sum_of("+summed[table].columns+") WHERE "+where, args...)
}

// alteredIn returns what SQLite says of a row that is not intact, and whether err is that.
func alteredIn(err *sqlite.Error) (words string, ok bool) {
	_, words, ok = strings.Cut(err.Error(), ErrAltered.Error())
	words, _, _ = strings.Cut(words, fmt.Sprintf(" (%d)", sqlite3.SQLITE_ERROR))
	return words, ok && err.Code() == sqlite3.SQLITE_ERROR
}

// sealing gives the rows of a file their sums, within the migration to format 8. A document that is not what its own sum says stays
// without, and so do rows on a damaged page: they are found altered when they are read.
type sealing struct{ place }

func (s sealing) run() error {
	wrong, err := s.altered7()
	if err != nil && !damage(err) {
		return err
	}
	for table := range summed {
		if err := s.table(table); err != nil {
			return err
		}
	}
	for _, at := range wrong {
		if err := s.exec(`UPDATE documents SET sum = NULL WHERE rowid = ?`, at); err != nil {
			return err
		}
	}
	return nil
}

// mostRows is how many rows of a table with a damaged page are sealed one by one. Ours.
const mostRows = 1_000_000

// table seals a table, row by row where not all of it can be read.
func (s sealing) table(name string) error {
	err := s.seal(name, "TRUE")
	if !damage(err) || name == "settings" { // which has no numbers to go by
		return ignoring(err)
	}
	highest := int64(mostRows)
	if s.row(`SELECT max(rowid) FROM `+name).Scan(&highest) != nil {
		highest = 10_000
	}
	for at := int64(1); at <= min(highest, mostRows); at++ {
		if err := ignoring(s.seal(name, "rowid = ?", at)); err != nil {
			return err
		}
	}
	return nil
}

// altered7 finds the documents of a file of format 7 that are not what was written.
func (s sealing) altered7() (wrong []int64, err error) {
	return wrong, s.each(`SELECT rowid, lot, part, page, body, sum FROM documents WHERE sum IS NOT NULL`, func(rows *sql.Rows) error {
		var at, id, sum int64
		var part, body string
		var page int
		err := rows.Scan(&at, &id, &part, &page, &body, &sum)
		if err == nil && sum != int64(crc32.ChecksumIEEE(fmt.Appendf(nil, "%d %s %d %s", id, part, page, body))) {
			wrong = append(wrong, at)
		}
		return err
	})
}

// damage reports whether SQLite could not read a page.
func damage(err error) bool {
	var of *sqlite.Error
	return errors.As(err, &of) && of.Code()&primary == sqlite3.SQLITE_CORRUPT
}

// ignoring returns err unless it is that a page could not be read.
func ignoring(err error) error {
	if damage(err) {
		return nil
	}
	return err
}
