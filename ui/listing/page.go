package listing

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/valuation"
)

// Page is the page of a listed lot.
type Page struct {
	do      func(desk.Action)
	title   *widgets.Words
	missing *missing
	text    *text
	forms   []*form.Form
	marks   *widget.RichText
	prices  *widgets.Words
	fields  map[string]fyne.Focusable // by the key of what they ask for
	body    fyne.CanvasObject

	state desk.State
	seeks int // already shown
	lot   int64
}

// textWidth is the width of the right side, with the listing's text, at text scale 1.
const textWidth = 320

// New returns the page, not yet showing a lot.
func New(do func(desk.Action)) *Page {
	p := &Page{do: do, title: widgets.NewHeading(""), marks: form.Small(""), prices: widgets.NewLine(""),
		fields: map[string]fyne.Focusable{}}
	p.missing = newMissing(do)
	p.text = newText(do)
	head := container.New(layout.NewCustomPaddedVBoxLayout(theme.Half), p.title, p.missing.body)
	fields := container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 0, 0, theme.Wide), p.groups()))
	right := container.New(form.FixedWidth{Width: textWidth}, p.text.body)
	inner := container.New(layout.NewBorderLayout(head, nil, nil, right), head, right, // the keyboard goes through them as they stand here
		container.New(form.Room{Width: 480, Height: 320}, fields))
	p.body = container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, theme.Wide, theme.Wide), inner)
	return p
}

// groups returns the fields in the order of a listing.
func (p *Page) groups() fyne.CanvasObject {
	vehicle, paper, state, hurt, brings, sale := p.form(), p.form(), p.form(), p.form(), p.form(), p.form()
	p.fields["lot"] = form.Identity(vehicle)
	p.fields["lot.title.document"] = form.Title(paper)
	form.Condition(state)
	p.fields["damage"] = form.Marked(hurt)
	p.fields["resale"] = brings.Three("My guess: low, likely, high", form.Amounts,
		func(c *valuation.Case) any { return &c.Resale.Guess }).Focus()
	form.Sale(sale)
	table := widgets.NewButton("Import comparables…", func() { p.do(desk.Want(desk.ImportComparables)) })
	return container.NewVBox(
		form.Heading("Vehicle", ""), vehicle.Rows,
		form.Heading("Title", "As the listing names it. \"Not yet known\" is an answer too."), paper.Rows,
		form.Heading("State", "A question left open counts as not known, never as none."), state.Rows,
		form.Heading("What's damaged", "How bad and how deep is marked on the worksheet, under Damage (Ctrl+2)."), hurt.Rows,
		p.marks,
		form.Heading("What it brings", "A guess of the price it sells for when finished, or a table of comparables: paste it or drop it "+
			"anywhere on this page."), container.NewHBox(table, p.prices), brings.Rows,
		form.Heading("Sale", "The sale decides fees and bid steps."), sale.Rows)
}

func (p *Page) form() *form.Form {
	f := form.New(form.Surveyed(func(words string, change func(*valuation.Case)) { p.do(desk.EditLot(words, change)) }))
	p.forms = append(p.forms, f)
	return f
}

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard: the field that is sought, or the listing's text.
func (p *Page) First() fyne.Focusable {
	if f := p.field(p.state.Sought); f != nil && p.state.Seeks == p.seeks && p.seeks > 0 {
		return f
	}
	return p.text.entry
}

// field returns the field that a key of the case file is entered in, nil where this page has none.
func (p *Page) field(key string) fyne.Focusable {
	if key == "lot.model_year" || key == "lot.vin" {
		key = "lot"
	}
	return p.fields[key]
}

// Render writes the open lot into the page, and gives the keyboard to what is sought.
func (p *Page) Render(s desk.State) {
	p.state = s
	if s.Open == nil {
		return
	}
	o := *s.Open
	if o.ID != p.lot {
		p.lot = o.ID
		p.text.entry.SetText("")
	}
	p.title.SetText(view.LotTitle(o.Case))
	p.missing.render(o)
	p.text.render(o)
	for _, f := range p.forms {
		f.Render(o.Case)
	}
	p.marks.Segments[0].(*widget.TextSegment).Text = view.Marks(o.Case)
	p.marks.Refresh()
	p.prices.SetText(view.PricesThere(o))
	if s.Seeks != p.seeks {
		p.seeks = s.Seeks
		if f := p.field(s.Sought); f != nil {
			draw.FocusOn(f)
		}
	}
}
