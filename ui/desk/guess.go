package desk

import (
	"context"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/prob"
)

// guessScenarios is how many scenarios a first guess of a past buy is played with: only means are read off it.
const guessScenarios = 512

// guess puts today's first guess for the same facts beside past buys from tables of which no forecast was kept: hours, costs and days. One
// whose damage is not given, or that can't be valued, stays without.
func (d *Desk) guess(ctx context.Context, list []book.Bought, past []learn.Build) error {
	for i, b := range list {
		if b.Foretold != nil || b.Build.Imported.As == "" {
			continue
		}
		if err := ctx.Err(); err != nil {
			return err
		}
		l, err := d.Book.Lot(ctx, b.ID)
		if err != nil {
			return err
		}
		if p, ok := d.firstGuess(l); ok {
			past[i].Guess = &p
		}
	}
	return nil
}

// anyPrice stands where a valuation asks for a resale price: no figure of the guess that is kept hangs on it.
var anyPrice = prob.Certain(10000)

// firstGuess foretells the hours, costs and days of a past buy from its facts alone; resale price and profit are no part of it.
func (d *Desk) firstGuess(l book.Lot) (learn.Prediction, bool) {
	c, hammer := l.Case.With(learn.Factors{}), l.Build.Hammer
	if len(c.Damage) == 0 {
		return learn.Prediction{}, false
	}
	c.Resale.Rows, c.Resale.Guess, c.Run.Scenarios = nil, &anyPrice, guessScenarios
	if faults := c.Check(); len(faults) > 0 {
		return learn.Prediction{}, false
	}
	p, err := d.memory().Foretell(c, d.Knowledge(), hammer)
	p.Resale, p.Profit, p.WalkAway = learn.Figure{}, learn.Figure{}, nil
	p.Terms.CostAllow, p.Terms.ResaleAllow = 0, 0
	return p, err == nil
}

// caseOf returns the case with which a past lot is replayed: the one that was frozen, or of a buy from a table its worksheet, once its
// damage and its price are judged there; nil: neither.
func (d *Desk) caseOf(ctx context.Context, frozen map[int64]valuation.Case, b book.Bought) (*valuation.Case, error) {
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
	if len(c.Damage) == 0 || c.Resale.Guess == nil && len(c.Resale.Rows) == 0 || len(c.Check()) > 0 {
		return nil, nil
	}
	return &c, nil
}
