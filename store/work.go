package store

import (
	"database/sql"

	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/repair"
)

func insertLine(p place, position int, l repair.Line) error {
	return p.exec(`INSERT INTO repair_lines (lot, position, line, job, area, operation, chance, hours,
			materials_low, materials_likely, materials_high, outside_low, outside_likely, outside_high,
			parts, loading, why, caution, edited, removed)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?)`,
		p.lot, position, l.ID, l.Job, l.Area, l.Operation, l.Chance, text(l.Hours),
		l.Materials.Low, l.Materials.Likely, l.Materials.High, l.Outside.Low, l.Outside.Likely, l.Outside.High,
		text(l.Parts), l.Loading, l.Why, l.Caution, l.Edited, l.Removed)
}

func scanLines(p place, c *valuation.Case) error {
	return p.each(`SELECT line, job, area, operation, chance, hours,
			materials_low, materials_likely, materials_high, outside_low, outside_likely, outside_high,
			parts, loading, why, caution, edited, removed
		FROM repair_lines WHERE lot = ? ORDER BY position`, func(rows *sql.Rows) error {
		l, err := scanLine(rows)
		c.Repair.Lines = append(c.Repair.Lines, l)
		return err
	})
}

func scanLine(rows *sql.Rows) (l repair.Line, err error) {
	var hours, parts []byte
	err = rows.Scan(&l.ID, &l.Job, &l.Area, &l.Operation, &l.Chance, &hours,
		&l.Materials.Low, &l.Materials.Likely, &l.Materials.High, &l.Outside.Low, &l.Outside.Likely, &l.Outside.High,
		&parts, &l.Loading, &l.Why, &l.Caution, &l.Edited, &l.Removed)
	if err != nil {
		return l, err
	}
	if err := decode("hours", hours, &l.Hours); err != nil {
		return l, err
	}
	return l, decode("parts", parts, &l.Parts)
}

func insertRisk(p place, position int, r hidden.Risk) error {
	return p.exec(`INSERT INTO risks (lot, position, risk, name, present, absent,
			cost_low, cost_likely, cost_high, hours, days_low, days_likely, days_high,
			loading, evidence, why, caution, removed, brings)
		VALUES (?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?, ?,  ?, ?, ?, ?, ?, ?)`,
		p.lot, position, r.ID, r.Name, r.Chance.A, r.Chance.B,
		r.Cost.Low, r.Cost.Likely, r.Cost.High, text(r.Hours), r.Days.Low, r.Days.Likely, r.Days.High,
		r.Loading, text(r.Findings), r.Why, r.Caution, r.Removed, text(r.Brings))
}

func scanRisks(p place, c *valuation.Case) error {
	return p.each(`SELECT risk, name, present, absent,
			cost_low, cost_likely, cost_high, hours, days_low, days_likely, days_high,
			loading, evidence, why, caution, removed, brings
		FROM risks WHERE lot = ? ORDER BY position`, func(rows *sql.Rows) error {
		r, err := scanRisk(rows)
		c.Hidden.Risks = append(c.Hidden.Risks, r)
		return err
	})
}

func scanRisk(rows *sql.Rows) (r hidden.Risk, err error) {
	var hours, evidence, brings []byte
	err = rows.Scan(&r.ID, &r.Name, &r.Chance.A, &r.Chance.B,
		&r.Cost.Low, &r.Cost.Likely, &r.Cost.High, &hours, &r.Days.Low, &r.Days.Likely, &r.Days.High,
		&r.Loading, &evidence, &r.Why, &r.Caution, &r.Removed, &brings)
	if err != nil {
		return r, err
	}
	if err := decode("hours", hours, &r.Hours); err != nil {
		return r, err
	}
	if err := decode("brings", brings, &r.Brings); err != nil {
		return r, err
	}
	return r, decode("evidence", evidence, &r.Findings)
}
