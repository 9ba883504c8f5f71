package desk

import (
	"context"

	"walkline/valuation"
)

// PlanDonor plans the open lot with a donor vehicle, with starter values where it has none yet, and works out anew what the rest of one
// brings while that is a starter value. Parts that the law may forbid to sell are left out of it. One step of the lot.
func PlanDonor() Action {
	return keeps("donor vehicle", func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Open == nil {
			return s
		}
		donor, said := valuation.ProposeDonor(s.Open.Case, d.Knowledge(), false)
		if donor.Price.Zero() {
			return s.said(said)
		}
		edit := EditLot(a.words, func(c *valuation.Case) { c.Repair.Donor = &donor })
		if said == "" {
			said = "Starter values, from memory: replace them with yours."
		}
		return ifKept(edit.do(ctx, d, s, edit), said)
	})
}

// LeaveDonor plans the open lot without a donor vehicle. One step of the lot.
func LeaveDonor() Action {
	return EditLot("leave the donor vehicle out", func(c *valuation.Case) { c.Repair.Donor = nil })
}
