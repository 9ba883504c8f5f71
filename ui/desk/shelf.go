package desk

import (
	"context"
	"slices"
	"sync"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/resale"
)

// ShelfSection is the section of the Bench that shows the shelf of comparables.
const ShelfSection = "Comparables"

// Comparables live on the shop's shelf. A lot draws those that tell about it each time it is read; what is its own are the ticks, and rows
// that it had before there was a shelf. A row of the lot's own that says where it lies on the shelf is no more than a tick: what it says of
// the vehicle is the shelf's.

// drawing remembers which places of a shelf a lot draws: a keystroke in another field changes nothing there.
type drawing struct {
	sync.Mutex
	shelf []book.Comparable
	of    drawer
	rows  []resale.Row
}

// drawer is all of a lot that chooses its rows.
type drawer struct {
	id       int64
	make     string
	model    string
	year     int
	currency string
}

// sameShelf reports whether two readings of the shelf are one.
func sameShelf(a, b []book.Comparable) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

// drawn returns the rows that a lot draws from a shelf: those that were taken in for it, and those of its own model and kin.
func (d *Desk) drawn(shelf []book.Comparable, l book.Lot) []resale.Row {
	x := l.Case.Lot
	of := drawer{l.ID, x.Make, x.Model, x.ModelYear, l.Case.Currency}
	d.draws.Lock()
	defer d.draws.Unlock()
	if d.draws.of == of && len(shelf) > 0 && sameShelf(shelf, d.draws.shelf) {
		return d.draws.rows
	}
	var near, own []resale.Row
	for _, c := range shelf {
		switch {
		case c.Currency != of.currency:
		case c.Lot != 0 && c.Lot == of.id:
			own = append(own, c.Drawn())
		case c.Row.KinOf(of.make, of.model) != resale.Other:
			near = append(near, c.Drawn())
		}
	}
	rows := own
	for _, i := range resale.Draw(near, resale.Subject{Make: of.make, Model: of.model, ModelYear: of.year}) {
		rows = append(rows, near[i])
	}
	d.draws.shelf, d.draws.of, d.draws.rows = shelf, of, rows
	return rows
}

// withShelf returns what a lot's case is valued with: its own rows as the shelf has them now, those it draws, and the learned factors.
// Errors: the shelf can't be read.
func (d *Desk) withShelf(ctx context.Context, l book.Lot, f learn.Factors) (valuation.Case, []book.Comparable, error) {
	shelf, err := d.Book.Shelf(ctx)
	c := l.Case.With(f)
	if err != nil || len(shelf) == 0 && !slices.ContainsFunc(c.Resale.Rows, onShelf) {
		return c, shelf, err
	}
	c.Resale.Rows = joined(l.Case.Resale.Rows, d.drawn(shelf, l), shelf)
	return c, shelf, nil
}

// Shelved returns a lot's case with the rows that it draws from a shelf beside its own.
func Shelved(l book.Lot, shelf []book.Comparable) valuation.Case {
	c := l.Case
	c.Resale.Rows = joined(c.Resale.Rows, new(Desk).drawn(shelf, l), shelf)
	return c
}

func onShelf(r resale.Row) bool { return r.Shelf != 0 }

// joined returns a lot's own rows, as the shelf has them now, and then those that it draws beside them. What was taken off the shelf is
// left out.
func joined(own, drawn []resale.Row, shelf []book.Comparable) []resale.Row {
	var rows []resale.Row
	have := map[int64]bool{}
	for _, r := range own {
		if onShelf(r) {
			at, there := slices.BinarySearchFunc(shelf, r.Shelf, func(c book.Comparable, id int64) int { return int(c.ID - id) })
			if have[r.Shelf] = true; !there {
				continue
			}
			out := r.Excluded
			r = shelf[at].Drawn()
			r.Excluded = out
		}
		rows = append(rows, r)
	}
	for _, r := range drawn {
		if !have[r.Shelf] {
			rows = append(rows, r)
		}
	}
	return rows
}

// ownRows is the inverse of joined: which rows the lot is to keep, given those that it kept and those it now shows. A row of the shelf is
// kept where its tick is not the shelf's.
func ownRows(shown, kept []resale.Row, shelf []book.Comparable) []resale.Row {
	ticks, drawn := map[int64]bool{}, map[int64]bool{}
	for _, c := range shelf {
		drawn[c.ID] = c.Row.Excluded
	}
	own := slices.Clone(kept)
	for i, r := range kept {
		if onShelf(r) {
			ticks[r.Shelf] = true
			if at := slices.IndexFunc(shown, func(x resale.Row) bool { return x.Shelf == r.Shelf }); at >= 0 {
				own[i].Excluded = shown[at].Excluded
			}
		}
	}
	var loose []resale.Row
	for _, r := range shown {
		switch {
		case !onShelf(r):
			loose = append(loose, r)
		case !ticks[r.Shelf] && r.Excluded != drawn[r.Shelf]:
			own = append(own, r)
		}
	}
	return withLoose(own, loose)
}

// withLoose returns rows with those that lie on no shelf replaced by others, each in its place as long as there are any.
func withLoose(rows, loose []resale.Row) []resale.Row {
	var out []resale.Row
	for _, r := range rows {
		switch {
		case onShelf(r):
			out = append(out, r)
		case len(loose) > 0:
			out, loose = append(out, loose[0]), loose[1:]
		}
	}
	out = append(out, loose...)
	if len(out) == 0 && rows != nil {
		return rows[:0]
	}
	return out
}

// loadShelf reads the shelf again, where it is in sight.
func (d *Desk) loadShelf(ctx context.Context, s State) State {
	shelf, err := d.Book.Shelf(ctx)
	if err != nil {
		return s.troubled("read the shelf of comparables", err)
	}
	s.Shelf = shelf
	return s
}

// reshelved is the state after the shelf changed: what it teaches is to be worked out again, and an open lot may draw other rows.
func (d *Desk) reshelved(ctx context.Context, s State) State {
	if s.Market.Stale = true; s.Open != nil {
		s = d.reopen(ctx, s)
	}
	return d.loadShelf(ctx, s)
}
