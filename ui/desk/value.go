package desk

import (
	"context"

	"walkline/store/book"
	"walkline/valuation"
)

// Value values a case with all that the window draws beside it. It touches no state and may run on any goroutine.
// Errors: the case has faults, nothing carries a resale price, or ctx has ended: work that waited for its turn does not begin then.
func (d *Desk) Value(ctx context.Context, c valuation.Case) (Valued, error) {
	return value(ctx, c, d.Knowledge(), d.memory())
}

// ValueLot values a lot of the book as [Desk.Value] does, without what that lot itself went for: its own price says nothing of its odds.
func (d *Desk) ValueLot(ctx context.Context, id int64, c valuation.Case) (Valued, error) {
	return value(ctx, c, d.beside(id), d.memory())
}

func value(ctx context.Context, c valuation.Case, know valuation.Knowledge, memory *valuation.Memory) (Valued, error) {
	if fs := c.Check(); len(fs) > 0 {
		return Valued{}, fs[0]
	}
	a, odds, err := memory.Weigh(ctx, c, know)
	if err != nil {
		return Valued{}, err
	}
	if err := ctx.Err(); err != nil {
		return Valued{}, err
	}
	v := Valued{Of: c, Answer: a, Odds: odds, Plan: valuation.Plan(c, know)}
	v.ByMileage, v.ByYear = memory.Bands(c, know)
	return v, nil
}

// answer values a case, of the lot with that id where it is in the book, without what the window draws beside it. It may run on any
// goroutine. Errors: as [Desk.ValueLot].
func (d *Desk) answer(id int64, c valuation.Case) (valuation.Answer, error) {
	if faults := c.Check(); len(faults) > 0 {
		return valuation.Answer{}, faults[0]
	}
	return d.memory().Value(c, d.beside(id))
}

// Outline lists the work, the hidden damage and the looks of a case that cannot be valued yet, for want of a resale price, say. It
// touches no state and may run on any goroutine. Errors: the case has a fault that stands in the way of that too, the answers
// contradict each other, or ctx has ended before its turn.
func (d *Desk) Outline(ctx context.Context, c valuation.Case) (Valued, error) {
	if faults := c.Check(); len(faults) > 0 && !valuation.Outlined(faults) {
		return Valued{}, faults[0]
	}
	a, err := d.memory().Outline(ctx, c, d.Knowledge())
	return Valued{Of: c, Answer: a, Plan: valuation.Plan(c, d.Knowledge())}, err
}

// memory returns what earlier valuations worked out, or a fresh memory.
func (d *Desk) memory() *valuation.Memory {
	if d.Memory == nil {
		return valuation.NewMemory()
	}
	return d.Memory
}

// Arrived is the state with a valuation that has come back, kept for the Board.
func (d *Desk) Arrived(ctx context.Context, s State, id int64, revision int, v Valued, err error) State {
	next := s.Valued(id, revision, v, err)
	if err != nil || next.Open == nil || !next.Open.Fresh || next.Open.ID != id || next.Open.Revision != revision {
		return next
	}
	if len(next.Open.Tried) > 0 {
		return next // nothing of a try is kept
	}
	if next = d.moved(ctx, next, v.Answer); next.Trouble != s.Trouble {
		return next
	}
	if err := d.Book.NoteAnswer(ctx, book.Answered{Lot: id, Revision: next.Open.kept.Revision, Rests: next.restsNow()}, v.Answer); err != nil {
		return next.troubled("keep the answer for the Board", err)
	}
	return next
}

// OpenSheet returns the table that a file holds, with what was stated for the last table with the same columns.
func (d *Desk) OpenSheet(ctx context.Context, data []byte, o Opening) (Sheet, error) {
	sheet, err := d.Importer.Open(data, o.watched(ctx))
	if err != nil {
		return sheet, err
	}
	_, err = d.recall(ctx, ofComparables, &sheet, d.Importer)
	return sheet, err
}
