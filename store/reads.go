package store

import (
	"bytes"
	"cmp"
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/patterns"
)

// Entries returns every lot that is not removed, archived ones too, by sale day (unknown days last) and number.
func (s *Store) Entries(ctx context.Context) ([]book.Entry, error) {
	list, err := collect(ctx, s, query{"reading the lots", `SELECT l.id, l.state, l.archived, l.number, l.sale, l.sale_date,
			l.model_year, l.make, l.model, l.trim, l.currency, a.decision, a.walk_away, a.binding, a.loss_chance,
			a.mean_profit, a.per_hour, a.revision <> l.revision, a.said, f.body, d.body,
			json_extract(p.body, '$[0]')
		FROM lots l LEFT JOIN answers a ON a.lot = l.id AND ` + intact("answers", "a") + `
		LEFT JOIN documents f ON f.lot = l.id AND f.part = 'lot' AND f.page = 0 AND ` + intact("documents", "f") + `
		LEFT JOIN documents d ON d.lot = l.id AND d.part = 'damage' AND d.page = 0 AND ` + intact("documents", "d") + `
		LEFT JOIN documents p ON p.lot = l.id AND p.part = 'photos' AND p.page = 0 AND ` + intact("documents", "p") + `
		WHERE l.removed_at IS NULL AND ` + intact("lots", "l")}, scanEntry)
	slices.SortFunc(list, func(a, b book.Entry) int { // SQLite would carry whole documents through its sort
		return cmp.Or(byDay(a.SaleDate, b.SaleDate), cmp.Compare(a.Sale, b.Sale), cmp.Compare(len(a.Number), len(b.Number)),
			cmp.Compare(a.Number, b.Number), cmp.Compare(a.ID, b.ID))
	})
	return list, err
}

// byDay compares days, of which an unknown one is the last.
func byDay(a, b lot.Date) int {
	if a == "" || b == "" {
		return cmp.Compare(b, a)
	}
	return cmp.Compare(a, b)
}

func scanEntry(rows *sql.Rows) (book.Entry, error) {
	var e book.Entry
	var a book.Summary
	var decision, binding sql.NullString
	var loss, mean sql.NullFloat64
	var stale sql.NullBool
	var said, facts, damage, photo sql.RawBytes
	err := rows.Scan(&e.ID, &e.State, &e.Archived, &e.Number, &e.Sale, &e.SaleDate, &e.ModelYear, &e.Make, &e.Model, &e.Trim,
		&e.Currency, &decision, &a.WalkAway, &binding, &loss, &mean, &a.PerHour, &stale, &said, &facts, &damage, &photo)
	if decision.Valid {
		a.Decision, a.Binding, a.LossChance, a.MeanProfit, a.Stale = decision.String, binding.String, loss.Float64, mean.Float64, stale.Bool
		e.Answer = &a
	}
	var of lot.Lot
	for _, part := range []struct {
		words string
		body  []byte
		into  any
	}{{"the answer for lot ", said, &a.Said}, {"the facts of lot ", facts, &of}, {"the damage of lot ", damage, &e.Damage},
		{"the first photo of lot ", photo, &e.Photo}} {
		if err == nil && part.body != nil {
			err = decode(part.words+e.Number, json.RawMessage(part.body), part.into)
		}
	}
	e.Listed, e.Odometer, e.Unit, e.Document, e.Brands = of.Listed, of.Odometer, of.OdometerUnit, of.Title.Document, of.Title.Brands
	return e, err
}

// Lots returns what every lot that is not removed says of its vehicle and sale, archived ones too, in the order in which they came.
func (s *Store) Lots(ctx context.Context) ([]book.Listed, error) {
	return collect(ctx, s, query{"reading the lots", `SELECT l.id, l.state, d.body FROM lots l
		JOIN documents d ON d.lot = l.id AND d.part = 'lot' AND ` + intact("documents", "d") + `
		WHERE l.removed_at IS NULL AND ` + intact("lots", "l") + ` ORDER BY l.id`}, func(rows *sql.Rows) (l book.Listed, err error) {
		var body []byte
		if err := rows.Scan(&l.ID, &l.State, &body); err != nil {
			return l, err
		}
		return l, decode("lot", body, &l.Lot)
	})
}

