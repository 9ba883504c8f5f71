package desk

import (
	"cmp"
	"context"
	"fmt"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Lister reads run lists: tables of the lots of a sale.
type Lister interface {
	Tables
	// OpenList returns what the file holds and how its columns and figures seem to be meant. Errors: the file is no table, with the reason.
	OpenList(data []byte, o Opening) (Sheet, error)
	// ReadList returns the lots that the sheet gives as it is stated, and every refused row.
	ReadList(s Sheet) ([]ListRow, []Refusal, error)
	// MeetList holds listed lots against those there are.
	MeetList(known []book.Listed, listed []lot.Lot) Meeting
	// RefusedList writes the refused rows of a sheet as a CSV file that can be corrected and imported again.
	RefusedList(s Sheet) ([]byte, error)
}

// Meeting is what the lots of a list are to those there are.
type Meeting struct {
	New     []lot.Lot
	Changed []book.Listed // as they are to be from now on
	Same    int
	Left    []string // what the list says otherwise and is left as it is, in words
	IDs     []int64  // of the known lot that each of the list is, 0 where it is new
}

// Enlisted is what came of a table that was taken in: a run list, or past buys.
type Enlisted struct {
	Counts  Counts
	Refused []Refusal
	Left    []string
	Came    string // what came of hammer prices, in words; empty: there are none
	done    book.Done
}

// OpenList returns the run list that a file holds, with what was stated for the last one with the same columns, but for the
// sale's day.
func (d *Desk) OpenList(ctx context.Context, data []byte, o Opening) (Sheet, error) {
	sheet, err := d.Lister.OpenList(data, o.watched(ctx))
	if err != nil {
		return sheet, err
	}
	found, err := d.recall(ctx, ofRunLists, &sheet, d.Lister)
	if found {
		sheet.Stated.SaleDate = ""
	}
	return sheet, err
}

// Enlist keeps the lots of a run list with the shop's terms, in one step of the Board. It may run on any goroutine: it
// only takes from the state what new lots begin with. Errors: the list can't be read or kept; nothing is kept then.
func (d *Desk) Enlist(ctx context.Context, s State, sheet Sheet) (Enlisted, error) {
	reading, ctx := halves(ctx)
	rows, refused, err := d.Lister.ReadList(sheet.watched(reading))
	if err = cmp.Or(err, ctx.Err()); err != nil {
		return Enlisted{}, err
	}
	known, err := d.Book.Lots(ctx)
	if err != nil {
		return Enlisted{}, err
	}
	listed := make([]lot.Lot, len(rows))
	for i, r := range rows {
		listed[i] = r.Lot
	}
	e, err := d.enlisted(ctx, s, rows, d.Lister.MeetList(known, listed))
	if err != nil {
		return Enlisted{}, err
	}
	done, err := d.Book.Do(ctx, e.step)
	if err != nil {
		return Enlisted{}, err
	}
	counts := Counts{Read: len(rows) + len(refused), New: len(e.step.New), Changed: len(e.step.Lots), Refused: len(refused)}
	counts.Same = len(rows) - counts.New - counts.Changed
	return Enlisted{Counts: counts, Refused: refused, Left: e.said, Came: e.words(), done: done},
		d.remember(context.WithoutCancel(ctx), ofRunLists, sheet)
}

// listed returns the case of a listed lot: the shop's terms, those of its sale's yard where there is one, and its facts.
func (d *Desk) listed(s State, l lot.Lot) valuation.Case {
	c := d.blank(s)
	blank := c.Lot
	c.Lot = l
	for _, word := range []struct {
		at    *string
		blank string
	}{{&c.Lot.OdometerUnit, blank.OdometerUnit}, {&c.Lot.OdometerStatus, blank.OdometerStatus}, {&c.Lot.Condition, blank.Condition}} {
		if *word.at == "" {
			*word.at = word.blank
		}
	}
	return s.Shop.Onto(c)
}

// ListArrived is the state after a run list has been taken in, or could not be.
func (d *Desk) ListArrived(ctx context.Context, s State, e Enlisted, err error) State {
	if err != nil {
		return s.troubled("take the run list in", err)
	}
	said := e.Counts.words() + e.Came
	if n := len(e.Left); n > 0 {
		said += fmt.Sprintf(" %d facts differ from the list and were left: %s.", n, e.Left[0])
	}
	s = d.refresh(ctx, d.shown(ctx, s, e.done))
	return d.reach(ctx, ifKept(s, said))
}
