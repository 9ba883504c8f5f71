package saleday

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
)

// coming is the list of the money that comes in: a day and an amount each.
type coming struct {
	do   func(desk.Action)
	rows *fyne.Container
	form *form.Of[desk.SaleDay] // of all rows; built anew with another number of them
	body fyne.CanvasObject      // to be laid out
	has  int                    // rows
}

// Widths of the fields of a row, at text scale 1.
const (
	dayWidth    = 170
	amountWidth = 180
)

func newComing(do func(desk.Action)) *coming {
	c := &coming{do: do, rows: container.NewVBox(), has: -1}
	add := widgets.NewButton("Add money", func() {
		do(desk.EditDay("money that comes in", func(d *desk.SaleDay) { d.In = append(d.In, desk.Coming{}) }))
	})
	builds := widgets.NewButton("From builds in hand", func() { do(desk.TakeComing()) })
	print := widgets.NewButton("Print the plan…", func() { do(desk.Want(desk.PrintPlan)) })
	c.body = container.NewVBox(container.NewHBox(
		widgets.NewExplained(widget.NewLabel("Money that comes in"), view.Help("Money that comes in")), add, builds, layout.NewSpacer(), print),
		container.New(few{c.rows}, container.NewVScroll(c.rows)))
	return c
}

// few keeps the height of no more than a few rows for the pane that scrolls them, so that a long list leaves the plan its room.
type few struct{ rows *fyne.Container }

// inSight is how many rows are. Ours: half of one shows that there are more.
const inSight = 3.5

func (f few) MinSize([]fyne.CanvasObject) fyne.Size {
	size := f.rows.MinSize()
	if n := float32(len(f.rows.Objects)); n > inSight {
		size.Height *= inSight / n
	}
	return size
}

func (f few) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

// render writes the money of a day into the rows.
func (c *coming) render(d desk.SaleDay) {
	if len(d.In) != c.has {
		c.has = len(d.In)
		c.build(d)
	}
	c.form.Render(d)
}

// build makes a row of fields for each amount.
func (c *coming) build(d desk.SaleDay) {
	edit := func(label string, change func(*desk.SaleDay)) { c.do(desk.EditDay(label, change)) }
	c.form = form.NewOf(edit, currencyOf)
	c.rows.Objects = nil
	for i := range d.In {
		row := form.Apart(c.form)
		row.Date("Comes in on", func(d *desk.SaleDay) *lot.Date { return &d.In[i].Day })
		row.Number("Amount coming in", cash, func(d *desk.SaleDay) any { return &d.In[i].Amount })
		from := widget.NewLabel("")
		c.form.Also(func(d desk.SaleDay) { from.SetText(view.ComingFrom(d.In[i])) })
		off := widgets.NewButton("Take off", func() {
			edit("money taken off", func(d *desk.SaleDay) { d.In = slices.Delete(d.In, i, i+1) })
		})
		off.Importance = widget.LowImportance
		o := row.Rows.Objects
		c.rows.Add(container.NewHBox(o[0], container.New(form.FixedWidth{Width: dayWidth}, o[1]),
			o[2], container.New(form.FixedWidth{Width: amountWidth}, o[3]), from, off))
	}
	c.rows.Refresh()
}
