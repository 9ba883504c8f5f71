package bench

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

// Page is the Bench.
type Page struct {
	do       func(desk.Action)
	sections []*section
	rail     *rail.Rail
	faults   *fyne.Container
	body     fyne.CanvasObject
	state    desk.State
}

// section is one part of the Bench.
type section struct {
	name  string
	body  fyne.CanvasObject
	show  func(desk.State)
	first func() fyne.Focusable // what takes the keyboard; may return nil
}

// railWidth is the width of the list of sections, at text scale 1.
const railWidth = 190

// New returns the page, not yet showing a state.
func New(do func(desk.Action)) *Page {
	p := &Page{do: do, faults: container.NewVBox()}
	p.sections = []*section{newRules(p), newLabour(p), newSales(p), newShelf(p), newCatalogue(p, jobs), newCatalogue(p, risks),
		newCatalogue(p, findings), newCatalogue(p, assemblies), newParting(p), newScales(p), newStarterChanges(p), newPacks(p), newBuilder(p),
		newUnits(p),
		newBackups(p)}
	var parts []rail.Section
	for _, s := range p.sections {
		parts = append(parts, rail.Section{Name: s.name, Body: s.body})
	}
	p.rail = rail.Down(parts, func(i int) {
		p.do(desk.ShowSection(p.sections[i].name))
		p.sections[i].show(p.state)
	})
	left := container.New(form.FixedWidth{Width: railWidth}, container.NewVScroll(p.rail.Buttons))
	room := container.New(layout.NewCustomPaddedLayout(0, theme.Space, theme.Wide, theme.Wide),
		container.NewBorder(p.faults, nil, nil, nil, p.rail.Room))
	p.body = container.New(layout.NewCustomPaddedLayout(theme.Space, 0, theme.Space, 0), container.NewBorder(nil, nil, left, nil,
		container.New(form.Room{Width: 480, Height: 320}, room)))
	p.sections[0].show(p.state)
	return p
}

// Sections returns the names of the sections in order.
func (p *Page) Sections() []string { return p.rail.Names() }

// Section returns the name of the section in sight.
func (p *Page) Section() string { return p.sections[p.rail.Current()].name }

// Go shows a section.
func (p *Page) Go(i int) { p.rail.Go(i) }

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard in the section that is shown.
func (p *Page) First() fyne.Focusable {
	if first := p.sections[p.rail.Current()].first; first != nil {
		return first()
	}
	return nil
}

// Render writes a state into the page; the sections that are not shown are written when they are gone to.
func (p *Page) Render(s desk.State) {
	p.state = s
	p.renderFaults()
	p.sections[p.rail.Current()].show(s)
}

// renderFaults says on top what no lot could be valued with.
func (p *Page) renderFaults() {
	faults := view.ShopFaults(p.state.Shop)
	if len(p.faults.Objects) == 0 && len(faults) == 0 {
		return
	}
	p.faults.Objects = nil
	for _, words := range faults {
		p.faults.Add(widgets.NewNote(widgets.Care, words))
	}
	p.faults.Refresh()
}

// edit hands an edit of the shop's terms on, given as an edit of a case that has them.
func (p *Page) edit(label string, change func(*valuation.Case)) {
	p.do(desk.EditShop(label, func(s *desk.Shop) {
		c := s.Onto(valuation.Defaults())
		change(&c)
		s.Take(c)
	}))
}
