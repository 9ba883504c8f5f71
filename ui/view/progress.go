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

// ProgressRule says how the table of progress counts.
const ProgressRule = "Tick a line when its work is finished: the forecast takes it off. Forecast money and hours carry the chance that " +
	"the work was needed. Cost left also knows that work which turns out to be needed tends to be the dearer sort, so it may lie a " +
	"little above. " + valuation.FreeRule

// ProgressRow is one line of work, or a sum.
type ProgressRow struct {
	ID     string // of the line or risk; empty: cannot be ticked
	Cells  []string
	Done   bool
	Strong bool
}

// progress gathers what was foretold and what came under one heading. Money stands without own labour and labour beside it.
type progress struct {
	id, name       string
	said, saidPay  float64 // foretold
	saidWork       float64
	paid           money.Amount
	pay, worked    float64 // own hours at their rates, and the hours
	left, leftPay  float64
	foretold, open bool
}

// plus adds the figures of y to x.
func (x progress) plus(y progress) progress {
	x.said, x.saidPay, x.saidWork = x.said+y.said, x.saidPay+y.saidPay, x.saidWork+y.saidWork
	x.paid, x.pay, x.worked = x.paid+y.paid, x.pay+y.pay, x.worked+y.worked
	x.left, x.leftPay, x.open = x.left+y.left, x.leftPay+y.leftPay, x.open || y.open
	return x
}

// Progress returns what was foretold against what came and what is left: the lines of work, the hidden damage that was found or paid
// for, what names no line, the way home, and the sum. All money is of one kind: with own hours at their rates, or without.
func Progress(o desk.OpenBuild, labour bool) []ProgressRow {
	p := NewPurse(o.Currency)
	var rows []ProgressRow
	total := progress{name: "All", foretold: o.Foretold != nil}
	for _, x := range append(work(o), beside(o)...) {
		rows = append(rows, ProgressRow{x.id, x.cells(p, labour), x.id != "" && o.Build.IsDone(x.id), false})
		total = total.plus(x)
	}
	return append(rows, ProgressRow{"", total.cells(p, labour), false, true})
}

func (x progress) cells(p Purse, labour bool) []string {
	cells := []string{x.name, "", "", "", hoursOf(x.worked), ""}
	if !labour {
		x.saidPay, x.pay, x.leftPay = 0, 0, 0
	}
	if spent := x.paid + p.FromMajor(x.pay); spent != 0 {
		cells[2] = p.Group(spent)
	}
	if x.foretold {
		cells[1], cells[3] = p.Whole(x.said+x.saidPay), hoursOf(x.saidWork)
	}
	if x.open {
		cells[5] = p.Whole(x.left + x.leftPay)
	}
	return cells
}

// due puts what is left of a kind, and of a line of work, into x.
func (x progress) due(o desk.OpenBuild, kind valuation.DueKind, line string) progress {
	if o.Forecast == nil {
		return x
	}
	for _, d := range o.Forecast.Due {
		if d.Kind == kind && d.Line == line && (kind == valuation.DueWork || d.Cost != 0) {
			x.left, x.leftPay, x.open = x.left+d.Cost-d.Labour, x.leftPay+d.Labour, true
		}
	}
	return x
}

// ratesFor returns the rates of own hours that a build is counted with: those of its forecast, else those of its worksheet.
func ratesFor(o desk.OpenBuild) map[string]float64 {
	if rates := ratesOf(o.Foretold); rates != nil {
		return rates
	}
	return o.Case.Labour.Rates
}

// pays returns own hours on a line at their rates.
func pays(o desk.OpenBuild, line string) float64 {
	return build.Labour(o.Build.WorkedFor(line), ratesFor(o))
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
	for _, u := range o.Build.Unlisted {
		add(u.ID, u.Name)
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
		x := progress{id: id, name: names[id], paid: o.Build.BillsFor(id), worked: sum(o.Build.WorkedFor(id)), pay: pays(o, id),
			foretold: o.Foretold != nil}
		hidden := isRisk(o, id)
		found := o.Build.IsUnlisted(id)
		if hidden && x.paid == 0 && x.worked == 0 && o.Build.Saw(id) != build.Found {
			continue
		}
		if hidden || found {
			x.name = "Hidden: " + x.name
		}
		x = x.says(o, func(i learn.Item) bool { return i.Line == id && i.Risk == "" || i.Risk == id })
		out = append(out, x.due(o, valuation.DueWork, id))
	}
	return out
}

func isRisk(o desk.OpenBuild, id string) bool {
	return slices.ContainsFunc(o.Risks, func(r valuation.RiskFigure) bool { return r.ID == id }) ||
		o.Foretold != nil && slices.ContainsFunc(o.Foretold.Risks, func(r learn.Risk) bool { return r.ID == id })
}

// says puts what was foretold for the items that pass into x.
func (x progress) says(o desk.OpenBuild, pass func(learn.Item) bool) progress {
	x.said, x.saidWork = said(o.Foretold, pass)
	hours := map[string]float64{}
	for _, trade := range lot.Trades {
		_, hours[trade] = said(o.Foretold, func(i learn.Item) bool { return i.Kind == learn.HoursKind && i.Key == trade && pass(i) })
	}
	x.saidPay = build.Labour(hours, ratesFor(o))
	return x
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
	unseen = unseen.says(o, func(i learn.Item) bool {
		return i.Risk != "" && b.Saw(i.Risk) != build.Found && b.BillsFor(i.Risk) == 0 && sum(b.WorkedFor(i.Risk)) == 0
	}).due(o, valuation.DueHidden, "")
	free := progress{name: "Names no line of work", worked: sum(b.WorkedFor("")), pay: pays(o, ""),
		paid: b.Bills(func(r build.Receipt) bool { return r.Line == "" && !around[r.Kind] })}
	out := []progress{unseen, free}
	for _, kind := range []string{"freight", "storage", "holding", "selling"} {
		x := progress{name: sentence(kind), paid: b.Bills(func(r build.Receipt) bool { return r.Line == "" && r.Kind == kind }),
			foretold: o.Foretold != nil}
		if o.Foretold != nil {
			l := o.Foretold.Money
			x.said = cur.Major(map[string]money.Amount{"freight": l.Freight, "storage": l.Storage, "holding": l.Holding, "selling": l.Selling}[kind])
		}
		out = append(out, x.due(o, valuation.DueKind(kind), ""))
	}
	return slices.DeleteFunc(out, func(x progress) bool {
		return x.paid == 0 && x.said == 0 && x.worked == 0 && x.saidWork == 0 && !x.open
	})
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
