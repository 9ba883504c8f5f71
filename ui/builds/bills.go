package builds

import (
	"slices"
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

// newBills returns the section of the bills. A new bill takes nothing over from the one before unless it is asked to.
func newBills(p *Page) *section {
	l := newLedger(p, spec[build.Receipt]{name: "Bills", noun: "bill", columns: view.BillColumns,
		empty: "No bills yet. Add the first one.",
		of:    func(b *build.Build) *[]build.Receipt { return &b.Receipts }, cells: view.Bill, total: view.BillTotal,
		blank: func(build.Receipt) build.Receipt { return build.Receipt{Date: p.today(), Kind: "part"} },
		again: func(last build.Receipt) build.Receipt {
			return build.Receipt{Date: last.Date, Kind: last.Kind, Line: last.Line, Source: last.Source, Trade: last.Trade, Donor: last.Donor,
				Seller: last.Seller, Number: last.Number}
		}})
	p.bills = l
	f := l.form
	addParts(p, f)
	f.Text("What", func(r *build.Receipt) *string { return &r.What }).SetPlaceHolder("bumper cover")
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
	f.Text("Seller", func(r *build.Receipt) *string { return &r.Seller })
	f.Text("Receipt number", func(r *build.Receipt) *string { return &r.Number })
	f.Pick("Source of a part", view.PartSources, view.PartSourcesInWords(), func(r *build.Receipt) *string { return &r.Source })
	f.Pick("Trade", append([]string{""}, lot.Trades...), append([]string{"no trade"}, lot.Trades...),
		func(r *build.Receipt) *string { return &r.Trade })
	addDonor(f)
	addFiles(l)
	l.lay(container.New(layout.NewCustomPaddedLayout(8, 0, 0, 0), parts))
	return &section{name: "Bills", body: l.body, show: func(o desk.OpenBuild) { lines.render(o); l.render(o) }, first: l.first}
}

// BillInHand returns the bill that the form shows of the open build, and its place among the bills; -1: a new one.
func (p *Page) BillInHand() (at int, bill build.Receipt) {
	l := p.bills
	if all := p.open().Build.Receipts; l.shown == p.open().ID && l.selected >= 0 && l.selected < len(all) {
		return l.selected, all[l.selected]
	}
	return -1, build.Receipt{}
}

// GoToBill shows a bill of the open build on its form, -1: a new one.
func (p *Page) GoToBill(at int) {
	p.Go(slices.Index(p.Sections(), "Bills"))
	p.bills.choose(at)
}

// FileOfBill puts a kept file to a bill of a build, -1: to the new one on the form. It reports whether it could: not where that build is
// open no more, or the bill is gone.
func (p *Page) FileOfBill(id int64, at int, f build.File) bool {
	if o := p.open(); o.ID != id || p.state.Place != desk.Builds || at >= len(o.Build.Receipts) {
		return false
	}
	p.GoToBill(at)
	p.bills.change("file", func(r *build.Receipt) { r.SetFiles(append(r.Files(), f)) })
	return true
}

// addDonor adds the field for the vehicle that a used part came from; what is doubtful about its VIN stands below it.
func addDonor(f *form.Of[build.Receipt]) {
	donor := f.Text("Donor's VIN", func(r *build.Receipt) *string { return &r.Donor })
	donor.OnChanged = func(s string) {
		f.Change("Donor's VIN", func(r *build.Receipt) { r.Donor = strings.ToUpper(strings.TrimSpace(s)) })
	}
	donor.SetPlaceHolder("needed for the inspection")
	doubt := form.Small("")
	f.Row("", doubt, func(r build.Receipt) { say(doubt, view.DonorWords(r)) })
}

// addFiles adds the files of a bill: each opens in the system's viewer and can be taken off.
func addFiles(l *ledger[build.Receipt]) {
	files := container.NewVBox()
	choose := widgets.NewButton("Add a file…", func() {
		id, at := l.shown, l.selected
		l.page.do(desk.WantFile(func(name, hash string) bool {
			return l.page.FileOfBill(id, at, build.File{Name: name, Hash: hash})
		}))
	})
	l.form.Row("Photos or PDFs", container.NewVBox(files, container.NewHBox(choose)), func(r build.Receipt) {
		files.Objects = nil
		for i, f := range r.Files() {
			name := widgets.NewButton(f.Name, func() { l.page.do(desk.WantOpen(f.Name, f.Hash)) })
			name.Importance = widget.LowImportance
			off := widgets.NewButton("Take off", func() {
				l.change("file taken off", func(r *build.Receipt) { r.SetFiles(slices.Delete(r.Files(), i, i+1)) })
			})
			files.Add(container.NewBorder(nil, nil, nil, off, name))
		}
		files.Refresh()
	})
}

// newHours returns the section of the own hours.
func newHours(p *Page) *section {
	l := newLedger(p, spec[build.Work]{name: "Hours", noun: "entry", columns: view.HoursColumns,
		empty: "No hours yet. Add the first ones.",
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
