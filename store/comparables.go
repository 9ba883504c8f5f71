package store

import (
	"database/sql"

	"walkline/valuation"
	"walkline/valuation/resale"
)

func insertRow(p place, position int, r resale.Row) error {
	return p.exec(`INSERT INTO comparables (lot, position, comparable, price, kind, date, model_year, make, model, trim,
			mileage, mileage_unit, title, distance_mi, condition, note, source, more, excluded)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		p.lot, position, r.ID, int64(r.Price), r.Kind, r.Date, r.ModelYear, r.Make, r.Model, r.Trim,
		r.Mileage, r.Unit, r.Title, r.DistanceMi, r.Condition, r.Note, r.Source, text(r.More), r.Excluded)
}

func scanComparables(p place, c *valuation.Case) error {
	return p.each(`SELECT comparable, price, kind, date, model_year, make, model, trim,
			mileage, mileage_unit, title, distance_mi, condition, note, source, more, excluded
		FROM comparables WHERE lot = ? ORDER BY position`, func(rows *sql.Rows) error {
		r, err := scanRow(rows)
		c.Resale.Rows = append(c.Resale.Rows, r)
		return err
	})
}

func scanRow(rows *sql.Rows) (r resale.Row, err error) {
	var more []byte
	err = rows.Scan(&r.ID, &r.Price, &r.Kind, &r.Date, &r.ModelYear, &r.Make, &r.Model, &r.Trim,
		&r.Mileage, &r.Unit, &r.Title, &r.DistanceMi, &r.Condition, &r.Note, &r.Source, &more, &r.Excluded)
	if err != nil {
		return r, err
	}
	return r, decode("more", more, &r.More)
}
