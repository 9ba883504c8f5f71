package store

import (
	"database/sql"
	"encoding/json"

	"walkline/valuation"
	"walkline/valuation/lot"
)

// insertLot adds a lot, to look at, with the facts of c and returns its id.
func insertLot(p place, c valuation.Case, savedAt string) (int64, error) {
	l := c.Lot
	brands, loss, airbags := lists(c)
	done, err := p.tx.ExecContext(p.ctx, `INSERT INTO lots (state, saved_at, format, currency, valued_on, number, sale, sale_date, vin,
			model_year, make, model, trim, odometer, odometer_unit, odometer_status,
			title_issued_in, title_document, title_brands, register_in, loss, condition, keys, airbags)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?, ?, ?)`,
		lot.ToLookAt, savedAt, c.Format, c.Currency, c.ValuedOn, l.Number, l.Sale, l.SaleDate, l.VIN,
		l.ModelYear, l.Make, l.Model, l.Trim, l.Odometer, l.OdometerUnit, l.OdometerStatus,
		l.Title.IssuedIn, l.Title.Document, brands, l.Title.RegisterIn, loss, l.Condition, l.Keys, airbags)
	if err != nil {
		return 0, err
	}
	return done.LastInsertId()
}

// updateFacts writes the facts of c to the columns of a lot.
func updateFacts(p place, c valuation.Case) error {
	l := c.Lot
	brands, loss, airbags := lists(c)
	return p.exec(`UPDATE lots SET format = ?, currency = ?, valued_on = ?, number = ?, sale = ?, sale_date = ?, vin = ?,
			model_year = ?, make = ?, model = ?, trim = ?, odometer = ?, odometer_unit = ?, odometer_status = ?,
			title_issued_in = ?, title_document = ?, title_brands = ?, register_in = ?, loss = ?, condition = ?, keys = ?, airbags = ?
		WHERE id = ?`,
		c.Format, c.Currency, c.ValuedOn, l.Number, l.Sale, l.SaleDate, l.VIN,
		l.ModelYear, l.Make, l.Model, l.Trim, l.Odometer, l.OdometerUnit, l.OdometerStatus,
		l.Title.IssuedIn, l.Title.Document, brands, l.Title.RegisterIn, loss, l.Condition, l.Keys, airbags, p.lot)
}

// factColumns are the columns of the facts, in the order in which [scanFactRow] takes them.
const factColumns = `format, currency, valued_on, number, sale, sale_date, vin,
	model_year, make, model, trim, odometer, odometer_unit, odometer_status,
	title_issued_in, title_document, title_brands, register_in, loss, condition, keys, airbags`

// scanFacts reads the facts of a lot that is not removed into c.
func scanFacts(p place, c *valuation.Case) error {
	return scanFactRow(p.row(`SELECT `+factColumns+` FROM lots WHERE id = ? AND removed_at IS NULL`).Scan, c)
}

// scanFactRow reads the facts of one row into c, and what stands before them into first.
func scanFactRow(scan func(...any) error, c *valuation.Case, first ...any) error {
	l := &c.Lot
	var brands, loss, airbags []byte
	err := scan(append(first, &c.Format, &c.Currency, &c.ValuedOn, &l.Number, &l.Sale, &l.SaleDate, &l.VIN,
		&l.ModelYear, &l.Make, &l.Model, &l.Trim, &l.Odometer, &l.OdometerUnit, &l.OdometerStatus,
		&l.Title.IssuedIn, &l.Title.Document, &brands, &l.Title.RegisterIn, &loss, &l.Condition, &l.Keys, &airbags)...)
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
func writeTerms(p place, ch change) error {
	for part, s := range ch.Documents {
		if isFact(part) {
			continue
		}
		err := p.exec(`INSERT INTO terms (lot, part, body) VALUES (?, ?, ?)
			ON CONFLICT (lot, part) DO UPDATE SET body = excluded.body`, p.lot, part, string(s.After))
		if err != nil {
			return err
		}
	}
	return nil
}

// scanTerms reads the documents of a lot into c; a part that an older file lacks keeps what c has.
func scanTerms(p place, c *valuation.Case) error {
	places := documents(c)
	return p.each(`SELECT part, body FROM terms WHERE lot = ?`, func(rows *sql.Rows) error {
		var part string
		var body []byte
		if err := rows.Scan(&part, &body); err != nil {
			return err
		}
		return decode(part, body, places[part])
	})
}
