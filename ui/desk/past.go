package desk

import (
	"cmp"
	"context"

	"walkline/store/book"
	"walkline/valuation/lot"
)

// PastTables reads and writes tables of past buys.
type PastTables interface {
	Tables
	// OpenPast returns what the file holds and how it seems to be meant. Errors: the file is no table, with the reason.
	OpenPast(data []byte, o Opening) (Sheet, error)
	// ReadPast returns the buys that the sheet gives as it is stated, and every refused row.
	ReadPast(s Sheet) ([]Past, []Refusal, error)
	// RefusedPast writes the refused rows as a CSV file that can be corrected and imported again.
	RefusedPast(s Sheet) ([]byte, error)
	// PastTemplate returns a table with what each column means and an example.
	PastTemplate() []byte
}

// OpenPast returns the table of past buys that a file holds, with what was stated for the last one with the same columns.
func (d *Desk) OpenPast(ctx context.Context, data []byte, o Opening) (Sheet, error) {
	sheet, err := d.Past.OpenPast(data, o.watched(ctx))
	if err != nil {
		return sheet, err
	}
	_, err = d.recall(ctx, ofPastBuys, &sheet, d.Past)
	return sheet, err
}

// TakePast keeps the past buys of a sheet among the builds, in one step. It may run on any goroutine: it takes from the state only whose
// history the step belongs to. Errors: the table can't be read or kept; nothing is kept then.
func (d *Desk) TakePast(ctx context.Context, s State, sheet Sheet) (Enlisted, error) {
	reading, ctx := halves(ctx)
	list, refused, err := d.Past.ReadPast(sheet.watched(reading))
	if err = cmp.Or(err, ctx.Err()); err != nil {
		return Enlisted{}, err
	}
	for i := range list {
		facts := list[i].Case
		c := s.Shop.Onto(d.Starter)
		c.Currency, c.Lot, c.Damage, c.ValuedOn = facts.Currency, facts.Lot, facts.Damage, d.Today()
		list[i].Case = c
	}
	step := keeps("import past buys", nil).ofSubject(book.Buys).step(s) // undone on the list of builds, wherever it was done
	counts, err := d.pastStep(ctx, &step, list)
	if err != nil {
		return Enlisted{}, err
	}
	done, err := d.Book.Do(ctx, step)
	if err != nil {
		return Enlisted{}, err
	}
	counts.Read, counts.Refused = len(list)+len(refused), len(refused)
	return Enlisted{Counts: counts, Refused: refused, done: done}, d.remember(context.WithoutCancel(ctx), ofPastBuys, sheet)
}

// PastArrived is the state after past buys have been taken in, or could not be.
func (d *Desk) PastArrived(ctx context.Context, s State, e Enlisted, err error) State {
	if err != nil {
		return s.troubled("take the past buys in", err)
	}
	s = d.readBuilds(ctx, d.refresh(ctx, d.shown(ctx, s, e.done)))
	return d.reach(ctx, ifKept(s, e.Counts.words()))
}

// pastStep adds past buys to a step, as won lots; those that have ended are archived, out of the way of coming sales.
// One that is there, by what its table calls it, with the same row as it was last imported is left alone, whatever was entered by
// hand since; one whose row has changed has its build replaced. A removed one stays removed and counts as the same.
func (d *Desk) pastStep(ctx context.Context, step *book.Step, list []Past) (counts Counts, err error) {
	known, err := d.Book.Imports(ctx)
	if err != nil {
		return counts, err
	}
	there := map[string]book.Import{}
	for _, k := range known {
		there[k.As] = k
	}
	for _, past := range list {
		k, met := there[past.Build.Imported.As]
		switch {
		case !met || past.Build.Imported.As == "":
			counts.New++
			step.New = append(step.New, book.New{State: lot.Won, Archived: past.Build.Outcome.Ended(), Case: past.Case, Build: past.Build})
		case k.Removed || k.Row == past.Build.Imported.Row:
			counts.Same++
		default:
			l, err := d.Book.Lot(ctx, k.Lot)
			if err != nil {
				return counts, err
			}
			after := l.Clone()
			after.Build = past.Build
			if len(after.Case.Damage) == 0 {
				after.Case.Damage = past.Case.Damage
			}
			counts.Changed++
			step.Lots = append(step.Lots, book.Change{Before: l, After: after})
		}
	}
	return counts, nil
}
