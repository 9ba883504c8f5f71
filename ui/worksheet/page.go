package worksheet

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/rail"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Page is the worksheet of one lot.
type Page struct {
	do        func(desk.Action)
	thumbnail Thumbnails

	sections []*section
	survey   *survey
	rail     *rail.Rail
	title    *widgets.Words
	verdict  *verdict
	work     *work
	build    *widgets.Button      // to the lot's build, once it is won
	known    *valuation.Knowledge // that the fields with type-ahead show
	body     fyne.CanvasObject

	open    desk.Open
	travels int // through the history, already shown
}

// Sections are the names of the sections, in the order of the job.
var Sections = []string{"Facts", "Damage", "Repair", "Resale", "Costs", "Checks"}

// New returns the page, not yet showing a lot.
func New(do func(desk.Action), thumbnail Thumbnails, know valuation.Knowledge) *Page {
	p := &Page{do: do, known: &know, thumbnail: thumbnail, verdict: newVerdict(do), title: widgets.NewHeading("")}
	p.sections = []*section{newFacts(p), newDamage(p), newRepair(p, know), newResale(p), newCosts(p), newChecks(p)}
	var parts []rail.Section
	for i, name := range Sections {
		parts = append(parts, rail.Section{Name: name, Body: p.sections[i].body})
	}
	p.rail = rail.Across(parts, func(int) { p.renderSection() })
	p.build = widgets.NewButton("Build", func() { p.do(desk.GoToBuild(p.open.ID)) })
	top := container.New(layout.NewCustomPaddedLayout(0, 0, theme.Wide, 0),
		container.NewBorder(nil, nil, nil, container.NewHBox(container.NewPadded(p.build), container.NewPadded(p.rail.Buttons)), p.title))
	right := container.New(form.Side{}, p.verdict.body)
	p.body = container.NewBorder(top, nil, nil, right, container.New(layout.NewCustomPaddedLayout(0, theme.Space, theme.Wide, theme.Wide),
		container.New(form.Room{Width: 560, Height: 320}, p.rail.Room)))
	return p
}

// Know takes the catalogues that lots are valued with from now on; nil leaves them as they are.
func (p *Page) Know(k *valuation.Knowledge) {
	if k != nil && k != p.known {
		p.known = k
		p.work.know(*k)
	}
}

// Go shows a section.
func (p *Page) Go(i int) { p.rail.Go(i) }

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// DamageShown reports whether the Damage section is shown, and which area is selected in it.
func (p *Page) DamageShown() (area string, shown bool) {
	return p.survey.plan.Selected(), Sections[p.rail.Current()] == "Damage"
}

// First returns what takes the keyboard in the section that is shown, nil where nothing asks for it.
func (p *Page) First() fyne.Focusable { return p.sections[p.rail.Current()].first }

// Render writes an open lot into the page.
func (p *Page) Render(o desk.Open) {
	p.open = o
	p.title.SetText(view.LotTitle(o.Case))
	p.build.Hidden = o.State != lot.Won
	p.renderSection()
	p.verdict.limits.render(o)
	p.verdict.render(view.NewVerdict(o))
}

// renderSection writes the open lot into the section that is shown; the others are written when they are gone to.
func (p *Page) renderSection() {
	s := p.sections[p.rail.Current()]
	for _, f := range s.forms {
		f.Render(p.open.Case)
	}
	if s.show != nil {
		s.show(p)
	}
}

// edit hands an edit on.
func (p *Page) edit(words string, change func(*valuation.Case)) { p.do(desk.EditLot(words, change)) }

// sectionsOf are the sections in which a part of a lot is seen, the first of them that to go to; what a lot is marked with is seen in all.
var sectionsOf = map[string][]int{"lot": {0}, "currency": {0}, "valued_on": {0}, "damage": {1}, "survey": {1}, "photos": {1},
	"repair": {2}, "lines": {2}, "resale": {3}, "rows": {3}, "findings": {5}, "hidden": {2, 5}, "risks": {2, 5}, "settings": {5},
	"status": {}, "build": {}}

// sectionsFor returns the sections of a part; the terms of the sale and the shop are under Costs.
func sectionsFor(part string) []int {
	const costs = 4
	if at, known := sectionsOf[part]; known {
		return at
	}
	return []int{costs}
}

// Reveal shows a section that holds what a step through the history changed; travels counts those steps.
func (p *Page) Reveal(travels int, parts []string) {
	known := travels == p.travels
	p.travels = travels
	var holds []int
	for _, part := range parts {
		holds = append(holds, sectionsFor(part)...)
	}
	if !known && len(holds) > 0 && !slices.Contains(holds, p.rail.Current()) {
		p.rail.Go(holds[0])
	}
}
