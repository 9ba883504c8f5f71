package desk

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/hammer"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Rated is one lot of a list with its first guess, or its bid where somebody has looked.
type Rated struct {
	ID      int64 // 0: not in the book
	State   lot.State
	Lot     lot.Lot
	Case    valuation.Case // as it was valued
	Answer  valuation.Answer
	Trouble string // why it cannot be valued; empty: it is
}

// Rating values lots one after the other under what the shop knows. It may be used on any goroutine.
type Rating struct {
	desk    *Desk
	factors learn.Factors
	rests   string // mark of all this
	guesser *valuation.Guesser
}

// NewRating returns a rating with the catalogues, the learned factors, the results of sales and the surveys as they are now. Errors:
// the book can't be read.
func (d *Desk) NewRating(ctx context.Context, f learn.Factors) (*Rating, error) {
	list, err := d.Book.Builds(ctx)
	if err != nil {
		return nil, err
	}
	d.learnsHammer(list)
	if err := d.learnsPatterns(ctx); err != nil {
		return nil, err
	}
	rests, err := d.restsOn(ctx, f)
	return &Rating{d, f, rests, valuation.NewGuesser(d.Knowledge())}, err
}

// Rate values one lot of the book. Errors: the book can't be read.
func (r *Rating) Rate(ctx context.Context, id int64) (Rated, int64, error) {
	l, err := r.desk.Book.Lot(ctx, id)
	if err != nil {
		return Rated{}, 0, err
	}
	out, err := r.rate(ctx, l)
	return out, l.Revision, err
}

func (r *Rating) rate(ctx context.Context, l book.Lot) (Rated, error) {
	out := Rated{ID: l.ID, State: l.State, Lot: l.Case.Lot}
	c, err := r.desk.onList(ctx, l, r.factors)
	if err != nil {
		return out, err
	}
	out.Case = c
	if faults := c.Check(); len(faults) > 0 {
		out.Trouble = faults[0].Error()
		return out, nil
	}
	a, err := r.guesser.Knowing(r.desk.beside(l.ID).Hammer).Value(c)
	if err != nil {
		out.Trouble = err.Error()
	}
	out.Answer = a
	return out, nil
}

// onList returns the case that a lot has on a list: with its comparables, else its list's own value. Errors: the shelf can't be read.
func (d *Desk) onList(ctx context.Context, l book.Lot, f learn.Factors) (valuation.Case, error) {
	c, _, err := d.withShelf(ctx, l, f)
	return asListed(c), err
}

// asListed returns a lot as the Board and the plan of the day value it, so that both say the same of it.
func asListed(c valuation.Case) valuation.Case {
	if c = c.ByList(); c.Unlooked() {
		c.Run.Scenarios = valuation.ListScenarios
	}
	return c
}

// Rank values the lots of a list in their order: those of the book that the list means with what is known of them, the others as the list
// has them, under the shop's terms. Nothing is kept. Errors: the book can't be read, or the work was cancelled.
func (d *Desk) Rank(ctx context.Context, s State, listed []lot.Lot) ([]Rated, error) {
	r, err := d.NewRating(ctx, s.Factors)
	if err != nil {
		return nil, err
	}
	known, err := d.Book.Lots(ctx)
	if err != nil {
		return nil, err
	}
	out := make([]Rated, len(listed))
	met := d.Lister.MeetList(known, listed).IDs
	pieces := slices.Collect(slices.Chunk(sideBySide(listed), piece))
	return out, d.shared(len(pieces), func() func(int) error {
		mine := *r
		mine.guesser = r.guesser.Beside()
		return func(k int) error {
			for _, i := range pieces[k] {
				kept := book.Lot{ID: met[i], State: lot.ToLookAt}
				if kept.ID == 0 {
					kept.Case = d.listed(s, listed[i])
				}
				if err := mine.rank(ctx, kept, &out[i]); err != nil {
					return err
				}
			}
			return nil
		}
	})
}

// piece is how many lots of a list one worker takes at a time: those that may turn out to be the same lie together.
const piece = 16

// rank values a lot of a list, as the book has it where it is there.
func (r *Rating) rank(ctx context.Context, l book.Lot, out *Rated) (err error) {
	if err := ctx.Err(); err != nil {
		return err
	}
	if l.ID != 0 {
		if l, err = r.desk.Book.Lot(ctx, l.ID); err != nil {
			return err
		}
	}
	*out, err = r.rate(ctx, l)
	return err
}

// shared does pieces of work as the desk's Share does, one after the other without it.
func (d *Desk) shared(n int, begin func() func(int) error) error {
	if d.Share != nil {
		return d.Share(n, begin)
	}
	do := begin()
	for k := range n {
		if err := do(k); err != nil {
			return err
		}
	}
	return nil
}

// sideBySide returns the places of lots in an order that has those together that may turn out to be the same: what one came to is still
// at hand for the next.
func sideBySide(lots []lot.Lot) []int {
	kinds, order := make([]string, len(lots)), make([]int, len(lots))
	for i, l := range lots {
		areas := []string(nil)
		if l.Listed != nil {
			areas = l.Listed.Areas
		}
		miles, _ := l.Miles()
		kinds[i] = fmt.Sprintf("%q %q %q %q %04d %07.0f", l.Loss, l.Condition, l.Airbags, areas, l.ModelYear, miles)
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(kinds[a], kinds[b]) })
	return order
}

// Results returns what lots of the shop went for, of those whose finished value and visible work were foretold, in the order of their
// days: what was won, and what others won. Errors: the book can't be read.
func (d *Desk) Results(ctx context.Context) ([]hammer.Result, error) {
	list, err := d.Book.Builds(ctx)
	if err != nil {
		return nil, err
	}
	return ResultsOf(list), nil
}

// ResultsOf returns the results among won and lost lots, see [Desk.Results].
func ResultsOf(list []book.Bought) []hammer.Result {
	var out []hammer.Result
	for _, b := range list {
		if teachesHammer(b) {
			out = append(out, resultOf(b))
		}
	}
	return out
}

// teachesHammer reports whether a lot's price is a result to learn from.
func teachesHammer(b book.Bought) bool { return b.Build.Hammer != nil && b.Foretold != nil }

func resultOf(b book.Bought) hammer.Result {
	currency, _ := money.Lookup(b.Currency)
	return hammer.Result{Kind: hammer.Kind{Loss: slices.Clone(b.Loss), Condition: b.Condition}, Finished: b.Foretold.Resale.Mean,
		Work: b.Foretold.Visible(), Price: currency.Major(*b.Build.Hammer)}
}
