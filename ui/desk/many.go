package desk

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/valuation/lot"
)

// ArchiveLots puts lots away, or takes them out again, in one step.
func ArchiveLots(archived bool, ids ...int64) Action {
	words, said := "archive", "Archived lots are kept: the box above the list shows them."
	if !archived {
		words, said = "take out of the archive", "Taken out of the archive."
	}
	return onLots(words, said, ids, func(_ State, l *book.Lot) { l.Archived = archived })
}

// RemoveLots takes lots off every list, in one step; undo on the Board puts them back.
func RemoveLots(ids ...int64) Action {
	return onLots("remove", "Removed. Undo on the Board puts it back.", ids, takenOff).ofSubject(book.Board)
}

// RemoveBuild is RemoveLots for one of the list of builds, where undo puts it back.
func RemoveBuild(id int64) Action {
	return onLots("remove", "Removed. Undo puts it back.", []int64{id}, takenOff).ofSubject(book.Buys)
}

func takenOff(_ State, l *book.Lot) { l.Removed = true }

// MoveLots gives lots another sale and its day, in one step. A lot whose terms are those of its yard takes those of the other one.
func MoveLots(sale string, day lot.Date, ids ...int64) Action {
	return onLots("move", fmt.Sprintf("Moved to %s.", saleWords(sale, day)), ids, func(s State, l *book.Lot) {
		before := l.Case
		l.Case = before.Clone()
		l.Case.Lot.Sale, l.Case.Lot.SaleDate = sale, day
		l.Case = s.atSale(before, l.Case)
	})
}

// saleWords names a sale and its day, as far as they are known.
func saleWords(sale string, day lot.Date) string {
	switch {
	case sale == "" && day == "":
		return "no sale"
	case day == "":
		return sale
	case sale == "":
		return DayShown(day)
	}
	return sale + ", " + DayShown(day)
}

// onLots is onLotsWith for a change of which there is nothing to say.
func onLots(words, said string, ids []int64, change func(State, *book.Lot)) Action {
	n := namedMany{words: words, said: said, ids: ids}
	return onLotsWith(n, func(_ context.Context, _ *Desk, s State, c *book.Change) (string, error) {
		change(s, &c.After)
		return "", nil
	})
}

// namedMany is a step that changes lots: what undo names, what is said once it is kept, and the lots.
type namedMany struct {
	words, said string
	ids         []int64
	bar         func(State) string // what is said while what is changed is worked out; nil: that is short
}

// onLotsWith returns an action that changes lots in one step of the page's history, named after the only one or their number. What
// change says of a lot is said after the rest; of many lots what is said of the first, and how often the like is.
func onLotsWith(n namedMany, change func(context.Context, *Desk, State, *book.Change) (string, error)) Action {
	return keepsAfter(n.words, n.bar, func(ctx context.Context, d *Desk, s State, a Action) (deed, error) {
		a.words = namedStep(n.words, fmt.Sprintf("%d lots", len(n.ids)))
		step, far := a.step(s), watch(ctx)
		var says []string
		for i, id := range n.ids {
			if far(float64(i) / float64(len(n.ids))) {
				return nil, ctx.Err()
			}
			l, err := d.Book.Lot(ctx, id)
			if err != nil {
				return nil, err
			}
			if len(n.ids) == 1 {
				a.words = namedStep(n.words, named(l.Case))
			}
			c := book.Change{Before: l, After: l.Clone()}
			words, err := change(ctx, d, s, &c)
			if err != nil {
				return nil, err
			}
			if words != "" {
				says = append(says, words)
			}
			step.Lots = append(step.Lots, c)
		}
		step.Label = a.words
		return func(ctx context.Context, d *Desk, s State, _ Action) State {
			return d.changed(ctx, s, step, n.said+inShort(says))
		}, ctx.Err()
	})
}

// changed keeps a step that changes lots, reads the lists again, and says what came of it.
func (d *Desk) changed(ctx context.Context, s State, step book.Step, said string) State {
	if s, _ = d.keep(ctx, s, step.Label, step); s.Trouble != "" {
		return s
	}
	return ifKept(d.lists(ctx, d.refresh(ctx, s)), said)
}

// inShort is the first of what is said of several lots, and of how many more something is said.
func inShort(says []string) string {
	switch n := len(says) - 1; {
	case n < 0:
		return ""
	case n > 0:
		return fmt.Sprintf("%s The like holds for %d more.", says[0], n)
	}
	return says[0]
}

// Sales returns the sales of the lots on the Board with their days, each once, the latest first.
func (s State) Sales() []Sale {
	var sales []Sale
	for _, e := range s.Entries {
		if one := (Sale{e.Sale, e.SaleDate}); e.Sale != "" && !slices.Contains(sales, one) {
			sales = append(sales, one)
		}
	}
	slices.SortStableFunc(sales, func(a, b Sale) int { return cmp.Compare(b.Day, a.Day) })
	return sales
}

// Sale is a sale and its day.
type Sale struct {
	Name string
	Day  lot.Date
}

// Words names the sale.
func (s Sale) Words() string { return saleWords(s.Name, s.Day) }
