package desk

import (
	"cmp"
	"context"
	"errors"
	"reflect"
	"walkline/store/book"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// Taken is what came of a table of comparables.
type Taken struct {
	Counts  Counts
	Refused []Refusal
	done    book.Done
}

// Take puts the rows of a sheet on the shelf, in one step of the open lot's worksheet, or of the shelf where none is open. A row that
// names no make and model is taken for one of the open lot's. It may run on any goroutine: of the state it only takes which lot is open.
// Errors: the table can't be read or kept; nothing is kept then.
func (d *Desk) Take(ctx context.Context, s State, sheet Sheet) (Taken, error) {
	reading, ctx := halves(ctx)
	incoming, refused, err := d.Importer.Read(sheet.watched(reading))
	if err = cmp.Or(err, ctx.Err()); err != nil {
		return Taken{}, err
	}
	book.Tell(reading, 1) // all at once, where it was read for the preview
	shelf, err := d.Book.Shelf(ctx)
	if err != nil {
		return Taken{}, err
	}
	m := d.taking(s, sheet)
	m.hold(shelf)
	for i := range incoming {
		if r := &incoming[i]; r.Make == "" && r.Model == "" && m.open != nil {
			r.Make, r.Model = m.open.Case.Lot.Make, m.open.Case.Lot.Model
		}
	}
	rows, counts := d.Importer.Merge(m.rows, incoming)
	counts.Read, counts.Refused = len(incoming)+len(refused), len(refused)
	done, err := d.Book.Do(ctx, m.step(rows))
	if err != nil {
		return Taken{}, err
	}
	return Taken{counts, refused, done}, d.remember(context.WithoutCancel(ctx), ofComparables, sheet)
}

// TakeFor returns how a table is taken in that was read for a lot, 0 for the shelf: as [Desk.Take] does. Errors: another page is in sight
// by then, whose currency and vehicle the table was not read for.
func (d *Desk) TakeFor(id int64) func(context.Context, State, Sheet) (Taken, error) {
	return func(ctx context.Context, s State, sheet Sheet) (Taken, error) {
		if s.forLot() != id {
			return Taken{}, errors.New("another page was opened since the table was read; read it again there")
		}
		return d.Take(ctx, s, sheet)
	}
}

// forLot returns the lot in sight, for which comparables are taken in; 0: none is.
func (s State) forLot() int64 {
	if o := s.Before(); o != nil {
		return o.ID
	}
	return 0
}

// shelving is a table on its way to the shelf, beside the rows that it meets there: first those that the open lot has of its own.
type shelving struct {
	subject  book.Subject
	open     *Open
	currency string
	from     string
	today    lot.Date
	rows     []resale.Row
	loose    int               // so many of the rows are the lot's own
	places   []book.Comparable // of the others, in their order
}

func (d *Desk) taking(s State, sheet Sheet) *shelving {
	m := &shelving{subject: s.ofShelf(), currency: sheet.Stated.Currency, from: sheet.Name, today: d.Today()}
	if m.subject != book.Bench(ShelfSection) {
		m.open, m.currency = s.Open, s.Open.Case.Currency
	}
	if m.currency == "" {
		m.currency = s.Shop.Currency
	}
	return m
}

// Before returns the lot that is in sight, for which comparables are taken in; nil: none is.
func (s State) Before() *Open {
	if s.Place.ofALot() {
		return s.Open
	}
	return nil
}

// ofShelf returns whose step a change of the shelf is: the open lot's, or that of the shelf's own page.
func (s State) ofShelf() book.Subject {
	if o := s.Before(); o != nil {
		return book.Worksheet(o.ID)
	}
	return book.Bench(ShelfSection)
}

// hold takes the rows that a table may meet.
func (m *shelving) hold(shelf []book.Comparable) {
	if m.open != nil {
		for _, r := range m.open.kept.Case.Resale.Rows {
			if !onShelf(r) {
				m.rows = append(m.rows, r)
			}
		}
	}
	m.loose = len(m.rows)
	for _, c := range shelf {
		if c.Currency == m.currency {
			m.rows, m.places = append(m.rows, c.Row), append(m.places, c)
		}
	}
}

// step returns the step that makes of the rows that were held others, and more of them.
func (m *shelving) step(rows []resale.Row) book.Step {
	step := book.Step{Subject: m.subject, Label: "import comparables"}
	for i, r := range rows[m.loose:] {
		if i >= len(m.places) {
			c := book.Comparable{Row: r, Currency: m.currency, From: m.from, On: m.today}
			if m.open != nil {
				c.Lot = m.open.ID
			}
			step.Shelf = append(step.Shelf, book.Shelved{After: &c})
			continue
		}
		before, after := &m.places[i], m.places[i]
		if reflect.DeepEqual(before.Row, r) {
			continue
		}
		after.Row = r
		if before.Row.Price != r.Price || sold(before.Row, r) {
			after = before.After(r)
		}
		step.Shelf = append(step.Shelf, book.Shelved{Before: before, After: &after})
	}
	if m.open != nil && m.loose > 0 {
		after := m.open.kept.Clone()
		after.Case.Resale.Rows = withLoose(after.Case.Resale.Rows, rows[:m.loose])
		step.Lots = []book.Change{{Before: m.open.kept, After: after}}
	}
	return step
}

// sold reports whether a vehicle that was asked for is now sold.
func sold(before, after resale.Row) bool { return before.Kind != "sold" && after.Kind == "sold" }

// TakenIn is the state after a table of comparables has been taken in, or could not be.
func (d *Desk) TakenIn(ctx context.Context, s State, t Taken, err error) State {
	if err != nil {
		return s.troubled("take the comparables in", err)
	}
	return d.reach(ctx, ifKept(noted(s, d.shown(ctx, s.said(""), t.done), "comparables"), t.Counts.words()))
}
