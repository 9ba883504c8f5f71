package desk

import (
	"context"
	"math"

	"walkline/store/book"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// Later is what is kept counts for, in major units of profit at the sales to come: a bay, an own hour, a thousand of cash.
type Later struct {
	Bay      float64 `json:"bay"`
	Hour     float64 `json:"hour"`
	Thousand float64 `json:"thousand"`
}

func (l Later) rates() sale.Later {
	return sale.Later{Cash: l.Thousand / 1000, Hour: l.Hour, Bay: l.Bay}
}

// PastYear is what the shop's bays brought in the year before a day.
type PastYear struct {
	Builds int     // that were sold in it, and of which all is known
	Profit float64 // of one on average, own hours paid, in major units
	Taken  float64 // share of the bays' days that their work took, no more than 1
}

// Bay is what a bay kept free brings: the share of the time in which the next build finds use for it, times what one makes. It is the
// year's profit a bay and day, over the days that a build takes; never below 0.
func (y PastYear) Bay() float64 { return max(0, math.Round(y.Profit*y.Taken)) }

// pastYear looks back on builds in one currency. Own hours count at the rates of their forecasts.
func pastYear(list []book.Bought, cur money.Currency, bays int, today lot.Date) PastYear {
	var y PastYear
	taken := 0
	for _, b := range list {
		ago, dated := b.Build.Dates.Sold.Days(today)
		days, timed := b.Build.Dates.Bought.Days(b.Build.Dates.WorkEnded())
		if !b.Ours() || b.Currency != cur.Code || !dated || !timed || ago < 0 || ago >= 365 || days < 0 || b.Foretold == nil {
			continue
		}
		if r, known := PastOf(b).Account().Result(); known {
			y.Builds++
			y.Profit += (r.Profit - y.Profit) / float64(y.Builds)
			taken += days
		}
	}
	if bays > 0 {
		y.Taken = min(1, float64(taken)/float64(365*bays))
	}
	return y
}

// TakePastYear has a bay that is kept count what the past year's bays brought. An hour and cash are not counted beside it: the same
// profit would count three times.
func TakePastYear() Action {
	return keeps("bay of the past year", func(ctx context.Context, d *Desk, s State, a Action) State {
		plan := s.Planned()
		switch {
		case plan == nil:
			return s.said("There is no plan yet. Enter what there is, and wait until it is planned.")
		case plan.Year.Builds == 0:
			return s.said("No build was sold in the past year of which all is known.")
		}
		after := *s.Day.Has
		after.Later = Later{Bay: plan.Year.Bay()}
		return ifKept(d.keepSetting(ctx, s, a, dayPrefix+string(s.Day.Date), *s.Day.Has, after),
			"What a bay brought in the past year. Change it if the next year will be another.")
	}).ofSubject(Planning)
}
