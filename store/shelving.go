package store

import (
	"database/sql"
	"encoding/json"
	"fmt"
)

// shelving moves the comparables of all lots to the shelf, within the migration to format 7. A vehicle that several lots have is one
// row there. Each lot keeps its rows as its own choice, told where they lie, and so do the steps of its history, so that all of them can be
// taken back as before. It knows the keys of their day, and nothing of today's types.
type shelving struct {
	place
	at   map[string]int64 // by what a row says
	lots map[int64]string // the currency of each lot
	day  map[int64]string // and the day on which it was saved last; empty: it is removed
}

// tree7 is a row of comparables, or any other object, as JSON has it.
type tree7 = map[string]any

// run moves the rows of every lot, oldest first, and then tells the history.
func (s shelving) run() error {
	s.at, s.lots, s.day = map[string]int64{}, map[int64]string{}, map[int64]string{}
	err := s.each(`SELECT id, currency, CASE WHEN removed_at IS NULL THEN substr(saved_at, 1, 10) ELSE '' END FROM lots`,
		func(rows *sql.Rows) error {
			var id int64
			var currency, day string
			err := rows.Scan(&id, &currency, &day)
			s.lots[id], s.day[id] = currency, day
			return err
		})
	if err != nil {
		return err
	}
	err = s.rewrite(`SELECT rowid, lot, body FROM documents WHERE part = 'rows' ORDER BY lot, page`,
		`UPDATE documents SET body = ? WHERE rowid = ?`, func(lot int64, tree any) (bool, error) { return s.told(lot, tree, s.day[lot] != "") })
	if err != nil {
		return err
	}
	return s.rewrite(`SELECT number, 0, change FROM steps WHERE change LIKE '%"rows"%'`, `UPDATE steps SET change = ? WHERE number = ?`,
		func(_ int64, tree any) (bool, error) { return s.step(tree) })
}

// rewrite changes documents that a query finds with their ids and lots, where change says that it did.
func (s shelving) rewrite(query, update string, change func(lot int64, tree any) (bool, error)) error {
	type found struct {
		id, lot int64
		body    []byte
	}
	var all []found
	err := s.each(query, func(rows *sql.Rows) error {
		var f found
		err := rows.Scan(&f.id, &f.lot, &f.body)
		all = append(all, f)
		return err
	})
	if err != nil {
		return err
	}
	for _, f := range all {
		tree, err := parse(f.body)
		if err != nil {
			return fmt.Errorf("document %d: %w", f.id, err)
		}
		changed, err := change(f.lot, tree)
		if err == nil && changed {
			err = s.exec(update, string(raw(tree)), f.id)
		}
		if err != nil {
			return fmt.Errorf("document %d: %w", f.id, err)
		}
	}
	return nil
}

// step tells the rows of a step where they lie.
func (s shelving) step(tree any) (changed bool, err error) {
	lots, _ := under(object7(tree), "lots").([]any)
	for _, l := range lots {
		lot := object7(l)
		id, err := json.Number(fmt.Sprint(lot["lot"])).Int64()
		if err != nil {
			return false, err
		}
		rows := object7(object7(lot["lists"])["rows"])
		for _, side := range []string{"out", "in"} {
			told, err := s.told(id, rows[side], false)
			if err != nil {
				return false, err
			}
			changed = changed || told
		}
	}
	return changed, nil
}

func object7(tree any) tree7 {
	object, _ := tree.(tree7)
	return object
}

// told writes into rows of a lot where they lie on the shelf, and lays those there that are not, where it may.
func (s shelving) told(lot int64, tree any, lay bool) (changed bool, err error) {
	rows, _ := tree.([]any)
	for _, r := range rows {
		row := object7(r)
		if row == nil {
			continue
		}
		says := s.says(lot, row)
		at, there := s.at[says]
		if !there && lay {
			if at, err = s.lay(lot, row); err != nil {
				return changed, err
			}
			s.at[says] = at
		}
		if at != 0 {
			row["shelf"] = json.Number(fmt.Sprint(at))
			changed = true
		}
	}
	return changed, nil
}

// says returns what a row says, without what is the lot's own: what it calls the row, and the tick.
func (s shelving) says(lot int64, row tree7) string {
	bare := tree7{"currency": s.lots[lot]}
	for key, v := range row {
		if key != "id" && key != "excluded" && key != "shelf" && !blank(v) {
			bare[key] = v
		}
	}
	return string(raw(bare))
}

// lay puts a row of a lot on the shelf. Errors: none but those of the file.
func (s shelving) lay(lot int64, row tree7) (int64, error) {
	kept := tree7{}
	for key, v := range row {
		kept[key] = v
	}
	kept["excluded"] = false
	return s.insert(`INSERT INTO shelf (body) VALUES (?)`, string(raw(tree7{"row": kept, "currency": s.lots[lot], "from": row["source"],
		"on": s.day[lot], "lot": json.Number(fmt.Sprint(lot))})))
}
