package worksheet

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/damage"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plan"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// survey is the section of the damage: the plan in its clock ring, and the same facts as a list.
type survey struct {
	page   *Page
	plan   *plan.Plan
	list   *fyne.Container
	photos *photos
	hurt   *hurt           // the area that is selected
	topics []*topic        // what the survey says beside the areas
	room   *fyne.Container // that plan and list share
	rows   []cellRow       // what the list shows
	muted  bool
}

// newDamage returns the section in which the survey is entered.
func newDamage(p *Page) *section {
	d := &survey{page: p, list: container.NewVBox(), photos: newPhotos(p)}
	d.plan = plan.New(d.changed)
	d.hurt = newHurt(d)
	d.plan.OnSelected = func(area string) {
		d.hurt.show(area, d.page.open.Case.Damage)
		if d.photos.show(area) {
			d.room.Refresh()
		}
	}
	d.topics = newTopics(p, func() { d.room.Refresh() })
	p.survey = d
	help := form.Small("Click an area, or go to it by the arrow keys, to read it and see its photos: that changes nothing. Mark it beside " +
		"the plan, or by the keys named below it.")
	head := container.NewVBox(form.Heading("What's damaged", ""), help)
	side := container.NewPadded(container.NewVBox(d.hurt.body, d.photos.body, d.list, topicsBody(d.topics)))
	d.room = newBeside(d.plan, side, listWidth)
	body := container.NewBorder(head, nil, nil, nil, d.room)
	return &section{body: body, show: func(p *Page) { d.render(p.open.Case) }, first: d.plan}
}

// listWidth is the width of the list beside the plan, at text scale 1.
const listWidth = 356

// changed takes one cell from the plan; an empty extent clears it.
func (d *survey) changed(area, extent, depth string) {
	if d.muted {
		return
	}
	d.page.edit("damage "+damage.Area(area), func(c *valuation.Case) { c.Damage = form.WithCell(c.Damage, area, extent, depth) })
}

func (d *survey) render(c valuation.Case) {
	d.muted = true
	d.plan.SetDamage(c.Damage)
	d.plan.SetPhotos(view.PhotoCounts(d.page.open))
	d.muted = false
	d.hurt.show(d.plan.Selected(), c.Damage)
	grown := d.photos.show(d.plan.Selected())
	for _, t := range d.topics {
		grown = t.show(c) || grown
	}
	if !d.sameList(c.Damage) {
		d.list.Objects, d.rows = nil, nil
		for _, cell := range c.Damage {
			r, shown := d.row(cell)
			d.rows = append(d.rows, r)
			d.list.Add(shown)
		}
		if len(c.Damage) == 0 {
			d.list.Add(form.Small("No area is marked. The repair lines and the hidden risks follow from what is entered here."))
			d.list.Add(d.noneSeen(c))
		}
		grown = true
	}
	if grown {
		d.room.Refresh() // all of it: what scrolls has another height
	}
}

// noneSeen is the tick that says of a lot without a mark that it was looked at: silence says nothing.
func (d *survey) noneSeen(c valuation.Case) fyne.CanvasObject {
	t := widgets.NewCheck("I looked, and saw no damage", nil)
	t.SetChecked(c.Findings[valuation.NothingSeen] == "no")
	t.OnChanged = func(on bool) {
		d.page.edit("no damage seen", func(c *valuation.Case) { c.SeeNothing(on) })
	}
	return t
}

// cellRow is one line of the list.
type cellRow struct {
	cell lot.Damage
	note *widgets.TextEntry
}

// sameList reports whether the list shows these cells already, so that typing a note keeps its place.
func (d *survey) sameList(cells []lot.Damage) bool {
	return len(cells) > 0 && slices.EqualFunc(d.rows, cells, func(r cellRow, c lot.Damage) bool {
		return r.cell.Area == c.Area && r.cell.Extent == c.Extent && r.cell.Depth == c.Depth && r.note.Text == c.Note
	})
}

// row returns one cell in words, with its note.
func (d *survey) row(cell lot.Damage) (cellRow, fyne.CanvasObject) {
	words := widget.NewLabel(damage.Area(cell.Area))
	words.TextStyle.Bold = true
	extent := widgets.NewSelect(lot.Extents, nil)
	extent.SetSelected(cell.Extent)
	extent.OnChanged = func(s string) { d.changed(cell.Area, s, cell.Depth) }
	depth := widgets.NewSelect(lot.Depths, nil)
	depth.SetSelected(cell.Depth)
	depth.OnChanged = func(s string) { d.changed(cell.Area, cell.Extent, s) }
	clear := widgets.NewButton("Clear", func() { d.changed(cell.Area, "", "") })
	clear.Importance = widget.LowImportance
	note := widgets.NewTextEntry()
	note.SetPlaceHolder("what you saw; not counted")
	note.SetMeaning(view.Help("Damage note"))
	note.SetText(cell.Note)
	note.OnChanged = func(s string) {
		d.page.edit("note on "+damage.Area(cell.Area), func(c *valuation.Case) {
			if at := slices.IndexFunc(c.Damage, func(x lot.Damage) bool { return x.Area == cell.Area }); at >= 0 {
				c.Damage[at].Note = s
			}
		})
	}
	top := container.NewBorder(nil, nil, words, clear)
	return cellRow{cell, note}, container.NewVBox(top, container.NewGridWithColumns(2, extent, depth), note, widget.NewSeparator())
}
