package desk

import (
	"cmp"
	"context"
	"reflect"
	"strings"

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

// manyRows is from how many rows on their removal is done away from the window. Ours.
const manyRows = 1000

// RemoveComparables takes rows off the shelf, and so out of every lot that draws them.
func RemoveComparables(words string, ids ...int64) Action {
	var bar func(State) string
	if len(ids) >= manyRows {
		bar = always(strings.ToUpper(words[:1]) + words[1:])
	}
	a := keepsAfter(words, bar, func(ctx context.Context, d *Desk, s State, a Action) (deed, error) {
		step, err := d.onShelf(ctx, a.step(s), ids, func(book.Comparable) *book.Comparable { return nil })
		var done book.Done
		if err == nil {
			done, err = d.Book.Do(ctx, step)
		}
		return func(ctx context.Context, d *Desk, s State, a Action) State {
			return d.came(ctx, s, a.words, step, done, err)
		}, err
	})
	a.of = State.ofShelf
	return a
}

// onShelf adds to a step what becomes of rows of the shelf; nil takes one off. Errors: the shelf can't be read.
func (d *Desk) onShelf(ctx context.Context, step book.Step, ids []int64, change func(book.Comparable) *book.Comparable) (book.Step, error) {
	shelf, err := d.Book.Shelf(ctx)
	if err != nil {
		return step, err
	}
	of := map[int64]bool{}
	for _, id := range ids {
		of[id] = true
	}
	for i, c := range shelf {
		if !of[c.ID] {
			continue
		}
		if after := change(c); after == nil || !reflect.DeepEqual(c, *after) {
			step.Shelf = append(step.Shelf, book.Shelved{Before: &shelf[i], After: after})
		}
	}
	return step, nil
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
		step, err := d.onShelf(ctx, a.step(s), []int64{id}, func(c book.Comparable) *book.Comparable {
			typed, err := d.Importer.Typed(c.Row, cells, c.Currency)
			if wrong = err; err == nil && sold(c.Row, typed) {
				c = c.After(typed)
			}
			c.Row = typed
			return &c
		})
		if err = cmp.Or(err, wrong); err != nil {
			return s.troubled("keep the row", err)
		}
		s, _ = d.keep(ctx, s, a.words, step)
		return s
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
