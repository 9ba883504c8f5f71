package main

import (
	"math/rand/v2"

	"walkline/valuation"
	"walkline/valuation/prob"
)

// life is what comes of a lot beside its invoice. Units: major units, days, hours.
type life struct {
	spent, back       float64 // own hours paid out as they are worked
	hours, days, bays float64 // days until the money is back; days in a bay
}

// worth is what the lot is worth before its invoice.
func (l life) worth() float64 { return l.back - l.spent }

// finished draws what comes of a lot that is finished whatever is found.
func (w *world) finished(e *entry, rng *rand.Rand) life {
	came := w.truth.Live(&e.said, w.start, rng)
	rate := e.said.Terms.Rate
	l := life{hours: *came.Hours, days: *came.Days.All, bays: max(1, *came.Days.All-*came.Days.Sell)}
	l.spent = usd.Major(*came.Repair+*came.Hidden+*came.Freight+*came.Storage) + l.hours*rate + l.days*e.said.Terms.HoldingPerDay
	l.back = usd.Major(came.Sale.Price - *came.Selling)
	return l
}

// lives draws what may come of a lot: finished, and by each way out. Prices of a way lie about their judgement as the finished one does.
func (w *world) lives(e *entry, rng *rand.Rand) map[string]life {
	done := w.finished(e, rng)
	all := map[string]life{valuation.Rebuild: done}
	u, lean := rng.Float64(), done.back/max(1, e.said.Resale.Mean)
	c := e.at
	for name, way := range map[string]struct {
		money       *prob.Three
		hours, days prob.Three
	}{valuation.AsItStands: {c.WaysOut.AsItStands.Money, prob.Three{}, c.WaysOut.AsItStands.Days},
		valuation.ForParts: {c.WaysOut.ForParts.Money, c.WaysOut.ForParts.Hours, c.WaysOut.ForParts.Days}} {
		if way.money == nil {
			continue
		}
		l := life{hours: way.hours.Mean(), days: way.days.Mean(), back: way.money.Quantile(u) * min(1, lean)}
		l.bays = l.days
		l.spent = l.hours*c.Labour.Rates["body"] + l.days*c.Time.HoldingPerDay + c.Buying.Freight.Mean() +
			c.Buying.Storage.PerDay*max(0, c.Buying.Storage.Days.Mean()-c.Buying.Storage.FreeDays)
		all[name] = l
	}
	return all
}

// follow returns the life of a lot under an opinion: as planned, or stopped at the strip-down where more is still to spend than its line.
func (e *entry) follow(o opinion, all map[string]life) life {
	l, known := all[o.plan]
	if o.plan != valuation.Rebuild && known {
		return l
	}
	l = all[valuation.Rebuild]
	out, known := all[o.way]
	if o.line == nil || !known || l.spent <= *o.line {
		return l
	}
	strip := e.at.WaysOut.Strip
	out.hours += strip.Hours.Mean()
	out.days, out.bays = out.days+strip.Days.Mean(), out.bays+strip.Days.Mean()
	out.spent += strip.Hours.Mean()*e.at.Labour.Rates["body"] + strip.Days.Mean()*e.at.Time.HoldingPerDay
	return out
}
