package sheet

import (
	"fmt"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation/lot"
)

// Day is what the plan of a sale day is printed from.
type Day struct {
	Plan    desk.DayPlan
	Printed lot.Date
	Paper   Paper // none: the one that is usual for the plan's currency
}

// planned are the columns of a printed plan; the last is to write in.
var planned = table{{"Lot", 12, false}, {"Vehicle", 0, false}, {"Today's bid", 19, true}, {"Bid after a win", 22, true},
	{"Walk-away bid", 20, true}, {"Wins", 10, true}, {"Gain", 16, true}, {"Cash left", 17, true}, {"Went for", 20, true}}

// Plan returns the plan of a sale day as PDF: what there is, the lots in the order in which they run with today's bid and the bid after
// one win, which to leave, and the cautions. Lots that are left stand by their numbers alone, so that a usual sale takes one page; no lot
// is dropped where it takes more. Errors: the date printed is no date.
func Plan(d Day) ([]byte, error) {
	p, err := newPress(d.Paper.or(d.Plan.Sale.Currency.Code), "Sale plan", d.Printed)
	if err != nil {
		return nil, err
	}
	c := &column{press: p, x: margin, w: p.paper.Width - 2*margin, y: margin, top: margin}
	p.write(0, margin+c.w, c.y, 1, "printed "+view.Day(d.Printed), smallType)
	c.text("Sale plan", titleType, 0)
	for _, words := range view.DayWords(&d.Plan) {
		c.text(words, bodyType, 0)
	}
	days, rows := dayRows(&d.Plan)
	for i, day := range days {
		c.heading(fmt.Sprintf("%s · %s", day, d.Plan.Sale.Currency.Code))
		c.table(planned, rows[i], "")
	}
	if len(days) == 0 {
		c.text("No lot to bid on.", strongType, 0)
	}
	c.heading("Cautions")
	for _, words := range view.DayCare(&d.Plan) {
		c.bullet(words, smallType)
	}
	return p.print("sale plan · printed " + view.Day(d.Printed) + " · arithmetic on what was entered, not advice")
}

// dayRows returns the days with lots that may be bid on, and the rows of each.
func dayRows(p *desk.DayPlan) (days []lot.Date, rows [][][]string) {
	left := map[string]bool{}
	for _, id := range p.Answer.Leave {
		left[id] = true
	}
	for i, x := range view.DayRows(p) {
		l := p.Lots[i]
		if left[fmt.Sprint(l.ID)] {
			continue
		}
		if n := len(days); n == 0 || days[n-1] != l.Entry.SaleDate {
			days, rows = append(days, l.Entry.SaleDate), append(rows, nil)
		}
		last := len(days) - 1
		rows[last] = append(rows[last], []string{x[1], x[2], x[3], x[8], x[4], x[5], x[6], x[10], ""})
	}
	return days, rows
}
