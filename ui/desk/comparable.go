package desk

import (
	"context"
	"reflect"
	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/resale"
)

// keepsShelf returns an action that makes a step of the shelf's page or of the open lot.
func keepsShelf(words string, do func(context.Context, *Desk, State, Action) State) Action {
	a := keeps(words, do)
	a.of = State.ofShelf
	return a
}

// RemoveComparables takes rows off the shelf, and so out of every lot that draws them.
func RemoveComparables(words string, ids ...int64) Action {
	gone := map[int64]bool{}
	for _, id := range ids {
		gone[id] = true
	}
	return keepsShelf(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		return d.onShelf(ctx, s, a, func(c book.Comparable) *book.Comparable {
			if gone[c.ID] {
				return nil
			}
			return &c
		})
	})
}

// onShelf keeps what becomes of each row of the shelf, as a step of the page; nil takes it off.
func (d *Desk) onShelf(ctx context.Context, s State, a Action, change func(book.Comparable) *book.Comparable) State {
	shelf, err := d.Book.Shelf(ctx)
	if err != nil {
		return s.troubled(a.words, err)
	}
	step := a.step(s)
	for i, c := range shelf {
		after := change(c)
		if after == nil || !reflect.DeepEqual(c, *after) {
			step.Shelf = append(step.Shelf, book.Shelved{Before: &shelf[i], After: after})
		}
	}
	s, _ = d.keep(ctx, s, a.words, step)
	return s
}

// TypeComparable keeps a row as it was typed, cell by cell: the row of the shelf at a place, or a new one at place 0, for the open lot
// where one is open. What can't be read is said, and nothing is kept.
func TypeComparable(id int64, cells map[string]string) Action {
	return keepsShelf("type a comparable", func(ctx context.Context, d *Desk, s State, a Action) State {
		m := d.taking(s, Sheet{})
		if id == 0 {
			r, err := d.Importer.Typed(resale.Row{}, cells, m.currency)
			if err != nil {
				return s.troubled("keep the row", err)
			}
			return d.lay(ctx, s, a, m, r)
		}
		a.words = "change a comparable"
		var wrong error
		next := d.onShelf(ctx, s, a, func(c book.Comparable) *book.Comparable {
			if c.ID == id {
				typed, err := d.Importer.Typed(c.Row, cells, c.Currency)
				if wrong = err; err == nil && sold(c.Row, typed) {
					c = c.After(typed)
				}
				c.Row = typed
			}
			return &c
		})
		if wrong != nil {
			return s.troubled("keep the row", wrong)
		}
		return next
	})
}

// AddComparable puts a row on the shelf, for the open lot where one is open.
func AddComparable(r resale.Row) Action {
	return keepsShelf("add a comparable", func(ctx context.Context, d *Desk, s State, a Action) State {
		return d.lay(ctx, s, a, d.taking(s, Sheet{}), r)
	})
}

// lay puts one row on the shelf.
func (d *Desk) lay(ctx context.Context, s State, a Action, m *shelving, r resale.Row) State {
	c := book.Comparable{Row: r, Currency: m.currency, On: d.Today()}
	if m.open != nil {
		c.Lot = m.open.ID
		if c.Row.Make == "" && c.Row.Model == "" {
			c.Row.Make, c.Row.Model = m.open.Case.Lot.Make, m.open.Case.Lot.Model
		}
	}
	step := a.step(s)
	step.Shelf = []book.Shelved{{After: &c}}
	s, _ = d.keep(ctx, s, a.words, step)
	return s
}

// TypeOwn keeps a row of the open lot's own, which lies on no shelf, as it was typed.
func TypeOwn(at int, cells map[string]string) Action {
	edit := EditLot("change a comparable", nil)
	edit.do = func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Open == nil || at >= len(s.Open.Case.Resale.Rows) {
			return s
		}
		r, err := d.Importer.Typed(s.Open.Case.Resale.Rows[at], cells, s.Open.Case.Currency)
		if err != nil {
			return s.troubled("keep the row", err)
		}
		to := EditLot(a.words, func(c *valuation.Case) { c.Resale.Rows[at] = r })
		return to.do(ctx, d, s, a)
	}
	return edit
}
