package worksheet

import (
	"maps"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
)

// checklist is the section of what to look at: stops in words on top, then a plain list with yes, no, not looked.
type checklist struct {
	page  *Page
	stops *fyne.Container
	list  *fyne.Container
	rows  []*checkRow
	care  *fyne.Container
}

// checkRow is one item on the list.
type checkRow struct {
	check  view.Check
	answer *widget.RadioGroup
	muted  bool
}

func newChecks(p *Page) *section {
	c := &checklist{page: p, stops: container.NewVBox(), list: container.NewVBox(), care: container.NewVBox()}
	body := container.NewVBox(c.stops,
		form.Heading("To look at and to ask", "Yes speaks for trouble. An answer moves the chance of the damage that it tells of, and the verdict with it. The looks that are worth most a minute come first."),
		c.list, form.Heading("Cautions", "The maker's procedure, local codes and licensed practice decide what may be done."), c.care)
	return &section{body: container.NewVScroll(body), show: func(p *Page) { c.render() }}
}

func (c *checklist) render() {
	stops, items := view.Checks(c.page.open)
	c.stops.Objects = nil
	for _, s := range stops {
		c.stops.Add(widgets.NewNote(widgets.Stop, s.Text+" "+s.Why))
	}
	c.stops.Refresh()
	if !c.same(items) {
		c.rebuild(items)
	}
	for i, r := range c.rows {
		r.check = items[i]
		r.muted = true
		r.answer.SetSelected(items[i].Answer)
		r.muted = false
	}
	c.renderCare()
}

func (c *checklist) renderCare() {
	cautions := view.Cautions(c.page.open)
	if len(c.care.Objects) == len(cautions) {
		return
	}
	c.care.Objects = nil
	for _, words := range cautions {
		c.care.Add(widgets.NewNote(widgets.Care, words))
	}
	c.care.Refresh()
}

// same reports whether the list shows these items already.
func (c *checklist) same(items []view.Check) bool {
	if len(items) != len(c.rows) {
		return false
	}
	for i, r := range c.rows {
		if r.check.ID != items[i].ID || r.check.Text != items[i].Text {
			return false
		}
	}
	return true
}

func (c *checklist) rebuild(items []view.Check) {
	c.list.Objects, c.rows = nil, nil
	kind := ""
	for _, i := range items {
		if i.Kind != kind {
			kind = i.Kind
			c.list.Add(widgets.NewHeading(form.Sentence(kind)))
		}
		r, shown := c.row(i)
		c.rows = append(c.rows, r)
		c.list.Add(shown)
	}
	if len(items) == 0 {
		c.list.Add(form.Small("The list comes with the first valuation: enter the facts, the damage and what it should sell for."))
	}
	c.list.Refresh()
}

func (c *checklist) row(i view.Check) (*checkRow, fyne.CanvasObject) {
	r := &checkRow{check: i}
	r.answer = widget.NewRadioGroup([]string{view.Yes, view.No, view.NotLooked}, nil)
	r.answer.Horizontal, r.answer.Required = true, true
	r.answer.OnChanged = func(a string) {
		if !r.muted {
			c.answered(r.check.ID, a)
		}
	}
	if i.Fixed {
		r.answer.Hide()
	}
	words := widget.NewLabel(i.Text)
	words.Wrapping = fyne.TextWrapWord
	why := form.Small(i.Why + "  " + i.Minutes)
	return r, container.NewBorder(nil, nil, nil, container.NewVBox(r.answer), container.New(form.Tight{}, words, why))
}

// answered notes an answer; "not looked" takes it back.
func (c *checklist) answered(id, answer string) {
	c.page.edit("finding "+view.Words(id), func(k *valuation.Case) {
		findings := maps.Clone(k.Findings)
		if findings == nil {
			findings = map[string]string{}
		}
		findings[id] = answer
		if answer == view.NotLooked {
			delete(findings, id)
		}
		k.Findings = findings
	})
}
