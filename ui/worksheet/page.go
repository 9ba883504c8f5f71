package worksheet

import (
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
)

// Actions is what the page asks for.
type Actions interface {
	// Edit changes the open lot's case; the label names the step for undo.
	Edit(label string, change func(*valuation.Case))
	// Import lets the user choose a table of comparables.
	Import()
	// TakeTerms gives the open lot the Bench's terms.
	TakeTerms()
	// SetSold keeps how many vehicles the user says to have sold in twelve months; nil: not said.
	SetSold(n *int)
	Pictures
}

// Page is the worksheet of one lot.
type Page struct {
	actions  Actions
	pictures Pictures

	sections []*section
	survey   *survey
	rail     *rail.Rail
	title    *widgets.Words
	verdict  *verdict
	work     *work
	known    *valuation.Knowledge // that the fields with type-ahead show
	body     fyne.CanvasObject

	open desk.Open
}

// Sections are the names of the sections, in the order of the job.
var Sections = []string{"Facts", "Damage", "Repair", "Resale", "Costs", "Checks"}

// verdictWidth is the width of the right side.
const verdictWidth = 320

// New returns the page, not yet showing a lot.
func New(a Actions, know valuation.Knowledge) *Page {
	p := &Page{actions: a, known: &know, pictures: a, verdict: newVerdict(), title: widgets.NewHeading("")}
	p.sections = []*section{newFacts(p), newDamage(p), newRepair(p, know), newResale(p), newCosts(p), newChecks(p)}
	var parts []rail.Section
	for i, name := range Sections {
		parts = append(parts, rail.Section{Name: name, Body: p.sections[i].body})
	}
	p.rail = rail.Across(parts, func(int) { p.renderSection() })
	top := container.New(layout.NewCustomPaddedLayout(0, 0, theme.Wide, 0), container.NewBorder(nil, nil, nil, container.NewPadded(p.rail.Buttons), p.title))
	right := container.New(form.FixedWidth{Width: verdictWidth}, p.verdict.body)
	p.body = container.NewBorder(top, nil, nil, right, container.New(layout.NewCustomPaddedLayout(0, theme.Space, theme.Wide, theme.Wide), container.New(form.Room{Width: 560, Height: 320}, p.rail.Room)))
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
	p.renderSection()
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
func (p *Page) edit(label string, change func(*valuation.Case)) { p.actions.Edit(label, change) }
