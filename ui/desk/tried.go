package desk

import (
	"context"
	"slices"

	"walkline/valuation"
	"walkline/valuation/money"
)

// Limits is what each house rule takes of the bid.
type Limits struct {
	Revision int // of the lot that it was worked out for
	Without  map[string]*money.Amount
}

// Try leaves a house rule of the open lot out for a try, or takes it in again. Nothing is kept: leaving the worksheet ends the try.
func Try(rule string, out bool) Action {
	return shows(func(_ context.Context, _ *Desk, s State) State {
		if s.Open == nil {
			return s
		}
		o := *s.Open
		tried := slices.DeleteFunc(slices.Clone(o.Tried), func(r string) bool { return r == rule })
		if out {
			tried = append(tried, rule)
		}
		if !o.Case.Rules.Without(tried...).Bounding() {
			return s.said("One limit that a high bid breaks has to stay.")
		}
		o.Tried = tried
		return s.with(o.restless())
	})
}

// EndTry takes every house rule of the open lot in again.
func EndTry() Action {
	return shows(func(_ context.Context, _ *Desk, s State) State { return s.untried() })
}

// untried is the state without a try.
func (s State) untried() State {
	if s.Open == nil || len(s.Open.Tried) == 0 {
		return s
	}
	o := *s.Open
	o.Tried = nil
	return s.with(o.restless())
}

// restless returns the open lot to be valued anew.
func (o Open) restless() Open {
	o.Revision, o.Fresh = o.Revision+1, false
	return o
}

// Posed returns the case that the answer is of: the lot's, without the house rules that are left out for a try.
func (o Open) Posed() valuation.Case {
	c := o.Case
	c.Rules = c.Rules.Without(o.Tried...)
	return c
}

// LimitsOf works out what the bid for a lot of the book would be without each house rule that sets it: the one that sets the answer's, or
// each where there is no bid. It knows what [Desk.ValueLot] does. It touches no state and may run on any
// goroutine. Errors: the case can't be valued.
func (d *Desk) LimitsOf(ctx context.Context, id int64, c valuation.Case, a valuation.Answer) (Limits, error) {
	l, know := Limits{Without: map[string]*money.Amount{}}, d.beside(id)
	for _, x := range a.Ceilings {
		if err := ctx.Err(); err != nil {
			return l, err
		}
		less := c.Rules.Without(x.Rule)
		if a.WalkAway != nil && x.Rule != a.BindingRule || !less.Bounding() {
			continue
		}
		tried := c
		tried.Rules = less
		answer, _, err := d.memory().Weigh(ctx, tried, know)
		if err != nil {
			return l, err
		}
		l.Without[x.Rule] = answer.WalkAway
	}
	return l, nil
}

// Limited is the state with what house rules take; one of another lot or an older revision is dropped.
func (s State) Limited(id int64, revision int, l Limits, err error) State {
	if s.Open == nil || s.Open.ID != id || s.Open.Revision != revision || err != nil {
		return s
	}
	o := *s.Open
	l.Revision = revision
	o.Limits = &l
	return s.with(o)
}

// Without returns the bid without a house rule, nil for none, and whether it was worked out for the lot as it stands.
func (o Open) Without(rule string) (*money.Amount, bool) {
	if o.Limits == nil || o.Limits.Revision != o.Revision {
		return nil, false
	}
	without, known := o.Limits.Without[rule]
	return without, known
}
