package desk

import (
	"context"
	"fmt"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
)

// Foresee works out what is left of a build as of today. It touches no state and may run on any goroutine.
// Errors: the lot's case has faults, named, or nothing carries a resale price.
func (d *Desk) Foresee(c valuation.Case, b build.Build) (valuation.Foresight, error) {
	if faults := c.Check(); len(faults) > 0 {
		return valuation.Foresight{}, fmt.Errorf("the lot's worksheet has a fault: %w", faults[0])
	}
	return valuation.Foresee(c, d.Knowledge(), b, d.Today())
}

// Foreseen returns the state with a forecast that has come back; one of another build or an older revision is dropped.
func (s State) Foreseen(id int64, revision int, f valuation.Foresight, err error) State {
	if s.Build == nil || s.Build.ID != id || s.Build.Revision != revision {
		return s
	}
	o := *s.Build
	if err != nil {
		o.Forecast, o.Problem, o.Fresh = nil, err.Error(), true
		return s.withBuild(o)
	}
	o.Forecast, o.Problem, o.Fresh = &f, "", true
	return s.withBuild(o)
}

// ForeseeAll works out what is left of every build that has not ended, each from its lot's case; one that can't be foreseen is
// left out. It changes nothing and may run on any goroutine. Errors: the work was cancelled.
func (d *Desk) ForeseeAll(ctx context.Context, factors learn.Factors, list []book.Bought) (map[int64]valuation.Foresight, error) {
	all := map[int64]valuation.Foresight{}
	for _, b := range list {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if !b.Ours() || b.Build.Outcome.Ended() {
			continue
		}
		l, err := d.Book.Lot(ctx, b.ID)
		if err != nil {
			return nil, err
		}
		c, _, err := d.withShelf(ctx, l, factors)
		if err != nil {
			return nil, err
		}
		if f, err := d.Foresee(c, b.Build); err == nil {
			all[b.ID] = f
		}
	}
	return all, nil
}

// ForeseenAll returns the state with the forecasts of a list that have come back; those of a list read before are dropped.
func (s State) ForeseenAll(list []book.Bought, all map[int64]valuation.Foresight, err error) State {
	if len(list) != len(s.Bought) || len(list) > 0 && &list[0] != &s.Bought[0] {
		return s
	}
	if err != nil {
		return s.troubled("foresee the builds", err)
	}
	s.Outlooks = all
	return s
}
