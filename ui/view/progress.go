package view

import (
	"fmt"
	"slices"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// ProgressColumns are the columns of the table that holds what was foretold against what came, by line of work.
var ProgressColumns = []Column{
	{"Work", false, 170}, {"Forecast", true, 68}, {"Spent", true, 70}, {"Hours", true, 54}, {"Worked", true, 58}, {"Cost left", true, 68},
}

// ProgressRow is one line of work, or a sum.
type ProgressRow struct {
	ID     string // of the line or risk; empty: cannot be ticked
	Cells  []string
	Done   bool
	Strong bool
}

// progress gathers what was foretold and what came under one heading.
type progress struct {
	id, name       string
	said, saidWork float64
	paid           money.Amount
	worked, left   float64
	foretold, open bool
}

// Progress returns what was foretold against what came: the lines of work, the hidden damage that was found or paid for, what
// names no line, the way home, and the sum.
func Progress(o desk.OpenBuild) []ProgressRow {
	p := NewPurse(o.Currency)
	var rows []ProgressRow
	total := progress{name: "All", foretold: o.Foretold != nil}
	for _, x := range append(work(o), beside(o)...) {
		rows = append(rows, ProgressRow{x.id, x.cells(p), x.id != "" && o.Build.IsDone(x.id), false})
		total.said, total.saidWork = total.said+x.said, total.saidWork+x.saidWork
		total.paid, total.worked, total.left = total.paid+x.paid, total.worked+x.worked, total.left+x.left
		total.open = total.open || x.open
	}
	return append(rows, ProgressRow{"", total.cells(p), false, true})
}

func (x progress) cells(p Purse) []string {
	cells := []string{x.name, "", "", "", hoursOf(x.worked), ""}
	if x.paid != 0 {
		cells[2] = p.Group(x.paid)
	}
	if x.foretold {
		cells[1], cells[3] = p.Whole(x.said), hoursOf(x.saidWork)
	}
	if x.open {
		cells[5] = p.Whole(x.left)
	}
	return cells
}

// hoursOf writes hours with one decimal, nothing for none.
func hoursOf(h float64) string {
	if h == 0 {
		return ""
	}
	return fmt.Sprintf("%.1f", h)
}

// Works are the lines of work and the hidden risks that a bill or an hour can be for, with their names: the lines of the plan, the
// risks that were foretold, and whatever a bill names beside.
func Works(o desk.OpenBuild) (ids []string, names map[string]string) {
	names = map[string]string{}
	add := func(id, name string) {
		if _, known := names[id]; !known && id != "" {
			ids, names[id] = append(ids, id), name
		}
	}
	for _, l := range o.Plan {
		add(l.ID, l.Job)
	}
	if o.Foretold != nil {
		for _, i := range o.Foretold.Items {
			if i.Risk == "" {
				add(i.Line, i.Job)
			}
		}
		for _, r := range o.Foretold.Risks {
			add(r.ID, r.Name)
		}
	}
	for _, r := range o.Risks {
		add(r.ID, r.Name)
	}
	for _, r := range o.Build.Receipts {
		add(r.Line, Words(r.Line))
	}
	for _, w := range o.Build.Hours {
		add(w.Line, Words(w.Line))
	}
	return ids, names
}

// work returns the lines of work, and the hidden damage that was found, paid for or worked on.
func work(o desk.OpenBuild) []progress {
	ids, names := Works(o)
	var out []progress
	for _, id := range ids {
		x := progress{id: id, name: names[id], paid: o.Build.BillsFor(id), worked: sum(o.Build.WorkedFor(id)), foretold: o.Foretold != nil}
		hidden := isRisk(o, id)
		if hidden && x.paid == 0 && x.worked == 0 && o.Build.Saw(id) != build.Found {
			continue
		}
		if hidden {
			x.name = "Hidden: " + x.name
		}
		x.said, x.saidWork = said(o.Foretold, func(i learn.Item) bool { return i.Line == id && i.Risk == "" || i.Risk == id })
		if o.Forecast != nil {
			for _, l := range o.Forecast.Lines {
				if l.ID == id {
					x.left, x.open = l.Mean, true
				}
			}
		}
		out = append(out, x)
	}
	return out
}

func isRisk(o desk.OpenBuild, id string) bool {
	return slices.ContainsFunc(o.Risks, func(r valuation.RiskFigure) bool { return r.ID == id }) ||
		o.Foretold != nil && slices.ContainsFunc(o.Foretold.Risks, func(r learn.Risk) bool { return r.ID == id })
}

// said returns the money and the hours that were foretold for the items that pass, each with its chance.
func said(p *learn.Prediction, pass func(learn.Item) bool) (amount, hours float64) {
	if p == nil {
		return 0, 0
	}
	for _, i := range p.Items {
		switch {
		case !pass(i):
		case i.Kind == learn.HoursKind:
			hours += i.Chance * i.Mean
		default:
			amount += i.Chance * i.Mean
		}
	}
	return amount, hours
}

func sum(hours map[string]float64) float64 {
	var all float64
	for _, trade := range lot.Trades {
		all += hours[trade]
	}
	return all
}

// beside returns what belongs to no line of work: hidden damage that has not been found, bills and hours that name none,
// and the way home.
func beside(o desk.OpenBuild) []progress {
	b, cur := o.Build, NewPurse(o.Currency).Currency
	unseen := progress{name: "Hidden damage that has not been found", foretold: o.Foretold != nil}
	unseen.said, unseen.saidWork = said(o.Foretold, func(i learn.Item) bool {
		return i.Risk != "" && b.Saw(i.Risk) != build.Found && b.BillsFor(i.Risk) == 0 && sum(b.WorkedFor(i.Risk)) == 0
	})
	free := progress{name: "Names no line of work", worked: sum(b.WorkedFor("")),
		paid: b.Bills(func(r build.Receipt) bool { return r.Line == "" && !around[r.Kind] })}
	out := []progress{unseen, free}
	for _, kind := range []string{"freight", "storage", "holding", "selling"} {
		x := progress{name: sentence(kind), paid: b.Bills(func(r build.Receipt) bool { return r.Line == "" && r.Kind == kind }),
			foretold: o.Foretold != nil}
		if o.Foretold != nil {
			l := o.Foretold.Money
			x.said = cur.Major(map[string]money.Amount{"freight": l.Freight, "storage": l.Storage, "holding": l.Holding, "selling": l.Selling}[kind])
		}
		out = append(out, x)
	}
	return slices.DeleteFunc(out, func(x progress) bool { return x.paid == 0 && x.said == 0 && x.worked == 0 && x.saidWork == 0 })
}

// around are the kinds of bills that stand in rows of their own.
var around = map[string]bool{"freight": true, "storage": true, "holding": true, "selling": true}

// TradeColumns are the columns of the table of own hours by trade.
var TradeColumns = []Column{{"My hours", false, 120}, {"Forecast", true, 76}, {"Worked", true, 76}}

// Trades returns own hours by trade, foretold and worked.
func Trades(o desk.OpenBuild) []ProgressRow {
	worked := o.Build.Worked()
	var rows []ProgressRow
	for _, trade := range lot.Trades {
		_, foretold := said(o.Foretold, func(i learn.Item) bool { return i.Key == trade && i.Kind == learn.HoursKind })
		if foretold > 0 || worked[trade] > 0 {
			rows = append(rows, ProgressRow{"", []string{sentence(trade), hoursOf(foretold), hoursOf(worked[trade])}, false, false})
		}
	}
	return rows
}
