package desk

import (
	"cmp"
	"context"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/hedonic"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// guessScenarios is how many scenarios a first guess of a past buy is played with: only means are read off it.
const guessScenarios = 512

// guess puts today's first guess for the same facts beside past buys from tables of which no forecast was kept: hours, costs and days, and
// the price where the shelf held comparables when it was sold. One of which neither damage nor such a price is known, or that can't be
// valued, stays without.
func (d *Desk) guess(ctx context.Context, list []book.Bought, past []learn.Build) error {
	guessed := func(b book.Bought) bool { return b.Foretold == nil && b.Build.Imported.As != "" }
	if !slices.ContainsFunc(list, guessed) {
		return nil
	}
	shelf, err := d.shelfByMake(ctx)
	if err != nil {
		return err
	}
	for i, b := range list {
		if !guessed(b) {
			continue
		}
		if err := ctx.Err(); err != nil {
			return err
		}
		l, err := d.Book.Lot(ctx, b.ID)
		if err != nil {
			return err
		}
		if p, ok := d.firstGuess(l, shelf); ok {
			past[i].Guess = &p
		}
	}
	return nil
}

// anyPrice stands where a valuation asks for a resale price and none is known: no figure of the guess that is kept hangs on it.
var anyPrice = prob.Certain(10000)

// firstGuess foretells the hours, costs and days of a past buy from its facts alone, and its price from the comparables of its time; the
// profit is no part of it.
func (d *Desk) firstGuess(l book.Lot, shelf shelfByMake) (learn.Prediction, bool) {
	c, damaged := l.Case.With(learn.Factors{}), len(l.Case.Damage) > 0
	c.Run.Scenarios = guessScenarios
	if c.Resale.Rows = nil; l.Build.Outcome == build.Sold && l.Build.Sale.Brand != "" {
		c.Resale.Rows = shelf.before(l, l.Build.Dates.Sold)
	}
	priced := len(c.Resale.Rows) > 0
	if !priced {
		c.Resale.Guess = &anyPrice
	} else {
		c.Resale.Guess, c.Resale.Subject.Brand, c.ValuedOn = nil, l.Build.Sale.Brand, cmp.Or(l.Build.Dates.Bought, l.Build.Dates.Sold)
	}
	if faults := c.Check(); len(faults) > 0 || !priced && !damaged {
		return learn.Prediction{}, false
	}
	p, err := d.memory().Foretell(c, d.Knowledge(), l.Build.Hammer)
	p.Profit, p.WalkAway, p.Terms.CostAllow, p.Terms.ResaleAllow = learn.Figure{}, nil, 0, 0
	if !priced {
		p.Resale = learn.Figure{}
	}
	if !damaged {
		p.Items, p.Risks, p.Cost, p.Hours = nil, nil, learn.Figure{}, learn.Figure{}
	}
	return p, err == nil
}

// Which comparables foretell the price of a past buy: those of the year before, where there are enough. Ours.
const (
	daysBefore = 365
	leastKept  = 5
)

// shelfByMake is the shelf by currency and make, as [makeKey] writes them.
type shelfByMake map[string][]book.Comparable

func makeKey(currency, maker string) string { return currency + " " + hedonic.Key(maker) }

func (d *Desk) shelfByMake(ctx context.Context) (shelfByMake, error) {
	shelf, err := d.Book.Shelf(ctx)
	out := shelfByMake{}
	for _, c := range shelf {
		key := makeKey(c.Currency, c.Row.Make)
		out[key] = append(out[key], c)
	}
	return out, err
}

// before returns the comparables of the year before a day that tell about the price of a past buy; nil where there are few, or the
// vehicle's mileage or the day is not known.
func (s shelfByMake) before(l book.Lot, day lot.Date) []resale.Row {
	x := l.Case.Lot
	if !day.Known() || x.Odometer == nil || x.OdometerStatus != "actual" {
		return nil
	}
	var near, rows []resale.Row
	for _, r := range s[makeKey(l.Case.Currency, x.Make)] {
		age, known := r.Row.Date.Days(day)
		if known && age >= 0 && age <= daysBefore && !r.Row.Excluded && r.Row.KinOf(x.Make, x.Model) != resale.Other {
			near = append(near, r.Drawn())
		}
	}
	for _, i := range resale.Draw(near, resale.Subject{Make: x.Make, Model: x.Model, ModelYear: x.ModelYear}) {
		rows = append(rows, near[i])
	}
	if len(rows) < leastKept {
		return nil
	}
	return rows
}

// caseOf returns the case with which a past lot is replayed: the one that was frozen, or of a buy from a table its worksheet, once its
// damage is known and its price is judged there, or the shelf had prices before it was bought; nil: neither.
func (d *Desk) caseOf(ctx context.Context, frozen map[int64]valuation.Case, shelf shelfByMake, b book.Bought) (*valuation.Case, error) {
	if c, ok := frozen[b.ID]; ok {
		return &c, nil
	}
	if b.Build.Imported.As == "" {
		return nil, nil
	}
	l, err := d.Book.Lot(ctx, b.ID)
	if err != nil {
		return nil, err
	}
	c := l.Case
	if rows := shelf.before(l, l.Build.Dates.Bought); c.Resale.Guess == nil && len(c.Resale.Rows) == 0 && len(rows) > 0 {
		c.Resale.Rows, c.ValuedOn = rows, l.Build.Dates.Bought
	}
	if len(c.Damage) == 0 || c.Resale.Guess == nil && len(c.Resale.Rows) == 0 || len(c.Check()) > 0 {
		return nil, nil
	}
	return &c, nil
}
