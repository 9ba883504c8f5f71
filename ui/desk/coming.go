package desk

import (
	"context"
	"fmt"
	"math"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// Coming is money that comes in after the plan's first day, as it is kept with what there is.
type Coming struct {
	Day    lot.Date     `json:"day"`
	Amount money.Amount `json:"amount"`
	Build  int64        `json:"build,omitempty"` // the build that brings it, 0: typed
	Number string       `json:"number,omitempty"`
}

// comingFrom returns what a build in hand is likely to bring: nine in ten are sold by that day, and for no less. Selling and what
// growing older takes are off it at their means.
func comingFrom(b book.Bought, f valuation.Foresight, today lot.Date) (Coming, bool) {
	cur, known := money.Lookup(f.Currency)
	if !known || !(f.Resale.Mean > 0) || len(f.Ways) == 0 {
		return Coming{}, false
	}
	net := (f.Ways[0].Spread.Mean + f.ToFinish.Mean) / f.Resale.Mean
	amount := cur.FromMajor(math.Floor(f.Resale.P10 * net))
	return Coming{today.Plus(int(math.Ceil(f.Days.P90))), amount, b.ID, b.Number}, amount > 0
}

// comes enters the money that comes in; what has no day or amount yet is named and not counted.
func (p *planner) comes(list []Coming, builds []book.Bought) {
	bare := false
	for _, c := range list {
		at := slices.IndexFunc(builds, func(b book.Bought) bool { return c.Build != 0 && b.ID == c.Build })
		switch {
		case !c.Day.Known() || c.Amount <= 0:
			bare = true
			continue
		case at >= 0 && builds[at].Build.Gone():
			p.plan.Out = append(p.plan.Out, "Build "+c.Number+" has ended. Take its money off the list once it is in your cash.")
		}
		p.plan.Sale.In = append(p.plan.Sale.In, sale.Income{Day: c.Day, Amount: c.Amount})
	}
	if bare {
		p.plan.Out = append(p.plan.Out, "Money that comes in needs a day and an amount. It is not counted yet.")
	}
}

// TakeComing enters what the builds in hand are likely to bring, each once.
func TakeComing() Action {
	return keeps("money from builds", func(ctx context.Context, d *Desk, s State, a Action) State {
		plan := s.Planned()
		if plan == nil {
			return s.said("There is no plan yet. Enter what there is, and wait until it is planned.")
		}
		after, taken := *s.Day.Has, 0
		after.In = slices.Clone(after.In)
		for _, c := range plan.Likely {
			if !slices.ContainsFunc(after.In, func(x Coming) bool { return x.Build == c.Build }) {
				after.In, taken = append(after.In, c), taken+1
			}
		}
		if taken == 0 {
			return s.said("No other build in hand has a price that can be foreseen.")
		}
		return ifKept(d.keepSetting(ctx, s, a, dayPrefix+string(s.Day.Date), *s.Day.Has, after),
			fmt.Sprintf("From %d of your builds. Nine in ten are sold by that day, and for no less. Change what you know better.", taken))
	}).ofSubject(Planning)
}
