package form

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plot"
	"walkline/valuation"
	"walkline/valuation/invoice"
)

// Terms is the editor of what the sale charges: bid steps, fee schedules, fixed fees, tax and surcharge, with the invoice
// plotted against the hammer price.
type Terms struct {
	edit  Edit
	rows  *fyne.Container
	curve *plot.Curve
	Body  fyne.CanvasObject // to be laid out
	cells []cell
	names []named
	shape string // what was built; another shape is built anew
	muted bool
}

// cell is one figure of the editor with what writes it.
type cell struct {
	entry *widgets.NumberEntry
	spec  widgets.Spec
	get   func(valuation.Case) widgets.Number
}

// named is one name of a fee with what writes it.
type named struct {
	entry *widgets.TextEntry
	get   func(valuation.Case) string
}

// NewTerms returns the editor, not yet showing a case.
func NewTerms(e Edit, help string) *Terms {
	t := &Terms{edit: e, rows: container.NewVBox(), curve: plot.NewCurve()}
	t.Body = container.NewVBox(
		Heading("Bid steps and fees", help+"A schedule charges the whole price at the row that it reaches, or each slice of the price at its "+
			"own row."),
		t.rows, container.New(&fixedHeight{260}, t.curve))
	return t
}

// Render writes the case into the fields and the plot.
func (t *Terms) Render(c valuation.Case) {
	if s := shapeOf(c); s != t.shape {
		t.shape = s
		t.build(c)
	}
	t.muted = true
	for _, x := range t.cells {
		x.entry.SetSpec(inCurrency(x.spec, CurrencyOf(c)))
		x.entry.SetValue(x.get(c))
	}
	for _, x := range t.names {
		if name := x.get(c); x.entry.Text != name {
			x.entry.SetText(name)
		}
	}
	t.muted = false
	t.curve.SetData(curveOf(view.FeeCurve(c)))
}

// curveOf turns the points of the fees into the plot's.
func curveOf(v view.Curve) plot.CurveData {
	d := plot.CurveData{Steps: true, Empty: "No fees entered.", X: plot.Axis{Title: v.XLabel}, Y: plot.Axis{Title: v.YLabel}}
	for _, p := range v.Points {
		d.Points = append(d.Points, plot.CurvePoint{X: p[0], Y: p[1]})
	}
	return d
}

// shapeOf names how many fields the editor needs and the words in them.
func shapeOf(c valuation.Case) string {
	s := fmt.Sprint(len(c.Buying.BidSteps), " ", c.Currency)
	for _, f := range c.Buying.Fees {
		s += fmt.Sprint(" ", f.Mode, len(f.Rows))
	}
	return s + fmt.Sprint(" ", len(c.Buying.Fixed), c.Buying.Tax.Base)
}

// build makes the fields for the case's terms.
func (t *Terms) build(c valuation.Case) {
	t.rows.Objects, t.cells, t.names = nil, nil, nil
	t.steps(c)
	for i := range c.Buying.Fees {
		t.schedule(c, i)
	}
	t.rows.Add(container.NewHBox(t.button("Add a fee schedule", func(c *valuation.Case) {
		c.Buying.Fees = append(c.Buying.Fees, invoice.Schedule{Name: "Fee", Mode: "whole", Rows: []invoice.Row{{}}})
	})))
	t.fixed(c)
	t.tax(c)
	t.rows.Refresh()
}

// button returns a button that edits the terms.
func (t *Terms) button(words string, change func(*valuation.Case)) *widgets.Button {
	b := widgets.NewButton(words, func() { t.edit(words, change) })
	b.Importance = widget.LowImportance
	return b
}

// number returns a field of the editor.
func (t *Terms) number(label string, spec widgets.Spec, at func(*valuation.Case) any) fyne.CanvasObject {
	e := widgets.NewNumberEntry(spec, nil)
	e.SetFigures(6)
	e.SetRoom(0)
	e.OnChanged = func(n widgets.Number) {
		if !t.muted {
			t.edit(label, func(c *valuation.Case) { write(at(c), n, CurrencyOf(*c)) })
		}
	}
	t.cells = append(t.cells, cell{e, spec, func(c valuation.Case) widgets.Number { return read(at(&c), spec, CurrencyOf(c)) }})
	return e
}

// name returns a field for the name of a fee.
func (t *Terms) name(at func(*valuation.Case) *string) fyne.CanvasObject {
	e := widgets.NewTextEntry()
	e.OnChanged = func(s string) {
		if !t.muted {
			t.edit("name of a fee", func(c *valuation.Case) { *at(c) = s })
		}
	}
	t.names = append(t.names, named{e, func(c valuation.Case) string { return *at(&c) }})
	return e
}

func (t *Terms) steps(c valuation.Case) {
	grid := container.NewGridWithColumns(3, Label("Bid steps: from"), Label("bids rise by"), Label(""))
	for i := range c.Buying.BidSteps {
		at := func(c *valuation.Case) *invoice.Step { return &c.Buying.BidSteps[i] }
		grid.Add(t.number("bid steps", Amounts, func(c *valuation.Case) any { return &at(c).From }))
		grid.Add(t.number("bid steps", Amounts, func(c *valuation.Case) any { return &at(c).Step }))
		grid.Add(t.button("Remove", func(c *valuation.Case) { c.Buying.BidSteps = slices.Delete(c.Buying.BidSteps, i, i+1) }))
	}
	t.rows.Add(grid)
	t.rows.Add(container.NewHBox(t.button("Add a bid step", func(c *valuation.Case) {
		next := invoice.Step{Step: 2500}
		if n := len(c.Buying.BidSteps); n > 0 {
			next = invoice.Step{From: 2*c.Buying.BidSteps[n-1].From + 100000, Step: 2 * c.Buying.BidSteps[n-1].Step}
		}
		c.Buying.BidSteps = append(c.Buying.BidSteps, next)
	})))
}

