package store

import (
	"database/sql"

	"walkline/valuation"
	"walkline/valuation/lot"
)

func insertDamage(p place, position int, d lot.Damage) error {
	return p.exec(`INSERT INTO surveys (lot, position, area, extent, depth, note) VALUES (?, ?, ?, ?, ?, ?)`,
		p.lot, position, d.Area, d.Extent, d.Depth, d.Note)
}

func scanDamage(p place, c *valuation.Case) error {
	return p.each(`SELECT area, extent, depth, note FROM surveys WHERE lot = ? ORDER BY position`, func(rows *sql.Rows) error {
		var d lot.Damage
		err := rows.Scan(&d.Area, &d.Extent, &d.Depth, &d.Note)
		c.Damage = append(c.Damage, d)
		return err
	})
}

func insertFinding(p place, position int, f finding) error {
	return p.exec(`INSERT INTO findings (lot, position, finding, answer) VALUES (?, ?, ?, ?)`, p.lot, position, f.ID, f.Answer)
}

func scanFindings(p place, c *valuation.Case) error {
	return p.each(`SELECT finding, answer FROM findings WHERE lot = ? ORDER BY position`, func(rows *sql.Rows) error {
		var f finding
		err := rows.Scan(&f.ID, &f.Answer)
		if c.Findings == nil {
			c.Findings = map[string]string{}
		}
		c.Findings[f.ID] = f.Answer
		return err
	})
}
