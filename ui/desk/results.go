package desk

import (
	"context"
	"fmt"

	"walkline/store/book"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// ListRow is a lot as a list tells of it, with what it went for where the list says so.
type ListRow struct {
	Lot      lot.Lot
	Hammer   *money.Amount // minor units of Currency; nil: not said
	Currency string
}

// enlisting makes the step of a list.
type enlisting struct {
	desk    *Desk
	state   State
	meeting Meeting
	facts   map[int64]lot.Lot // of known lots, as they are to be
	step    book.Step
	said    []string // what is left as it is, in words
	results int
	silent  int // results that teach nothing, for want of a forecast
	away    int // results of lots that were not on the Board
	bids    int // results of lots that were marked as bid
}

// enlisted returns the step of a list: lots that are new, other facts of lots that are there, and what lots went for.
func (d *Desk) enlisted(ctx context.Context, s State, rows []ListRow, m Meeting) (*enlisting, error) {
	e := &enlisting{desk: d, state: s, meeting: m, facts: map[int64]lot.Lot{}, said: m.Left,
		step: book.Step{Subject: book.Board, Label: "run list"}}
	for _, k := range m.Changed {
		e.facts[k.ID] = k.Lot
	}
	fresh := m.New
	for i, r := range rows {
		var err error
		if id := m.IDs[i]; id != 0 {
			err = e.known(ctx, id, r)
		} else {
			err = e.new(ctx, fresh[0], r)
			fresh = fresh[1:]
		}
		if err != nil {
			return nil, err
		}
	}
	return e, nil
}

// new takes a lot in that is not there yet. One whose price is told has run already: it is a result, and put away.
func (e *enlisting) new(ctx context.Context, l lot.Lot, r ListRow) error {
	n := book.New{Case: e.desk.listed(e.state, l)}
	if price := e.priceOf(n.Case.Currency, r); price != nil {
		n.State, n.Archived, n.Build.Hammer = lot.Lost, true, price
		frozen, err := e.foretold(ctx, book.Lot{Case: n.Case})
		if err != nil {
			return err
		}
		n.Freeze = frozen
		e.away++
	}
	e.step.New = append(e.step.New, n)
	return nil
}

// known takes in what a list says of a lot that is there.
func (e *enlisting) known(ctx context.Context, id int64, r ListRow) error {
	facts, changed := e.facts[id]
	if !changed && r.Hammer == nil {
		return nil
	}
	before, err := e.desk.Book.Lot(ctx, id)
	if err != nil {
		return err
	}
	c := book.Change{Before: before, After: before.Clone()}
	if changed {
		c.After.Case.Lot = facts
	}
	price := e.priceOf(before.Case.Currency, r)
	if had := before.Build.Hammer; price != nil && had != nil {
		if *had != *price {
			e.said = append(e.said, fmt.Sprintf("%s went for %s here, %s on the list", named(before.Case),
				shown(r.Currency, *had), shown(r.Currency, *price)))
		}
		price = nil
	}
	if price != nil {
		if err := e.result(ctx, &c, price); err != nil {
			return err
		}
	} else if !changed {
		return nil
	}
	e.step.Lots = append(e.step.Lots, c)
	return nil
}

// result puts on a lot what it went for. One that is not marked as won went to somebody else.
func (e *enlisting) result(ctx context.Context, c *book.Change, price *money.Amount) error {
	was := c.Before.State
	if was != lot.Won {
		c.After.State = lot.Lost
	}
	if was == lot.Bid {
		e.bids++
	}
	c.After.Build = e.desk.begun(c.Before, c.After.State, price)
	if was == lot.Won || was == lot.Bid { // what was forecast stands
		return nil
	}
	frozen, err := e.foretold(ctx, c.After)
	c.Freeze = frozen
	return err
}

// priceOf returns what a list says a lot went for, nil where it doesn't, or says it in other money.
func (e *enlisting) priceOf(currency string, r ListRow) *money.Amount {
	switch {
	case r.Hammer == nil:
		return nil
	case r.Currency == "":
		e.said = append(e.said, fmt.Sprintf("lot %s: the currency of its price was not chosen", r.Lot.Number))
		return nil
	case r.Currency != currency:
		e.said = append(e.said, fmt.Sprintf("lot %s: its price is in %s, the lot in %s", r.Lot.Number, r.Currency, currency))
		return nil
	}
	e.results++
	return r.Hammer
}

// foretold returns what is forecast of a lot that has run; nil: it can't be valued, and its price teaches nothing.
func (e *enlisting) foretold(ctx context.Context, l book.Lot) (*book.Prediction, error) {
	p, err := e.desk.foretoldByList(ctx, l, e.state.Factors)
	if err == nil && p == nil {
		e.silent++
	}
	return p, err
}

// foretoldByList forecasts a lot from what is known of it, its list's own figures with it; nil: that is not enough. Errors: the shelf
// can't be read.
func (d *Desk) foretoldByList(ctx context.Context, l book.Lot, factors learn.Factors) (*book.Prediction, error) {
	c, _, err := d.withShelf(ctx, l, factors)
	if err != nil {
		return nil, err
	}
	if c = c.ByList(); len(c.Check()) > 0 {
		return nil, nil
	}
	answer, err := d.answer(l.ID, c)
	if err != nil {
		return nil, nil
	}
	figures, err := d.memory().Foretell(c, d.Knowledge(), nil)
	if err != nil || !(figures.Resale.Mean > 0) {
		return nil, nil
	}
	return &book.Prediction{Case: c, Answer: answer, Figures: figures}, nil
}

// words says what came of the prices of a list; empty where it has none.
func (e *enlisting) words() string {
	if e.results == 0 {
		return ""
	}
	words := fmt.Sprintf(" %d hammer prices kept.", e.results)
	if e.away > 0 {
		words += fmt.Sprintf(" %d of lots that were not on the Board are in the archive.", e.away)
	}
	if e.silent > 0 {
		words += fmt.Sprintf(" %d teach nothing yet: the list has no value for the lot, and no comparables fit.", e.silent)
	}
	if e.bids > 0 {
		words += fmt.Sprintf(" %d that you had bid on count as lost: mark those that you won.", e.bids)
	}
	return words
}
