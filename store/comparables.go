package store

import (
	"context"
	"database/sql"

	"walkline/valuation"
	"walkline/valuation/resale"
)

func insertRow(ctx context.Context, tx *sql.Tx, id int64, position int, r resale.Row) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO comparables (lot, position, comparable, price, kind, date, model_year, make, model, trim,
			mileage, mileage_unit, title, distance_mi, condition, note, source, more, excluded)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		id, position, r.ID, int64(r.Price), r.Kind, r.Date, r.ModelYear, r.Make, r.Model, r.Trim,
		r.Mileage, r.Unit, r.Title, r.DistanceMi, r.Condition, r.Note, r.Source, text(r.More), r.Excluded)
	return err
}

func scanComparables(ctx context.Context, tx *sql.Tx, id int64, c *valuation.Case) error {
	rows, err := tx.QueryContext(ctx, `SELECT comparable, price, kind, date, model_year, make, model, trim,
			mileage, mileage_unit, title, distance_mi, condition, note, source, more, excluded
		FROM comparables WHERE lot = ? ORDER BY position`, id)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		r, err := scanRow(rows)
		if err != nil {
			return err
		}
		c.Resale.Rows = append(c.Resale.Rows, r)
	}
	return rows.Err()
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
