package view

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// BuildColumns are the columns of the list of builds.
var BuildColumns = []Column{
	{"Bought", false, 104}, {"Lot", false, 46}, {"Vehicle", false, 170}, {"How it stands", false, 118}, {"Days", true, 44},
	{"Paid out", true, 72}, {"Forecast", true, 72}, {"Profit forecast", true, 96}, {"Profit now", true, 84},
}

// BuildNote says what the figures of the list count.
const BuildNote = "Paid out and Forecast are money to others, your hours left out. Both profits count your hours at their rates and the " +
	"cost of the money tied up. Without a kept forecast neither is counted. Profit now of a sold build counts freight, storage, keeping it " +
	"and " +
	"selling at the forecast's value where no bill says them."

// firstFigure is the first of BuildColumns that holds figures.
const firstFigure = 4

// BuildRow is one build of the list.
type BuildRow struct {
	ID      int64
	Cells   []string
	Ended   bool
	bought  lot.Date
	figures []float64 // of the columns with figures, NaN where there is none
}

// BuildFilter is what of the builds is shown and in which order.
type BuildFilter struct {
	Search string
	Sort   int // column
	Down   bool
	Lost   bool // lots that another bidder took, too
}

// Builds returns the builds that the filter lets through, in its order. outlooks hold the forecasts of the open ones.
func Builds(list []book.Bought, outlooks map[int64]valuation.Foresight, today lot.Date, f BuildFilter) []BuildRow {
	var rows []BuildRow
	for _, b := range list {
		if !b.Ours() && !f.Lost {
			continue
		}
		if r := buildRow(b, outlooks, today); contains(append(r.Cells, string(r.bought)), f.Search) {
			rows = append(rows, r)
		}
	}
	slices.SortStableFunc(rows, func(a, b BuildRow) int {
		c := cmp.Compare(a.Cells[f.Sort], b.Cells[f.Sort])
		switch {
		case f.Sort == 0:
			c = cmp.Compare(a.bought, b.bought)
		case f.Sort >= firstFigure:
			c = compareFigures(a.figures[f.Sort-firstFigure], b.figures[f.Sort-firstFigure], f.Down)
		}
		if f.Down {
			return -c
		}
		return c
	})
	return rows
}

// compareFigures orders two figures; one that is not known comes last whichever way.
func compareFigures(a, b float64, down bool) int {
	last := 1
	if down {
		last = -1
	}
	switch {
	case math.IsNaN(a) && math.IsNaN(b):
		return 0
	case math.IsNaN(a):
		return last
	case math.IsNaN(b):
		return -last
	}
	return cmp.Compare(a, b)
}

func buildRow(b book.Bought, outlooks map[int64]valuation.Foresight, today lot.Date) BuildRow {
	p, none := NewPurse(b.Currency), math.NaN()
	figures := []float64{none, none, none, none, none}
	if days, ok := b.Build.Dates.Bought.Days(lastDay(b.Build, today)); ok && days >= 0 {
		figures[0] = float64(days)
	}
	if outlay, ok := Outlay(b.Build); ok {
		figures[1] = p.Major(outlay)
	}
	if said := atPaid(b); said != nil {
		figures[2], figures[3] = p.Major(foretoldOutlay(*said)), said.Profit.Mean
	}
	if came, ok := account(b).Result(); ok {
		figures[4] = came.Profit
	} else if f, ok := outlooks[b.ID]; ok && f.Whole != nil {
		figures[4] = f.Whole.Mean
	}
	cells := []string{Day(b.Build.Dates.Bought), b.Number, Vehicle(b.ModelYear, b.Make, b.Model, b.Trim), Stage(b), "", "", "", "", ""}
	for i, x := range figures {
		if !math.IsNaN(x) {
			cells[firstFigure+i] = p.Whole(x)
		}
	}
	if !math.IsNaN(figures[0]) {
		cells[firstFigure] = fmt.Sprintf("%.0f", figures[0])
	}
	return BuildRow{b.ID, cells, b.Build.Outcome.Ended() || !b.Ours(), b.Build.Dates.Bought, figures}
}

// lastDay returns the day up to which a build's days are counted.
func lastDay(b build.Build, today lot.Date) lot.Date {
	if b.Outcome.Ended() {
		return b.Dates.Sold
	}
	return today
}

// ratesOf returns the rates of own hours that the forecast counted with.
func ratesOf(p *learn.Prediction) map[string]float64 {
	if p == nil {
		return nil
	}
	return p.Terms.Rates
}

// Outlay returns what has been paid, invoice and bills, and whether the hammer price is known.
func Outlay(b build.Build) (money.Amount, bool) {
	if b.Hammer == nil {
		return b.Spent(), len(b.Receipts) > 0
	}
	sum := *b.Hammer + b.Spent()
	for _, c := range b.Charges {
		sum += c.Amount
	}
	return sum, true
}

// foretoldOutlay returns the money that was foretold to go out, own labour and capital cost left out.
func foretoldOutlay(p learn.Prediction) money.Amount {
	l := p.Money
	return p.At + l.Fees + l.Repair + l.Hidden + l.Freight + l.Storage + l.Holding + l.Selling
}

// Stage says how a build stands.
func Stage(b book.Bought) string {
	d := b.Build.Dates
	switch {
	case !b.Ours() && b.Build.Hammer != nil:
		return "lost at " + NewPurse(b.Currency).Group(*b.Build.Hammer)
	case !b.Ours():
		return "lost, price not known"
	case b.Build.Closing == build.Asking:
		return string(b.Build.Outcome) + ", questions open"
	case b.Build.Outcome.Ended():
		return string(b.Build.Outcome)
	case d.Listed != "":
		return "for sale"
	case d.Inspected != "":
		return "inspected"
	case d.Finished != "":
		return "waits for inspection"
	case d.Started != "":
		return "at work"
	case d.Home != "":
		return "home"
	}
	return "to be fetched"
}

// BuildName names a build: "Lot 27   2018 Kettrick Dunlin".
func BuildName(b book.Bought) string {
	name := Vehicle(b.ModelYear, b.Make, b.Model, b.Trim)
	if b.Number != "" {
		name = "Lot " + b.Number + "   " + name
	}
	return name
}
