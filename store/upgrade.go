package store

import (
	"database/sql"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// upgrade moves a file of format 4, within the migration to format 5, from rows and columns to documents. It knows the old tables
// and the keys of their day, and nothing of today's types, so that it stays right when these grow.
type upgrade struct{ place }

// run moves every lot, and then the history.
func (u upgrade) run() error {
	lots, err := u.rows(`SELECT id FROM lots`)
	if err != nil {
		return err
	}
	for _, l := range lots {
		if err := u.lot(l["id"].(int64)); err != nil {
			return fmt.Errorf("lot %v: %w", l["id"], err)
		}
	}
	return u.steps()
}

// oldLists are the rows of format 4 that become lists of their own, and where their terms said what a list without items is.
// A column's name is the key that it becomes: a point goes into an object, ! is JSON, ? is true or false.
var oldLists = []struct{ part, within, query string }{
	{"damage", "damage", `SELECT area, extent, depth, note FROM surveys WHERE lot = ? ORDER BY position`},
	{"lines", "repair", `SELECT line AS id, job, area, operation, chance, hours AS "hours!", materials_low AS "materials.low",
		materials_likely AS "materials.likely", materials_high AS "materials.high", outside_low AS "outside.low",
		outside_likely AS "outside.likely", outside_high AS "outside.high", parts AS "parts!", loading, why, caution, edited AS "edited?",
		removed AS "removed?" FROM repair_lines WHERE lot = ? ORDER BY position`},
	{"risks", "hidden", `SELECT risk AS id, name, present AS "chance.a", absent AS "chance.b", cost_low AS "cost.low",
		cost_likely AS "cost.likely", cost_high AS "cost.high", hours AS "hours!", days_low AS "days.low", days_likely AS "days.likely",
		days_high AS "days.high", loading, evidence AS "findings!", why, caution, removed AS "removed?"
		FROM risks WHERE lot = ? ORDER BY position`},
	{"rows", "resale", `SELECT comparable AS id, price, kind, date, model_year, make, model, trim, mileage, mileage_unit, title,
		distance_mi AS distance, condition, note, source, more AS "more!", excluded AS "excluded?"
		FROM comparables WHERE lot = ? ORDER BY position`},
	{"photos", "", `SELECT hash, kind, name, width, height, taken, area, stage, caption FROM photos WHERE lot = ? ORDER BY position`},
}

// oldBuild are the rows of what came of a lot.
var oldBuild = []struct{ key, query string }{
	{"charges", `SELECT name, amount FROM charges WHERE lot = ? ORDER BY position`},
	{"receipts", `SELECT date, what, amount, kind, line, source, trade, donor, file, file_hash AS hash FROM receipts
		WHERE lot = ? ORDER BY position`},
	{"hours", `SELECT date, trade, line, hours, what FROM hours_worked WHERE lot = ? ORDER BY position`},
	{"risks", `SELECT risk, state FROM risks_seen WHERE lot = ? ORDER BY position`},
	{"done", `SELECT line FROM lines_done WHERE lot = ? ORDER BY position`},
}

// lot moves what is kept of one lot.
func (u upgrade) lot(id int64) error {
	documents, err := u.facts(id)
	if err != nil {
		return err
	}
	for _, of := range oldLists {
		items, err := u.rows(of.query, id)
		if err != nil {
			return err
		}
		documents[of.part] = listed4(items, emptied(documents, of.within, of.part))
	}
	answers, err := u.rows(`SELECT finding, answer FROM findings WHERE lot = ?`, id)
	if err != nil {
		return err
	}
	for _, a := range answers {
		documents["findings"] = with(documents["findings"], []string{a["finding"].(string)}, a["answer"])
	}
	if documents["build"], err = u.build(id); err != nil {
		return err
	}
	for part, tree := range documents {
		pages := []any{tree}
		if items, ok := tree.([]map[string]any); ok {
			pages = nil
			for page := range slices.Chunk(items, pageItems) {
				pages = append(pages, page)
			}
		}
		for page, v := range pages {
			body, err := encoded(part, v)
			if err != nil {
				return err
			}
			if err := u.exec(`INSERT INTO documents (lot, part, page, body) VALUES (?, ?, ?, ?)`, id, part, page, body); err != nil {
				return err
			}
		}
	}
	return nil
}

// facts returns the columns of a lot and its terms as documents.
func (u upgrade) facts(id int64) (map[string]any, error) {
	documents := map[string]any{}
	heads, err := u.rows(`SELECT format, currency, valued_on, number AS "lot.number", sale AS "lot.sale", sale_date AS "lot.sale_date",
		vin AS "lot.vin", model_year AS "lot.model_year", make AS "lot.make", model AS "lot.model", trim AS "lot.trim",
		odometer AS "lot.odometer",
		odometer_unit AS "lot.odometer_unit", odometer_status AS "lot.odometer_status", title_issued_in AS "lot.title.issued_in",
		title_document AS "lot.title.document", title_brands AS "lot.title.brands!", register_in AS "lot.title.register_in",
		loss AS "lot.loss!", condition AS "lot.condition", keys AS "lot.keys?", airbags AS "lot.airbags_deployed!" FROM lots WHERE id = ?`, id)
	if err != nil {
		return nil, err
	}
	terms, err := u.rows(`SELECT part, body AS "body!" FROM terms WHERE lot = ?`, id)
	if err != nil {
		return nil, err
	}
	for key, v := range heads[0] {
		documents[key] = v
	}
	for _, t := range terms {
		documents[t["part"].(string)] = t["body"]
	}
	return documents, nil
}

// emptied returns what a list without items is, as its document of old says, and takes it out of that document.
func emptied(documents map[string]any, within, key string) any {
	if within == key {
		return documents[within]
	}
	document, ok := documents[within].(map[string]any)
	if !ok {
		return nil
	}
	none := document[key]
	document[key] = nil
	return none
}

// listed4 returns rows as a list.
func listed4(items []map[string]any, none any) any {
	if len(items) == 0 {
		return none
	}
	return items
}

// build returns what came of a lot as a document.
func (u upgrade) build(id int64) (any, error) {
	heads, err := u.rows(`SELECT outcome, hammer, bought AS "dates.bought", home AS "dates.home", started AS "dates.started",
		finished AS "dates.finished", inspected AS "dates.inspected", listed AS "dates.listed", sold AS "dates.sold", sale_price AS "sale.price",
		first_asked AS "sale.first_asked", days_on_market AS "sale.days", brand AS "sale.brand", otherwise AS "otherwise!", note,
		imported_as AS "imported.as", imported_row AS "imported.row" FROM builds WHERE lot = ?`, id)
	if err != nil {
		return nil, err
	}
	document := map[string]any{}
	if len(heads) > 0 {
		document = heads[0]
	}
	for _, of := range oldBuild {
		items, err := u.rows(of.query, id)
		if err != nil {
			return nil, err
		}
		document[of.key] = listed4(items, nil)
		if of.key == "done" && len(items) > 0 {
			lines := []any{}
			for _, item := range items {
				lines = append(lines, item["line"])
			}
			document[of.key] = lines
		}
	}
	return document, nil
}

// rows returns the rows of a query as objects.
func (u upgrade) rows(query string, args ...any) (all []map[string]any, err error) {
	err = u.each(query, func(rows *sql.Rows) error {
		columns, err := rows.Columns()
		if err != nil {
			return err
		}
		values, into := make([]any, len(columns)), make([]any, len(columns))
		for i := range values {
			into[i] = &values[i]
		}
		if err := rows.Scan(into...); err != nil {
			return err
		}
		object := map[string]any{}
		for i, column := range columns {
			if err := place4(object, column, values[i]); err != nil {
				return err
			}
		}
		all = append(all, object)
		return nil
	}, args...)
	return all, err
}

// place4 puts the value of a column where its name says.
func place4(object map[string]any, column string, v any) (err error) {
	name := strings.TrimRight(column, "!?")
	switch {
	case strings.HasSuffix(column, "!"):
		if v, err = parse(json.RawMessage(v.(string))); err != nil {
			return err
		}
	case strings.HasSuffix(column, "?") && v != nil:
		v = v.(int64) == 1
	}
	if path := strings.Split(name, "."); !slices.Contains(path, "") {
		with(object, path, v)
	}
	return nil
}
