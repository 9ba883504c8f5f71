package sheet

import (
	"fmt"

	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// List is what a shopping list is printed from.
type List struct {
	Parts   []valuation.Wanted
	Printed lot.Date
	Paper   Paper // none: the one that is usual for the first part's currency
}

// shopped are the columns of a printed shopping list; each lot stands under a heading of its own.
var shopped = table{{"Part, what for, needed", 0, false}, {"Ask", 8, true}, {"Source", 26, false}, {"Price + freight", 34, true},
	{"Days", 10, true}, {"Said", 42, false}}

// Shopping returns a shopping list as PDF: the parts of each lot with their sources in the order in which they are asked, what each is
// for, what a yard said, and the cautions of that work. Errors: the date printed is no date.
func Shopping(l List) ([]byte, error) {
	currency := ""
	if len(l.Parts) > 0 {
		currency = l.Parts[0].Currency
	}
	p, err := newPress(l.Paper.or(currency), "Shopping list", l.Printed)
	if err != nil {
		return nil, err
	}
	c := &column{press: p, x: margin, w: p.paper.Width - 2*margin, y: margin, top: margin}
	p.write(0, margin+c.w, c.y, 1, "printed "+view.Day(l.Printed), smallType)
	c.text("Shopping list", titleType, 0)
	c.text(view.ShoppingSum(l.Parts), bodyType, 0)
	for from := 0; from < len(l.Parts); {
		head, to := l.Parts[from], from
		var rows [][]string
		for to < len(l.Parts) && l.Parts[to].Lot == head.Lot && l.Parts[to].Vehicle == head.Vehicle {
			rows = append(rows, shoppedRow(l.Parts[to], rows == nil || l.Parts[to].Turn == 1, string(l.Printed)))
			to++
		}
		c.heading(fmt.Sprintf("Lot %s · %s · %s", or(head.Lot, "not numbered"), or(head.Vehicle, "(vehicle not entered)"), head.Currency))
		c.table(shopped, rows, "")
		from = to
	}
	if care := view.ShoppingCare(l.Parts); len(care) > 0 {
		c.heading("Cautions")
		for _, words := range care {
			c.bullet(words, smallType)
		}
	}
	return p.print("shopping list · printed " + view.Day(l.Printed) + " · starter prices are from memory")
}

// shoppedRow returns the cells of a source; what the part is stands at its first source only.
func shoppedRow(x valuation.Wanted, first bool, today string) []string {
	cells := view.ShoppingRow(x, today)
	part := ""
	if first {
		part = cells[1] + ": " + cells[2] + ", " + cells[3]
	}
	price := cells[6]
	if x.Freight.Likely > 0 {
		price += " + " + cells[7]
	}
	return []string{part, cells[4], cells[5], price, cells[8], cells[10]}
}
