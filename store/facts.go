package store

import (
	"context"
	"database/sql"
	"encoding/json"

	"walkline/valuation"
)

// insertLot adds a lot in its first state with the facts of c and returns its id.
func insertLot(ctx context.Context, tx *sql.Tx, c valuation.Case, state, savedAt string) (int64, error) {
	l := c.Lot
	brands, loss, airbags := lists(c)
	done, err := tx.ExecContext(ctx, `INSERT INTO lots (state, saved_at, format, currency, valued_on, number, sale, sale_date, vin,
			model_year, make, model, trim, odometer, odometer_unit, odometer_status,
			title_issued_in, title_document, title_brands, register_in, loss, condition, keys, airbags)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?, ?, ?)`,
		state, savedAt, c.Format, c.Currency, c.ValuedOn, l.Number, l.Sale, l.SaleDate, l.VIN,
		l.ModelYear, l.Make, l.Model, l.Trim, l.Odometer, l.OdometerUnit, l.OdometerStatus,
		l.Title.IssuedIn, l.Title.Document, brands, l.Title.RegisterIn, loss, l.Condition, l.Keys, airbags)
	if err != nil {
		return 0, err
	}
	return done.LastInsertId()
}

// updateFacts writes the facts of c to the columns of a lot.
func updateFacts(ctx context.Context, tx *sql.Tx, id int64, c valuation.Case) error {
	l := c.Lot
	brands, loss, airbags := lists(c)
	_, err := tx.ExecContext(ctx, `UPDATE lots SET format = ?, currency = ?, valued_on = ?, number = ?, sale = ?, sale_date = ?, vin = ?,
			model_year = ?, make = ?, model = ?, trim = ?, odometer = ?, odometer_unit = ?, odometer_status = ?,
			title_issued_in = ?, title_document = ?, title_brands = ?, register_in = ?, loss = ?, condition = ?, keys = ?, airbags = ?
		WHERE id = ?`,
		c.Format, c.Currency, c.ValuedOn, l.Number, l.Sale, l.SaleDate, l.VIN,
		l.ModelYear, l.Make, l.Model, l.Trim, l.Odometer, l.OdometerUnit, l.OdometerStatus,
		l.Title.IssuedIn, l.Title.Document, brands, l.Title.RegisterIn, loss, l.Condition, l.Keys, airbags, id)
	return err
}

// scanFacts reads the facts of a lot that is not removed into c.
func scanFacts(ctx context.Context, tx *sql.Tx, id int64, c *valuation.Case) error {
	l := &c.Lot
	var brands, loss, airbags []byte
	err := tx.QueryRowContext(ctx, `SELECT format, currency, valued_on, number, sale, sale_date, vin,
			model_year, make, model, trim, odometer, odometer_unit, odometer_status,
			title_issued_in, title_document, title_brands, register_in, loss, condition, keys, airbags
		FROM lots WHERE id = ? AND removed_at IS NULL`, id).Scan(
		&c.Format, &c.Currency, &c.ValuedOn, &l.Number, &l.Sale, &l.SaleDate, &l.VIN,
		&l.ModelYear, &l.Make, &l.Model, &l.Trim, &l.Odometer, &l.OdometerUnit, &l.OdometerStatus,
		&l.Title.IssuedIn, &l.Title.Document, &brands, &l.Title.RegisterIn, &loss, &l.Condition, &l.Keys, &airbags)
	if err != nil {
		return err
	}
	for _, list := range []struct {
		part string
		text []byte
		into *[]string
	}{{"title_brands", brands, &l.Title.Brands}, {"loss", loss, &l.Loss}, {"airbags", airbags, &l.Airbags}} {
		if err := decode(list.part, list.text, list.into); err != nil {
			return err
		}
	}
	return nil
}

// lists returns the lists among the facts as JSON.
func lists(c valuation.Case) (brands, loss, airbags string) {
	return text(c.Lot.Title.Brands), text(c.Lot.Loss), text(c.Lot.Airbags)
}

// text returns v as JSON. It panics on a number that is not finite, which [change.text] has refused before.
func text(v any) string {
	t, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return string(t)
}

// writeTerms writes the documents of ch that are not facts.
func writeTerms(ctx context.Context, tx *sql.Tx, id int64, ch change) error {
	for part, s := range ch.Documents {
		if isFact(part) {
			continue
		}
		_, err := tx.ExecContext(ctx, `INSERT INTO terms (lot, part, body) VALUES (?, ?, ?)
			ON CONFLICT (lot, part) DO UPDATE SET body = excluded.body`, id, part, string(s.After))
		if err != nil {
			return err
		}
	}
	return nil
}

// scanTerms reads the documents of a lot into c; a part that an older file lacks keeps what c has.
func scanTerms(ctx context.Context, tx *sql.Tx, id int64, c *valuation.Case) error {
	rows, err := tx.QueryContext(ctx, `SELECT part, body FROM terms WHERE lot = ?`, id)
	if err != nil {
		return err
	}
	defer rows.Close()
	places := documents(c)
	for rows.Next() {
		var part string
		var body []byte
		if err := rows.Scan(&part, &body); err != nil {
			return err
		}
		if err := decode(part, body, places[part]); err != nil {
			return err
		}
	}
	return rows.Err()
}
