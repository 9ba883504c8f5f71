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
	l := newLedger(p, spec[build.Charge]{name: "Invoice", noun: "charge", columns: view.ChargeColumns,
		empty: "No charges besides the hammer price.",
		of:    func(b *build.Build) *[]build.Charge { return &b.Charges }, cells: view.Charge, total: view.InvoiceTotal,
		blank: func(build.Charge) build.Charge { return build.Charge{} }})
	l.form.Text("Name", func(c *build.Charge) *string { return &c.Name })
	amount := l.form.Number("Amount", amounts, func(c *build.Charge) any { return &c.Amount })
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
	hammer.Number("Hammer price", optional, func(b *build.Build) any { return &b.Hammer })
	help := form.Small("")
	body := container.NewBorder(container.NewVBox(hammer.Rows, help), nil, nil, nil, l.body)
	return &section{name: "Invoice", body: body, lost: true, first: func() fyne.Focusable { return hammer.First() },
		show: func(o desk.OpenBuild) {
			l.body.Hide()
			say(help, "Another bidder took this lot. What it went for helps to judge the next one; who won is not kept.")
			if o.Ours() {
				l.body.Show()
				say(help, "The charges follow the sale's terms until you change them. Correct whatever the invoice shows differently.")
			}
			hammer.Render(o.Build)
			l.render(o)
		}}
}

// newSale returns the section of the days, the other ways out and the sale.
func newSale(p *Page) *section {
	days, sale, other := buildForm(p, p.edit), buildForm(p, p.sold), buildForm(p, p.edit)
	for i, s := range new(build.Dates).Steps() {
		at := func(b *build.Build) *lot.Date { return b.Dates.Steps()[i].Day }
		days.Date(s.Name, at)
	}
	optional := amounts
	optional.Least = widgets.Bound(0)
	var words []string
	for _, o := range build.Outcomes {
		words = append(words, string(o))
	}
	sale.Choice("How it ended", words, func(b *build.Build) *string { return (*string)(&b.Outcome) })
	sale.Number("First asked", optional, func(b *build.Build) any { return &b.Sale.FirstAsked }).SetRoom(90)
	sale.Number("Sold for", optional, func(b *build.Build) any { return &b.Sale.Price }).SetRoom(90)
	sale.Text("Brand on the title", func(b *build.Build) *string { return &b.Sale.Brand }).SetPlaceHolder("rebuilt")
	whole := widgets.Spec{Kind: widgets.Whole, Unit: "days", Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(3650)}
	sale.Number("On the market, if no dates say", whole, func(b *build.Build) any { return &b.Sale.Days }).SetRoom(90)
	sale.Text("Note", func(b *build.Build) *string { return &b.Note })
	otherWays(other)
	ask := newClosing(p)
	body := container.NewVBox(ask.body, form.Heading("Days", "What has not happened yet stays empty."), days.Rows,
		form.Heading("Selling", "Parted out, or resold as is: what it brought in all."), sale.Rows,
		form.Heading("The other ways out", "Estimate them to compare them with finishing. Leave empty what you have not estimated."),
		other.Rows)
	scroll := container.NewVScroll(clearOfBar(body))
	first := func() fyne.Focusable { // the questions stand on top: a button does not scroll into sight by itself
		if next := ask.first(); next != nil {
			scroll.ScrollToTop()
			return next
		}
		return days.First()
	}
	return &section{name: "Days and selling", body: scroll, first: first, show: func(o desk.OpenBuild) {
		ask.render(o)
		days.Render(o.Build)
		sale.Render(o.Build)
		other.Render(o.Build)
	}}
}

// sold is edit for the sale: an open build that is given a price is taken as sold, for left open, the price would count for nothing.
func (p *Page) sold(words string, change func(*build.Build)) {
	p.edit(words, func(b *build.Build) {
		before := b.Sale.Price
		change(b)
		if b.Sale.Price != before && b.Sale.Price != nil && !b.Outcome.Ended() {
			b.Outcome = build.Sold
		}
	})
}

func buildForm(p *Page, edit form.EditOf[build.Build]) *form.Of[build.Build] {
	return form.NewOf(edit, func(build.Build) money.Currency { return p.currency() })
}
