package store

import (
	"context"
	"database/sql"

	"walkline/valuation/build"
)

// list is one list of a build and its rows in the file.
type list[T any] struct {
	table, columns string
	of             func(b *build.Build) *[]T
	scan           func(rows *sql.Rows, id *int64, item *T) error
	insert         insertion[T]
}

var (
	chargeList = list[build.Charge]{"charges", "name, amount", func(b *build.Build) *[]build.Charge { return &b.Charges },
		func(rows *sql.Rows, id *int64, c *build.Charge) error { return rows.Scan(id, &c.Name, &c.Amount) },
		func(p place, position int, c build.Charge) error {
			return p.exec(`INSERT INTO charges (lot, position, name, amount) VALUES (?, ?, ?, ?)`, p.lot, position, c.Name, c.Amount)
		}}
	receiptList = list[build.Receipt]{"receipts", "date, what, amount, kind, line, source, trade, donor, file, file_hash",
		func(b *build.Build) *[]build.Receipt { return &b.Receipts }, scanReceipt, insertReceipt}
	hoursList = list[build.Work]{"hours_worked", "date, trade, line, hours, what", func(b *build.Build) *[]build.Work { return &b.Hours },
		func(rows *sql.Rows, id *int64, w *build.Work) error {
			return rows.Scan(id, &w.Date, &w.Trade, &w.Line, &w.Hours, &w.What)
		},
		func(p place, position int, w build.Work) error {
			return p.exec(`INSERT INTO hours_worked (lot, position, date, trade, line, hours, what) VALUES (?, ?, ?, ?, ?, ?, ?)`,
				p.lot, position, w.Date, w.Trade, w.Line, w.Hours, w.What)
		}}
	riskList = list[build.Seen]{"risks_seen", "risk, state", func(b *build.Build) *[]build.Seen { return &b.Risks },
		func(rows *sql.Rows, id *int64, s *build.Seen) error { return rows.Scan(id, &s.Risk, &s.State) },
		func(p place, position int, s build.Seen) error {
			return p.exec(`INSERT INTO risks_seen (lot, position, risk, state) VALUES (?, ?, ?, ?)`, p.lot, position, s.Risk, s.State)
		}}
	doneList = list[string]{"lines_done", "line", func(b *build.Build) *[]string { return &b.Done },
		func(rows *sql.Rows, id *int64, line *string) error { return rows.Scan(id, line) },
		func(p place, position int, line string) error {
			return p.exec(`INSERT INTO lines_done (lot, position, line) VALUES (?, ?, ?)`, p.lot, position, line)
		}}
)

func insertReceipt(p place, position int, r build.Receipt) error {
	return p.exec(`INSERT INTO receipts (lot, position, date, what, amount, kind, line, source, trade, donor, file, file_hash)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		p.lot, position, r.Date, r.What, r.Amount, r.Kind, r.Line, r.Source, r.Trade, r.Donor, r.File, r.Hash)
}

func scanReceipt(rows *sql.Rows, id *int64, r *build.Receipt) error {
	return rows.Scan(id, &r.Date, &r.What, &r.Amount, &r.Kind, &r.Line, &r.Source, &r.Trade, &r.Donor, &r.File, &r.Hash)
}

// listing is a list of a build whatever its rows hold.
type listing interface {
	read(ctx context.Context, tx *sql.Tx, s scope, find func(id int64) *build.Build) error
}

// listings are all lists of a build.
var listings = []listing{chargeList, receiptList, hoursList, riskList, doneList}

// scope says of which lots something is read.
type scope struct {
	where string
	args  []any
}

var everyLot = scope{}

func oneLot(id int64) scope { return scope{" WHERE lot = ?", []any{id}} }

// read adds the rows of the lots in scope to the builds that find gives; a lot whose build is nil is passed over.
func (l list[T]) read(ctx context.Context, tx *sql.Tx, s scope, find func(id int64) *build.Build) error {
	rows, err := tx.QueryContext(ctx, `SELECT lot, `+l.columns+` FROM `+l.table+s.where+` ORDER BY lot, position`, s.args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var id int64
		var item T
		if err := l.scan(rows, &id, &item); err != nil {
			return err
		}
		if b := find(id); b != nil {
			at := l.of(b)
			*at = append(*at, item)
		}
	}
	return rows.Err()
}

// writeHead writes what of a build is no list.
func writeHead(p place, b build.Build) error {
	d, s := b.Dates, b.Sale
	return p.exec(`INSERT INTO builds (lot, outcome, hammer, bought, home, started, finished, inspected, listed, sold,
			sale_price, first_asked, days_on_market, brand, otherwise, note, imported_as, imported_row)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?, ?, ?)
		ON CONFLICT (lot) DO UPDATE SET outcome = excluded.outcome, hammer = excluded.hammer, bought = excluded.bought, home = excluded.home,
			started = excluded.started, finished = excluded.finished, inspected = excluded.inspected, listed = excluded.listed, sold = excluded.sold,
			sale_price = excluded.sale_price, first_asked = excluded.first_asked, days_on_market = excluded.days_on_market,
			brand = excluded.brand, otherwise = excluded.otherwise, note = excluded.note, imported_as = excluded.imported_as,
			imported_row = excluded.imported_row`,
		p.lot, b.Outcome, (*int64)(b.Hammer), d.Bought, d.Home, d.Started, d.Finished, d.Inspected, d.Listed, d.Sold,
		(*int64)(s.Price), (*int64)(s.FirstAsked), s.Days, s.Brand, text(b.Otherwise), b.Note, b.Imported.As, b.Imported.Row)
}

// headColumns are the columns that scanHead reads.
const headColumns = `b.lot, b.outcome, b.hammer, b.bought, b.home, b.started, b.finished, b.inspected, b.listed, b.sold,
	b.sale_price, b.first_asked, b.days_on_market, b.brand, b.otherwise, b.note, b.imported_as, b.imported_row`

func scanHead(rows *sql.Rows) (id int64, b build.Build, err error) {
	d, s := &b.Dates, &b.Sale
	var otherwise []byte
	err = rows.Scan(&id, &b.Outcome, &b.Hammer, &d.Bought, &d.Home, &d.Started, &d.Finished, &d.Inspected, &d.Listed, &d.Sold,
		&s.Price, &s.FirstAsked, &s.Days, &s.Brand, &otherwise, &b.Note, &b.Imported.As, &b.Imported.Row)
	if err != nil {
		return id, b, err
	}
	return id, b, decode("otherwise", otherwise, &b.Otherwise)
}

// keepable reports whether a build is one that the file can tell from none: trades and days are checked by the schema.
func keepable(b build.Build) bool {
	for _, w := range b.Hours {
		if w.Hours != w.Hours || w.Hours < 0 || w.Hours > maxHours {
			return false
		}
	}
	return true
}

// maxHours is more own hours than one entry can hold: a year of them. Ours.
const maxHours = 8784
