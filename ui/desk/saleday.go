package desk

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"walkline/store/book"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// Planning is whose steps the plans of sale days are.
const Planning book.Subject = "sale plan"

// SaleDay is what there is from a sale day on, as it is kept: one row a day. What builds in hand still take is in it.
type SaleDay struct {
	Currency string       `json:"currency"`
	Cash     money.Amount `json:"cash"`
	Hours    float64      `json:"hours"` // own hours
	Bays     int          `json:"bays"`
	In       []Coming     `json:"in,omitempty"`
	Later    Later        `json:"later,omitzero"`
	Guesses  bool         `json:"guesses,omitempty"` // lots that nobody has looked at are in the plan too
}

// penniless reports whether no money is entered for the day.
func (d SaleDay) penniless() bool {
	return d.Cash == 0 && d.Later == Later{} && !slices.ContainsFunc(d.In, func(c Coming) bool { return c.Amount != 0 })
}

// Agenda is the sale day that is planned.
type Agenda struct {
	Date    lot.Date // unknown: no lot has a day
	Days    []lot.Date
	Has     *SaleDay // nil: nothing was entered
	Plan    *DayPlan // nil: not worked out since the data changed
	Problem string   // why it can't be
	of      string   // what Plan or Problem is of
	at      string   // what has to stand for Plan to be shown
}

// dayPrefix begins the settings that keep sale days.
const dayPrefix = "sale day "

// loadDay reads the plan's day: that one where lots have it, else the next on which a lot is sold, else the last.
func (d *Desk) loadDay(ctx context.Context, s State, day lot.Date) State {
	var days []lot.Date
	for _, e := range s.Entries {
		if e.SaleDate.Known() && !e.Archived {
			days = append(days, e.SaleDate)
		}
	}
	slices.Sort(days)
	s.Day.Days = slices.Compact(days)
	if !slices.Contains(s.Day.Days, day) {
		day = ""
		for _, x := range s.Day.Days {
			if day = x; x >= d.Today() {
				break
			}
		}
	}
	s.Day.Date, s.Day.Has = day, nil
	if _, err := d.Book.Setting(ctx, dayPrefix+string(day), &s.Day.Has); err != nil {
		return s.troubled("read what there is for the sale day", err)
	}
	return s
}

// dayOfOpen plans the open lot's day where the plan of the shown day has no say on the lot and something was entered for its own.
func (d *Desk) dayOfOpen(ctx context.Context, s State) State {
	is := func(e book.Entry) bool { return s.Open != nil && e.ID == s.Open.ID }
	at := slices.IndexFunc(s.Entries, is)
	if at < 0 || s.Entries[at].SaleDate == s.Day.Date || slices.ContainsFunc(s.horizon(), is) {
		return s
	}
	if of := d.loadDay(ctx, s, s.Entries[at].SaleDate); of.Day.Has != nil {
		return of
	}
	return s
}

// ShowDay plans another sale day.
func ShowDay(day lot.Date) Action {
	return shows(func(ctx context.Context, d *Desk, s State) State { return d.loadDay(ctx, s, day) })
}

// EditDay changes what there is for the day that is planned. Its money stays in the currency in which it was entered: nothing is converted.
func EditDay(words string, change func(*SaleDay)) Action {
	return keeps(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		if !s.Day.Date.Known() {
			return s.said("No lot has a sale day yet.")
		}
		before, after := any(nil), SaleDay{Currency: s.Shop.Currency}
		if s.Day.Has != nil {
			before, after = *s.Day.Has, *s.Day.Has
		}
		after.In = slices.Clone(after.In)
		change(&after)
		if after.penniless() { // nothing is written in the old one
			after.Currency = s.Shop.Currency
		}
		return d.keepSetting(ctx, s, a, dayPrefix+string(s.Day.Date), before, after)
	}).ofSubject(Planning)
}

// Results mark what the shown plan is of: the day, what there is, what became of the lots, and what their builds say.
func (s State) resultsMark() string {
	var came []any
	for _, e := range s.Entries {
		came = append(came, e.ID, e.State, e.SaleDate, e.Archived)
	}
	return mark(s.Day.Date, s.Day.Has, came, s.steps.builds)
}

// dayMark marks all that the plan comes from.
func (s State) dayMark() string {
	open := ""
	if s.Open != nil {
		open = fmt.Sprint(s.Open.ID, " ", s.Open.kept.Revision)
	}
	return mark(s.resultsMark(), s.Factors, s.Own, s.edition.text, open, s.steps.worth)
}

// PlanDue reports whether the day's plan has to be worked out anew, and the mark of what it will be of.
func (s State) PlanDue() (of string, due bool) {
	if s.Day.Has == nil || s.Place != SalePlan && s.Place != Live {
		return "", false
	}
	of = s.dayMark()
	return of, of != s.Day.of
}

// DayPlanned is the state with a plan that has come back; one of other data is dropped.
func (s State) DayPlanned(of string, p DayPlan, err error) State {
	if of != s.dayMark() {
		return s
	}
	s.Day.of, s.Day.at, s.Day.Plan, s.Day.Problem = of, s.resultsMark(), &p, ""
	if err != nil {
		s.Day.Plan, s.Day.Problem = nil, err.Error()
	}
	return s
}

// Planned returns the plan of the day as it stands, nil where there is none or a result came since.
func (s State) Planned() *DayPlan {
	if s.Day.Has == nil || s.Day.at != s.resultsMark() {
		return nil
	}
	return s.Day.Plan
}

// PlanSheet returns the plan of a sale day as PDF. Errors: this desk has no press.
func (d *Desk) PlanSheet(p DayPlan, paper string) ([]byte, error) {
	if d.Press == nil {
		return nil, errors.New("this desk has no press")
	}
	return d.Press.Plan(p, d.Today(), paper)
}

// TodaysBid returns what the plan bids on a lot to come; ok false: it is not in the plan.
func (p *DayPlan) TodaysBid(id int64) (b sale.Bid, ok bool) {
	at := slices.IndexFunc(p.Lots, func(l DayLot) bool { return l.ID == id })
	if at < 0 {
		return b, false
	}
	return p.Answer.Lots[at], true
}

// Awaits reports whether a lot shares what there is for the day while its plan is being worked out.
func (s State) Awaits(id int64) bool {
	return s.Day.Has != nil && s.Day.at != s.resultsMark() &&
		slices.ContainsFunc(s.horizon(), func(e book.Entry) bool { return e.ID == id })
}