// Surveys returns what the lots turned out to be of which somebody has marked damage or filled in a survey, archived lots too, removed ones
// not.
func (s *Store) Surveys(ctx context.Context) ([]patterns.Seen, error) {
	return collectApart(ctx, s, query{"reading the surveys", `SELECT json_extract(e.body, '$.loss'), d.body, v.body FROM lots l
		JOIN documents e ON e.lot = l.id AND e.part = 'lot' AND ` + intact("documents", "e") + `
		LEFT JOIN documents d ON d.lot = l.id AND d.part = 'damage' AND ` + intact("documents", "d") + `
		LEFT JOIN documents v ON v.lot = l.id AND v.part = 'survey' AND ` + intact("documents", "v") + `
		WHERE l.removed_at IS NULL AND (d.body IS NOT NULL OR v.body IS NOT NULL) AND ` + intact("lots", "l") + ` ORDER BY l.id`},
		func(rows *sql.Rows) (r surveyRow, err error) {
			return r, rows.Scan(&r.loss, &r.damage, &r.survey)
		}, surveyRow.seen)
}

// surveyRow is a survey as it is stored.
type surveyRow struct{ loss, damage, survey []byte }

func (r surveyRow) seen() (s patterns.Seen, err error) {
	for _, of := range []struct {
		name string
		body []byte
		into any
	}{{"the causes of loss", r.loss, &s.Loss}, {"the damage", r.damage, &s.Damage}, {"the survey", r.survey, &s.Survey}} {
		if of.body != nil && err == nil {
			err = decode(of.name, of.body, of.into)
		}
	}
	return s, err
}

// Imports returns the past buys that were taken in from tables, removed ones too.
func (s *Store) Imports(ctx context.Context) ([]book.Import, error) {
	return collect(ctx, s, query{"reading the past buys", `SELECT id, imported_as, imported_row, removed_at IS NOT NULL FROM lots l
		WHERE imported_as <> '' AND ` + intact("lots", "l") + ` ORDER BY id`}, func(rows *sql.Rows) (i book.Import, err error) {
		return i, rows.Scan(&i.Lot, &i.As, &i.Row, &i.Removed)
	})
}

// Builds returns every lot that was won or lost, archived ones too, removed ones not, with what was foretold of it last. What was
// entered of a lot that is marked otherwise since is kept, and is not among them.
func (s *Store) Builds(ctx context.Context) ([]book.Bought, error) {
	list, err := collectApart(ctx, s, query{"reading the builds", `SELECT l.id, l.state, l.archived, l.number, l.sale, l.sale_date, l.vin,
			l.model_year, l.make, l.model, l.trim, l.currency, d.body, l.frozen IS NOT NULL, f.body, json_extract(e.body, '$.loss'),
			json_extract(e.body, '$.condition')
		FROM (SELECT *, (SELECT max(id) FROM predictions WHERE lot = lots.id) AS frozen FROM lots) l
		LEFT JOIN documents d ON d.lot = l.id AND d.part = 'build' AND ` + intact("documents", "d") + `
		LEFT JOIN documents e ON e.lot = l.id AND e.part = 'lot' AND ` + intact("documents", "e") + `
		LEFT JOIN forecasts f ON f.prediction = l.frozen AND ` + intact("forecasts", "f") + `
		WHERE l.removed_at IS NULL AND l.state IN ('won', 'lost') AND ` + intact("lots", "l") + `
		ORDER BY l.id`}, scanBought, boughtRow.bought)
	slices.SortStableFunc(list, func(a, b book.Bought) int { // SQLite would carry whole documents through its sort
		return cmp.Or(byDay(a.SaleDate, b.SaleDate), cmp.Compare(a.Sale, b.Sale))
	})
	return list, err
}

// boughtRow is a bought lot as it is stored.
type boughtRow struct {
	book.Bought
	entered, foretold, loss []byte
}