// schedule adds one fee schedule: its name, its reading and its rows.
func (t *Terms) schedule(c valuation.Case, i int) {
	name := t.name(func(c *valuation.Case) *string { return &c.Buying.Fees[i].Name })
	modes, words := []string{"whole", "slice"}, []string{"whole price", "by slices"}
	mode := widgets.NewSelect(words, nil)
	mode.SetSelectedIndex(slices.Index(modes, c.Buying.Fees[i].Mode))
	mode.OnChanged = func(s string) {
		t.edit("reading of a fee", func(c *valuation.Case) { c.Buying.Fees[i].Mode = modes[slices.Index(words, s)] })
	}
	remove := t.button("Remove all of it", func(c *valuation.Case) { c.Buying.Fees = slices.Delete(c.Buying.Fees, i, i+1) })
	t.rows.Add(container.NewBorder(nil, nil, nil, container.NewHBox(Roomy(mode, words), remove), name))
	grid := container.NewGridWithColumns(6, Label("from"), Label("flat"), Label("percent"), Label("at least"), Label("at most"), Label(""))
	for k := range c.Buying.Fees[i].Rows {
		t.feeRow(grid, i, k)
	}
	t.rows.Add(grid)
	t.rows.Add(container.NewHBox(t.button("Add a row", func(c *valuation.Case) {
		rows := c.Buying.Fees[i].Rows
		c.Buying.Fees[i].Rows = append(rows, invoice.Row{From: 2*rows[len(rows)-1].From + 100000})
	})))
}

// feeRow adds the fields of one row of a schedule.
func (t *Terms) feeRow(grid *fyne.Container, i, k int) {
	at := func(c *valuation.Case) *invoice.Row { return &c.Buying.Fees[i].Rows[k] }
	grid.Add(t.number("fee schedule", Amounts, func(c *valuation.Case) any { return &at(c).From }))
	grid.Add(t.number("fee schedule", Amounts, func(c *valuation.Case) any { return &at(c).Flat }))
	grid.Add(t.number("fee schedule", Percents, func(c *valuation.Case) any { return &at(c).Percent }))
	grid.Add(t.number("fee schedule", Optional, func(c *valuation.Case) any { return &at(c).Minimum }))
	grid.Add(t.number("fee schedule", Optional, func(c *valuation.Case) any { return &at(c).Maximum }))
	if k == 0 {
		grid.Add(Label("")) // a schedule keeps its first row
		return
	}
	grid.Add(t.button("Remove", func(c *valuation.Case) { c.Buying.Fees[i].Rows = slices.Delete(c.Buying.Fees[i].Rows, k, k+1) }))
}

func (t *Terms) fixed(c valuation.Case) {
	grid := container.NewGridWithColumns(3, Label("Fixed fees"), Label("amount"), Label(""))
	for i := range c.Buying.Fixed {
		grid.Add(t.name(func(c *valuation.Case) *string { return &c.Buying.Fixed[i].Name }))
		grid.Add(t.number("fixed fee", Amounts, func(c *valuation.Case) any { return &c.Buying.Fixed[i].Amount }))
		grid.Add(t.button("Remove", func(c *valuation.Case) { c.Buying.Fixed = slices.Delete(c.Buying.Fixed, i, i+1) }))
	}
	t.rows.Add(grid)
	t.rows.Add(container.NewHBox(t.button("Add a fixed fee",
		func(c *valuation.Case) { c.Buying.Fixed = append(c.Buying.Fixed, invoice.Fixed{Name: "Fee"}) })))
}

func (t *Terms) tax(c valuation.Case) {
	bases, words := []string{"hammer", "hammer_and_fees"}, []string{"on hammer price", "on hammer and fees"}
	base := widgets.NewSelect(words, nil)
	base.SetSelectedIndex(slices.Index(bases, c.Buying.Tax.Base))
	base.OnChanged = func(s string) {
		t.edit("base of the tax", func(c *valuation.Case) { c.Buying.Tax.Base = bases[slices.Index(words, s)] })
	}
	grid := container.NewGridWithColumns(3, Label("Sales tax"), Label(""), Label("Payment surcharge"))
	grid.Add(t.number("sales tax", Percents, func(c *valuation.Case) any { return &c.Buying.Tax.Rate }))
	grid.Add(base)
	grid.Add(t.number("payment surcharge", Percents, func(c *valuation.Case) any { return &c.Buying.Surcharge }))
	t.rows.Add(grid)
}

// fixedHeight lays its one object out at a height, as wide as there is room.
type fixedHeight struct{ height float32 }

func (f *fixedHeight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[0].MinSize().Width, f.height)
}

func (f *fixedHeight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	objects[0].Move(fyne.NewPos(0, 0))
}
