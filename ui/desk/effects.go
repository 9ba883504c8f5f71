package desk

import (
	"context"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/learn"
)

// Effect is what a proposal would do to the walk-away bid of a lot that is still to be bid for.
type Effect struct {
	Lot      int64
	Name     string
	Currency string
	valuation.Effect
	Share   float64           // of the proposal that After stands for: all of it is 1
	Whole   *valuation.Effect // what all of it would do, where Share is less
	Problem string            // why it can't be told; empty: it can
}

// Effects values every lot that is still to be bid for with the factors in force and with those of a proposal. One that rests on few buys
// goes only so far that no open bid moves by two steps. It changes nothing and may run on any goroutine. Errors: the work was cancelled,
// or the book can't be read.
func (d *Desk) Effects(ctx context.Context, r TrackRecord, p learn.Proposal) ([]Effect, error) {
	lots, err := d.openLots(ctx)
	if err != nil {
		return nil, err
	}
	w := weighing{lots, d.memory(), valuation.NewGuesser(d.Knowledge()), d.Knowledge()}
	whole, err := w.effects(ctx, r.Now, p, 1)
	if err != nil || p.Buys >= learn.EnoughBuys || steady(whole) {
		return whole, err
	}
	for _, share := range []float64{0.5, 0.25, 0.125, 0} {
		out, err := w.effects(ctx, r.Now, p, share)
		if err != nil {
			return nil, err
		}
		if share > 0 && !steady(out) {
			continue
		}
		for i := range out {
			out[i].Whole = &whole[i].Effect
		}
		return out, nil
	}
	return whole, nil
}

// fewSteps is how many bid steps a factor from few buys must stay below. Ours.
const fewSteps = 2

func steady(all []Effect) bool {
	return !slices.ContainsFunc(all, func(x Effect) bool { return x.Steps >= fewSteps })
}

// openLots returns the lots that are still to be bid for, each with the case that the Board's bid is of.
func (d *Desk) openLots(ctx context.Context) ([]book.Lot, error) {
	entries, err := d.Book.Entries(ctx)
	if err != nil {
		return nil, err
	}
	var out []book.Lot
	for _, e := range entries {
		if !ToBid(e) {
			continue
		}
		l, err := d.Book.Lot(ctx, e.ID)
		if err != nil {
			return nil, err
		}
		if l.Case, err = d.onList(ctx, l, learn.Factors{}); err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}

// weighing values lots under one factor and another.
type weighing struct {
	lots    []book.Lot
	memory  *valuation.Memory
	guesser *valuation.Guesser
	know    valuation.Knowledge
}

// effects values the lots with the factors in force and with a share of a proposal.
func (w weighing) effects(ctx context.Context, now learn.Factors, p learn.Proposal, share float64) ([]Effect, error) {
	var out []Effect
	for _, l := range w.lots {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		c := l.Case
		x := Effect{Lot: l.ID, Name: LotName(c.Lot.Number, c.Lot.Sale, c.Lot.ModelYear, c.Lot.Make, c.Lot.Model), Currency: c.Currency,
			Share: share}
		var err error
		if faults := c.Check(); len(faults) > 0 {
			x.Problem = "cannot be valued yet"
		} else if x.Effect, err = w.compare(c, now, learn.Toward(now, p, share)); err != nil {
			x.Problem = err.Error()
		}
		out = append(out, x)
	}
	return out, nil
}

// compare returns what other factors do to a lot's bid. The surveys of lots that nobody has looked at are drawn once for all that they
// mean the same to.
func (w weighing) compare(c valuation.Case, now, proposed learn.Factors) (valuation.Effect, error) {
	if c.Unlooked() {
		return w.guesser.Compare(c, now, proposed)
	}
	return w.memory.Compare(c, w.know, now, proposed)
}

// Shown returns the state with the effects of a proposal that have come back; those of a record before the present one are dropped.
func (s State) Shown(of TrackRecord, key string, effects []Effect, err error) State {
	if !s.recordIs(of) {
		return s
	}
	if err != nil {
		return s.troubled("work out what a factor would change", err)
	}
	r := *s.Record
	r.Effects = map[string][]Effect{key: effects}
	for k, e := range s.Record.Effects {
		if k != key {
			r.Effects[k] = e
		}
	}
	s.Record = &r
	return s
}
