package store

import (
	"context"
	"database/sql"

	"walkline/valuation"
	"walkline/valuation/lot"
)

func insertDamage(ctx context.Context, tx *sql.Tx, id int64, position int, d lot.Damage) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO surveys (lot, position, area, extent, depth, note) VALUES (?, ?, ?, ?, ?, ?)`,
		id, position, d.Area, d.Extent, d.Depth, d.Note)
	return err
}

func scanDamage(ctx context.Context, tx *sql.Tx, id int64, c *valuation.Case) error {
	rows, err := tx.QueryContext(ctx, `SELECT area, extent, depth, note FROM surveys WHERE lot = ? ORDER BY position`, id)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var d lot.Damage
		if err := rows.Scan(&d.Area, &d.Extent, &d.Depth, &d.Note); err != nil {
			return err
		}
		c.Damage = append(c.Damage, d)
	}
	return rows.Err()
}

func insertFinding(ctx context.Context, tx *sql.Tx, id int64, position int, f finding) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO findings (lot, position, finding, answer) VALUES (?, ?, ?, ?)`, id, position, f.ID, f.Answer)
	return err
}

func scanFindings(ctx context.Context, tx *sql.Tx, id int64, c *valuation.Case) error {
	rows, err := tx.QueryContext(ctx, `SELECT finding, answer FROM findings WHERE lot = ? ORDER BY position`, id)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var f finding
		if err := rows.Scan(&f.ID, &f.Answer); err != nil {
			return err
		}
		if c.Findings == nil {
			c.Findings = map[string]string{}
		}
		c.Findings[f.ID] = f.Answer
	}
	return rows.Err()
}
