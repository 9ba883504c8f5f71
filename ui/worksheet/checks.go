package worksheet

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
)

// checklist is the section of what to look at and to ask: stops in words on top, then the looks by worth, then paper.
type checklist struct {
	page  *Page
	notes *fyne.Container // stops, and what does not agree
	basis *widget.RichText
	best  *widget.RichText
	order *widgets.Select
	again *widgets.Button
	list  *fyne.Container // looks
	paper *fyne.Container // title and lists
	loss  *fyne.Container
	care  *fyne.Container
	sold  *widgets.NumberEntry
	room  *container.Scroll

	rows  map[string]*checkRow
	held  []string // the looks as they stand: an answer moves no row
	shown string   // what the rows were made of
	lot   int64
	muted bool

	cautions []string // that are shown
}

// The orders of the looks.
const (
	byWorth = "value per minute"
	byWalk  = "one walk round"
)

func newChecks(p *Page) *section {
	c := &checklist{page: p, notes: container.NewVBox(), basis: form.Small(""), best: form.Small(""), list: container.NewVBox(),
		paper: container.NewVBox(), loss: container.NewVBox(), care: container.NewVBox(), rows: map[string]*checkRow{}}
	guess := form.New(p.edit)
	first := guess.Three("Hammer price, my guess", form.Amounts, func(c *valuation.Case) any { return &c.Market.HammerGuess })
	first.SetRoom(60)
	c.order = widgets.NewSelect([]string{byWorth, byWalk}, func(string) { c.reorder() })
	c.again = widgets.NewButton("Put in order again", c.reorder)
	c.sold = widgets.NewNumberEntry(widgets.Spec{Kind: widgets.Whole, Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(999)},
		c.state)
	body := container.NewVBox(c.notes,
		form.Heading("Walk-around",
			"Yes means trouble. An answer moves the chance of the damage that it tells of, and the verdict with it. Keys: Y, N, Delete; up "+
				"and down."),
		guess.Rows, c.basis, c.best,
		container.NewHBox(widget.NewLabel("In order of"), form.Roomy(c.order, []string{byWorth}), c.again),
		c.list, c.paper,
		container.NewHBox(widget.NewLabel("Vehicles sold in 12 months"), c.sold),
		c.loss, form.Heading("Cautions", "The maker's procedure, local codes and licensed practice decide what may be done."), c.care)
	c.order.SetSelected(byWorth)
	c.room = container.NewVScroll(body)
	return &section{body: c.room, forms: []*form.Form{guess}, first: first.Focus(), show: func(p *Page) { c.render() }}
}

// state hands on how many vehicles the user says to have sold.
func (c *checklist) state(n widgets.Number) {
	if !c.muted {
		var sold *int
		if n.Known {
			sold = new(n.Int())
		}
		c.page.do(desk.SetSold(sold))
	}
}

// reorder puts the looks in their order of now.
func (c *checklist) reorder() {
	c.held, c.shown = nil, ""
	c.render()
}

func (c *checklist) render() {
	o := c.page.open
	v := view.NewChecksPage(o)
	if o.ID != c.lot {
		c.lot, c.held, c.shown = o.ID, nil, ""
		c.room.ScrollToTop()
	}
	fill(c.notes, append(notes(widgets.Stop, v.Stops), notes(widgets.Care, v.Clashes)...))
	c.say(v)
	c.hold(&v)
	if made := c.made(v); made != c.shown {
		c.shown = made
		c.rebuild(v)
	}
	for _, i := range slices.Concat(v.Looks, v.Titles) {
		c.rows[i.ID].render(i)
	}
	for _, l := range v.Lists {
		for _, i := range l.Items {
			c.rows[i.ID].render(i)
		}
	}
	c.muted = true
	c.sold.SetValue(stated(o.Standing.Stated))
	c.muted = false
	c.renderCare()
	c.fit()
}

// fit lets the room take the height of the list, so that a row can be scrolled to at once.
func (c *checklist) fit() {
	if c.room != nil && c.room.Content.Size().Height < c.room.Content.MinSize().Height {
		c.room.Refresh()
	}
}

// say writes what stands above the looks and below the lists.
func (c *checklist) say(v view.ChecksPage) {
	words(c.basis, v.Basis)
	if !v.Known {
		words(c.basis, v.Waits)
	}
	words(c.best, strings.Join(v.Rounds, "\n"))
	c.best.Hidden = len(v.Rounds) == 0
	var loss []fyne.CanvasObject
	if len(v.Loss) > 0 {
		loss = append([]fyne.CanvasObject{form.Heading("What the rules of total loss would call it",
			"The arithmetic alone, on the figures below.")}, lines(v.Loss)...)
	}
	fill(c.loss, loss)
}

// hold keeps the looks in the order in which they stand, so that an answer moves nothing under the hand.
func (c *checklist) hold(v *view.ChecksPage) {
	var now []string
	for _, l := range v.Looks {
		now = append(now, l.ID)
	}
	same := slices.Clone(now)
	held := slices.Clone(c.held)
	slices.Sort(same)
	slices.Sort(held)
	if !slices.Equal(same, held) {
		c.held = now
	}
	slices.SortStableFunc(v.Looks, func(a, b view.Check) int { return slices.Index(c.held, a.ID) - slices.Index(c.held, b.ID) })
	if c.order.Selected == byWorth && !slices.Equal(now, c.held) {
		c.again.Enable()
	} else {
		c.again.Disable()
	}
}

func (c *checklist) renderCare() {
	cautions := view.Cautions(c.page.open)
	if slices.Equal(c.cautions, cautions) {
		return
	}
	c.cautions, c.care.Objects = cautions, nil
	for _, words := range cautions {
		c.care.Add(widgets.NewNote(widgets.Care, words))
	}
	c.care.Refresh()
}

// stated returns a count that may not be known as a number.
func stated(n *int) widgets.Number {
	if n == nil {
		return widgets.Number{}
	}
	return widgets.Known(float64(*n))
}
