package builds

import (
	"strings"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// amounts is how a bill's amount is typed: "1.2k" and "1,200" are the same.
var amounts = widgets.Spec{Kind: widgets.Money, Digits: 2, Optional: true}

// newBills returns the section of the bills.
func newBills(p *Page) *section {
	l := newLedger(p, spec[build.Receipt]{name: "Bills", noun: "bill", columns: view.BillColumns,
		empty: "No bills yet. Enter the first one beside.",
		of:    func(b *build.Build) *[]build.Receipt { return &b.Receipts }, cells: view.Bill, total: view.BillTotal,
		blank: func(last build.Receipt) build.Receipt {
			kind := last.Kind
			if kind == "" {
				kind = "part"
			}
			return build.Receipt{Date: p.today(), Kind: kind, Line: last.Line, Source: last.Source, Donor: last.Donor}
		}})
	f := l.form
	what := f.Text("What", func(r *build.Receipt) *string { return &r.What })
	amount := f.Number("Amount", amounts, func(r *build.Receipt) any { return &r.Amount })
	amount.OnSubmitted = func(widgets.Number) {
		if l.selected < 0 {
			l.take()
		}
	}
	amount.SetRoom(90)
	f.Pick("For", build.Kinds, view.KindsInWords(), func(r *build.Receipt) *string { return &r.Kind })
	lines := addLines(p, f, func(r *build.Receipt) *string { return &r.Line })
	parts := form.Small("")
	f.Also(func(r build.Receipt) { say(parts, view.PartsOf(p.open(), r.Line)) })
	f.Date("Day", func(r *build.Receipt) *lot.Date { return &r.Date })
	f.Pick("Source of a part", view.PartSources, view.PartSourcesInWords(), func(r *build.Receipt) *string { return &r.Source })
	f.Pick("Trade", append([]string{""}, lot.Trades...), append([]string{"no trade"}, lot.Trades...),
		func(r *build.Receipt) *string { return &r.Trade })
	donor := f.Text("Donor's VIN", func(r *build.Receipt) *string { return &r.Donor })
	donor.OnChanged = func(s string) {
		f.Change("Donor's VIN", func(r *build.Receipt) { r.Donor = strings.ToUpper(strings.TrimSpace(s)) })
	}
	file := widgets.NewCaption("")
	f.Row("Photo or PDF", container.NewHBox(widget.NewButton("Choose…", func() {
		p.do(desk.WantFile(func(name, hash string) { l.change("file", func(r *build.Receipt) { r.File, r.Hash = name, hash }) }))
	}), file), func(r build.Receipt) { file.SetText(view.FileName(r)) })
	what.SetPlaceHolder("bumper cover")
	donor.SetPlaceHolder("needed for the inspection")
	l.lay(container.New(layout.NewCustomPaddedLayout(8, 0, 0, 0), parts))
	return &section{name: "Bills", body: l.body, show: func(o desk.OpenBuild) { lines.render(o); l.render(o) }, first: l.first}
}

// newHours returns the section of the own hours.
func newHours(p *Page) *section {
	l := newLedger(p, spec[build.Work]{name: "Hours", noun: "entry", columns: view.HoursColumns,
		empty: "No hours yet. Enter the first ones beside.",
		of:    func(b *build.Build) *[]build.Work { return &b.Hours }, cells: view.HoursEntry, total: view.HoursTotal,
		blank: func(last build.Work) build.Work {
			if last.Trade == "" {
				last.Trade = lot.Trades[0]
			}
			return build.Work{Date: p.today(), Trade: last.Trade, Line: last.Line}
		}})
	f := l.form
	hours := f.Number("Hours", widgets.Spec{Unit: "h", Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(1000)},
		func(w *build.Work) any { return &w.Hours })
	hours.OnSubmitted = func(widgets.Number) {
		if l.selected < 0 {
			l.take()
		}
	}
	hours.SetRoom(90)
	f.Choice("Trade", lot.Trades, func(w *build.Work) *string { return &w.Trade })
	lines := addLines(p, f, func(w *build.Work) *string { return &w.Line })
	f.Date("Day", func(w *build.Work) *lot.Date { return &w.Date })
	f.Text("What", func(w *build.Work) *string { return &w.What })
	l.lay()
	return &section{name: "Hours", body: l.body, show: func(o desk.OpenBuild) { lines.render(o); l.render(o) }, first: l.first}
}

// open returns the open build, the zero build where there is none.
func (p *Page) open() desk.OpenBuild {
	if p.state.Build == nil {
		return desk.OpenBuild{}
	}
	return *p.state.Build
}

// say changes the words of a line of the second rank.
func say(t *widget.RichText, words string) {
	t.Segments[0].(*widget.TextSegment).Text = words
	t.Refresh()
}
