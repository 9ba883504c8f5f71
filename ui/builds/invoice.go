package builds

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// newInvoice returns the section of what the sale charged. A lost lot shows its hammer price only.
func newInvoice(p *Page) *section {
	l := newLedger(p, spec[build.Charge]{name: "Invoice", noun: "charge", columns: view.ChargeColumns, empty: "No charges beside the hammer price.",
		of: func(b *build.Build) *[]build.Charge { return &b.Charges }, cells: view.Charge, total: view.InvoiceTotal,
		blank: func(build.Charge) build.Charge { return build.Charge{} }})
	l.form.Text("Name", func(c build.Charge) string { return c.Name }, func(c *build.Charge, s string) { c.Name = s })
	amount := l.form.Number("Amount", amounts, func(c build.Charge) widgets.Number { return orEmpty(c.Amount, p.currency()) },
		func(c *build.Charge, n widgets.Number) { c.Amount = orNothing(n, p.currency()) })
	amount.OnSubmitted = func(widgets.Number) {
		if l.selected < 0 {
			l.take()
		}
	}
	amount.SetRoom(90)
	l.lay()
	hammer := form.NewOf(func(_ string, change func(*build.Build)) {
		b := p.open().Build.Clone()
		change(&b)
		p.do(desk.SetHammer(b.Hammer))
	}, func(build.Build) money.Currency { return p.currency() })
	optional := amounts
	optional.Least = widgets.Bound(0)
	hammer.Number("Hammer price", optional, func(b build.Build) widgets.Number { return form.Amount(b.Hammer, p.currency()) },
		func(b *build.Build, n widgets.Number) { b.Hammer = form.ToAmount(n, p.currency()) })
	help := form.Small("")
	body := container.NewBorder(container.NewVBox(hammer.Rows, help), nil, nil, nil, l.body)
	return &section{name: "Invoice", body: body, lost: true, first: func() fyne.Focusable { return hammer.First() }, show: func(o desk.OpenBuild) {
		l.body.Hide()
		say(help, "Another bidder took this lot. What it went for helps to judge the next one; who won is not kept.")
		if o.Ours() {
			l.body.Show()
			say(help, "The charges follow from the sale's terms until you change them: put right whatever the invoice says otherwise.")
		}
		hammer.Render(o.Build)
		l.render(o)
	}}
}

// newSale returns the section of the days, the other ways out and the sale.
func newSale(p *Page) *section {
	days, sale, other := buildForm(p), buildForm(p), buildForm(p)
	for i, s := range new(build.Dates).Steps() {
		at := func(b *build.Build) *lot.Date { return b.Dates.Steps()[i].Day }
		days.Date(s.Name, func(b build.Build) lot.Date { return *at(&b) }, func(b *build.Build, d lot.Date) { *at(b) = d })
	}
	optional := amounts
	optional.Least = widgets.Bound(0)
	var words []string
	for _, o := range build.Outcomes {
		words = append(words, string(o))
	}
	sale.Choice("How it ended", words, func(b build.Build) string { return string(b.Outcome) }, func(b *build.Build, s string) { b.Outcome = build.Outcome(s) })
	amount := func(label string, at func(*build.Build) **money.Amount, then func(*build.Build)) {
		e := sale.Number(label, optional, func(b build.Build) widgets.Number { return form.Amount(*at(&b), p.currency()) },
			func(b *build.Build, n widgets.Number) {
				*at(b) = form.ToAmount(n, p.currency())
				then(b)
			})
		e.SetRoom(90)
	}
	amount("First asked", func(b *build.Build) **money.Amount { return &b.Sale.FirstAsked }, func(*build.Build) {})
	amount("Sold for", func(b *build.Build) **money.Amount { return &b.Sale.Price }, ended)
	sale.Text("Brand on the title", func(b build.Build) string { return b.Sale.Brand }, func(b *build.Build, s string) { b.Sale.Brand = s }).SetPlaceHolder("rebuilt")
	whole := widgets.Spec{Kind: widgets.Whole, Unit: "days", Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(3650)}
	sale.Number("On the market, if no dates say", whole, func(b build.Build) widgets.Number { return form.OrNone(b.Sale.Days) },
		func(b *build.Build, n widgets.Number) { b.Sale.Days = form.ToPointer(n) }).SetRoom(90)
	sale.Text("Note", func(b build.Build) string { return b.Note }, func(b *build.Build, s string) { b.Note = s })
	otherWays(other)
	body := container.NewVBox(form.Heading("Days", "What has not happened yet stays empty."), days.Rows,
		form.Heading("Selling", "Parted out, or resold as is: what it brought in all."), sale.Rows,
		form.Heading("The other ways out", "Judge them to see them beside finishing, from here on. Leave empty what you have not judged."), other.Rows)
	return &section{name: "Days and selling", body: container.NewVScroll(body), first: days.First, show: func(o desk.OpenBuild) {
		days.Render(o.Build)
		sale.Render(o.Build)
		other.Render(o.Build)
	}}
}

// ended takes an open build with a price that it sold for as sold: left open, the price would count for nothing.
func ended(b *build.Build) {
	if b.Sale.Price != nil && !b.Outcome.Ended() {
		b.Outcome = build.Sold
	}
}

func buildForm(p *Page) *form.Of[build.Build] {
	return form.NewOf(p.edit, func(build.Build) money.Currency { return p.currency() })
}