func scanBought(rows *sql.Rows) (r boughtRow, err error) {
	var condition sql.NullString
	b := &r.Bought
	err = rows.Scan(&b.ID, &b.State, &b.Archived, &b.Number, &b.Sale, &b.SaleDate, &b.VIN, &b.ModelYear, &b.Make, &b.Model, &b.Trim,
		&b.Currency, &r.entered, &b.Frozen, &r.foretold, &r.loss, &condition)
	b.Condition = condition.String
	return r, err
}

// bought returns what the row says. Its long lists are made at their length, about: to let them grow costs as much as to read them.
func (r boughtRow) bought() (b book.Bought, err error) {
	b = r.Bought
	if r.entered != nil {
		b.Build.Receipts = make([]build.Receipt, 0, bytes.Count(r.entered, []byte(`"amount":`)))
		b.Build.Hours = make([]build.Work, 0, bytes.Count(r.entered, []byte(`"hours":`)))
		err = decodeOver("the build", r.entered, &b.Build)
	}
	if err == nil && r.loss != nil {
		err = decode("what wrecked lot "+b.Number, r.loss, &b.Loss)
	}
	if err == nil && r.foretold != nil {
		b.Foretold = &learn.Prediction{Items: make([]learn.Item, 0, bytes.Count(r.foretold, []byte(`"quoted":`)))}
		err = decodeOver("what was forecast of lot "+b.Number, r.foretold, b.Foretold)
	}
	return b, err
}

// frozenCase is the case that was frozen last of a lot, as it was written then.
type frozenCase struct {
	lot    int64
	number string
	file   []byte
}

// FrozenCases returns the case that was frozen last of each lot that is not removed, and a sentence for each that this version
// cannot read.
func (s *Store) FrozenCases(ctx context.Context) (map[int64]valuation.Case, []string, error) {
	files, err := collect(ctx, s, query{"reading the frozen cases", `SELECT l.id, l.number, p.case_file FROM lots l
		JOIN predictions p ON p.id = (SELECT max(id) FROM predictions WHERE lot = l.id) AND ` + intact("predictions", "p") + `
		WHERE l.removed_at IS NULL AND ` + intact("lots", "l")}, func(rows *sql.Rows) (f frozenCase, err error) {
		return f, rows.Scan(&f.lot, &f.number, &f.file)
	})
	cases, doubts := map[int64]valuation.Case{}, []string(nil)
	for _, f := range files {
		c, faults := casefile.Read(f.file)
		if len(faults) > 0 {
			doubts = append(doubts, fmt.Sprintf("The frozen case of lot %s cannot be read: %v.", f.number, faults[0]))
			continue
		}
		cases[f.lot] = c
	}
	slices.Sort(doubts)
	return cases, doubts, err
}

// freeze keeps a prediction of a lot for good; it can never be changed or deleted. A case that could not be read back and valued
// again is not frozen. Errors: [ErrRefused] with the faults of the case.
func (s *Store) freeze(p place, id int64, f book.Prediction) error {
	document := casefile.Write(f.Case)
	if _, faults := casefile.Read(document); len(faults) > 0 {
		err := fmt.Errorf("%w: the case has %d faults", ErrRefused, len(faults))
		for _, fault := range faults {
			err = fmt.Errorf("%w\n%v", err, fault)
		}
		return err
	}
	figures, err := json.Marshal(f.Figures)
	if err != nil {
		return fmt.Errorf("%w: a figure that was forecast (%w)", ErrRefused, err)
	}
	factors, err := json.Marshal(f.Figures.Factors)
	if err != nil {
		return fmt.Errorf("%w: a learned factor (%w)", ErrRefused, err)
	}
	frozen, err := p.insert(`INSERT INTO predictions (lot, frozen_at, case_file, answer, factors, seed, engine) VALUES (?, ?, ?, ?, ?, ?, ?)`,
		id, s.stamp(), string(document), string(casefile.WriteAnswer(f.Answer)), string(factors), f.Case.Run.Seed, f.Figures.Engine)
	if err != nil {
		return err
	}
	if err := p.seal("predictions", `id = ?`, frozen); err != nil {
		return err
	}
	if err := p.exec(`INSERT INTO forecasts (prediction, body) VALUES (?, ?)`, frozen, string(figures)); err != nil {
		return err
	}
	return p.seal("forecasts", `prediction = ?`, frozen)
}
