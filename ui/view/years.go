package view

import (
	"fmt"

	"walkline/store/book"
	"walkline/valuation/build"
)

// YearColumns are the columns of the totals of each year.
var YearColumns = []Column{{"Year", false, 54}, {"Kind of wreck", false, 130}, {"Bought", true, 66}, {"Invoices", true, 80},
	{"Sold", true, 56},
	{"Brought", true, 80}, {"Money tied up", true, 100}, {"Profit", true, 80}, {"Per my hour", true, 90}, {"Per day", true, 70}}

// YearNote says how the totals count.
const YearNote = "Bought counts in the year of the purchase, sold in that of the sale. Profit is after my hours at their rates and what " +
	"the money tied up cost. Without a kept forecast neither is counted. (1 ?) says of how many the figure is not known and counts in no " +
	"sum. Per my hour: profit and paid hours over the hours. Per day: over the days from the purchase to the sale."

// YearRow is one total; strong: of all kinds.
type YearRow struct {
	Cells  []string
	Strong bool
}

// Years returns the totals by year and kind of wreck.
func Years(list []book.Bought) []YearRow {
	var accounts []build.Account
	for _, b := range list {
		if b.Ours() {
			accounts = append(accounts, account(b))
		}
	}
	var rows []YearRow
	for _, t := range build.Years(accounts) {
		rows = append(rows, YearRow{yearCells(t), t.All})
	}
	return rows
}

// wreckWords says what wrecked a lot: its first cause, for a vehicle counts once.
func wreckWords(loss []string) string {
	if len(loss) == 0 {
		return "not entered"
	}
	return Words(loss[0])
}

func yearCells(t build.Total) []string {
	p := NewPurse(t.Currency)
	year, kind := fmt.Sprint(t.Year), t.Kind
	if t.Year == 0 {
		year = "no day"
	}
	if t.All {
		kind = "all, " + t.Currency
	}
	cells := []string{year, kind, fmt.Sprint(t.Bought), p.Whole(t.Paid), without(fmt.Sprint(t.Sold), t.Unknown), "", "", "", "", ""}
	if t.Sold > t.Unknown {
		cells[5], cells[6], cells[7] = p.Whole(t.Brought), without(p.Whole(t.Tied), t.Untied), p.Whole(t.Profit)
	}
	if x, ok := t.PerHour(); ok {
		cells[8] = p.Whole(x)
	}
	if x, ok := t.PerDay(); ok {
		cells[9] = p.Whole(x)
	}
	return cells
}

// without says of how many a total is not known.
func without(total string, unknown int) string {
	if unknown == 0 {
		return total
	}
	return total + fmt.Sprintf(" (%d ?)", unknown)
}
