package desk

import (
	"math"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/sale"
)

// Freeing is a bay that a build leaves before the last day of the plan.
type Freeing struct {
	Day    lot.Date // from which it is free
	Number string   // of the build
}

// bayFree returns the day from which a build takes no bay; unknown: nobody can say. A bay is where a vehicle is worked on, so it is free
// when the work ends: on the day entered, by the day on which nine in ten are done, or when the money for it comes in, whichever is first.
func bayFree(b book.Bought, f *valuation.Foresight, in []Coming, today lot.Date) lot.Date {
	if ended := b.Build.Dates.WorkEnded(); ended.Known() {
		return ended
	}
	var day lot.Date
	if f != nil {
		day = today.Plus(int(math.Ceil(f.InBay.P90)))
	}
	for _, c := range in {
		if c.Build == b.ID && c.Day.Known() && (!day.Known() || c.Day < day) {
			day = c.Day
		}
	}
	return day
}

// takesBay counts the bay of a build in hand: none where its work has ended by the plan's first day.
func (p *planner) takesBay(b book.Bought, f *valuation.Foresight) {
	if ended := b.Build.Dates.WorkEnded(); ended.Known() && ended <= p.day {
		return
	}
	p.plan.Hand.Bays++
	p.frees(b, f)
}

// frees notes from which day on a bay that was taken is free.
func (p *planner) frees(b book.Bought, f *valuation.Foresight) {
	if day := bayFree(b, f, p.in, p.desk.Today()); day.Known() {
		p.plan.Frees = append(p.plan.Frees, Freeing{day, b.Number})
	}
}

// free enters the bays that come free by the day of the last lot to come.
func (p *planner) free() {
	lots, all := p.plan.Sale.Lots, p.plan.Frees
	p.plan.Frees = nil
	for _, f := range all {
		if n := len(lots); n > 0 && f.Day <= lots[n-1].Day {
			p.plan.Frees = append(p.plan.Frees, f)
			p.plan.Sale.Freed = append(p.plan.Sale.Freed, sale.Freed{Day: f.Day, Bays: 1})
		}
	}
}
