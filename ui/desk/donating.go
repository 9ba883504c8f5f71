package desk

import (
	"context"
	"fmt"

	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// PlanDonor plans the open lot with a donor vehicle, with starter values where it has none yet, and works out anew what the rest of one
// brings while that is a starter value. Parts that the law may forbid to sell are left out of it. What it costs by the starter values and
// what that does to the bid is said. One step of the lot.
func PlanDonor() Action {
	bar := always("Valuing the lot with a donor vehicle")
	return keepsAfter("donor vehicle", bar, func(ctx context.Context, d *Desk, s State, a Action) (deed, error) {
		if s.Open == nil {
			return func(_ context.Context, _ *Desk, s State, _ Action) State { return s }, nil
		}
		id, before := s.Open.ID, s.Open.Case.Clone()
		donor, said := valuation.ProposeDonor(before, d.Knowledge(), false)
		if !donor.Price.Zero() && before.Repair.Donor == nil {
			after := before.Clone()
			after.Repair.Donor = &donor
			said = d.donorWords(ctx, before, after)
		}
		return func(ctx context.Context, d *Desk, s State, _ Action) State {
			return d.takeDonor(ctx, s, a, planned{id, donor, said})
		}, nil
	})
}

// planned is a donor vehicle that was worked out for a lot, and what is to be said of it.
type planned struct {
	lot   int64
	donor repair.Donor
	said  string
}

// takeDonor plans the open lot with a donor vehicle, unless another lot was opened since it was worked out.
func (d *Desk) takeDonor(ctx context.Context, s State, a Action, p planned) State {
	if s.Open == nil || s.Open.ID != p.lot {
		return s.said("Another lot was opened meanwhile: no donor vehicle was planned.")
	}
	if p.donor.Price.Zero() {
		return s.said(p.said)
	}
	edit := EditLot(a.words, func(c *valuation.Case) { c.Repair.Donor = &p.donor })
	if p.said == "" {
		p.said = "Starter values, from memory: replace them with yours."
	}
	return ifKept(edit.do(ctx, d, s, edit), p.said)
}

// donorWords says what a lot that is now planned with a donor counts for it, and what that does to its bid.
func (d *Desk) donorWords(ctx context.Context, before, after valuation.Case) string {
	cur, _ := money.Lookup(after.Currency)
	words := fmt.Sprintf("The donor counts at a starter price, not yours: %s. Enter what yours costs.", prices(cur, after.Repair.Donor.Price))
	was, knew := d.walkAway(ctx, before)
	is, knows := d.walkAway(ctx, after)
	switch {
	case !knew || !knows:
		return words
	case was == is:
		return fmt.Sprintf("%s At that price the walk-away bid stays %s.", words, orNoBid(cur, was))
	}
	words = fmt.Sprintf("%s At that price the walk-away bid goes from %s to %s.", words, orNoBid(cur, was), orNoBid(cur, is))
	if is < was {
		words += " It does not pay: leave the donor out unless yours costs less."
	}
	return words
}

// orNoBid writes a walk-away bid, none for 0.
func orNoBid(cur money.Currency, bid money.Amount) string {
	if bid == 0 {
		return "no bid"
	}
	return cur.Show(bid)
}

// prices writes a judgement of money, likely first.
func prices(cur money.Currency, t prob.Three) string {
	show := func(x float64) string { return cur.Show(cur.FromMajor(x)) }
	if t.Sure() {
		return show(t.Likely)
	}
	return fmt.Sprintf("%s, from %s to %s", show(t.Likely), show(t.Low), show(t.High))
}

// walkAway returns a case's walk-away bid, 0 for none; known false: it can't be valued, or no bid can be said yet.
func (d *Desk) walkAway(ctx context.Context, c valuation.Case) (bid money.Amount, known bool) {
	if len(c.Check()) > 0 {
		return 0, false
	}
	a, odds, err := d.memory().Weigh(ctx, c, d.Knowledge())
	if err != nil || !odds.Known() {
		return 0, false
	}
	if a.WalkAway != nil {
		bid = *a.WalkAway
	}
	return bid, true
}

// LeaveDonor plans the open lot without a donor vehicle. One step of the lot.
func LeaveDonor() Action {
	return EditLot("leave the donor vehicle out", func(c *valuation.Case) { c.Repair.Donor = nil })
}
