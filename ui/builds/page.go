package builds

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
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Page is the page of the builds.
type Page struct {
	do    func(desk.Action)
	today func() lot.Date
	list  *list
	bills *ledger[build.Receipt]
	side  *side
	title *widgets.Words
	stage *widgets.Words
	print *widgets.Button
	sheet *widgets.Button // to the lot's worksheet

	sections []*section
	rail     *rail.Rail
	one      *fyne.Container // an open build
	body     *fyne.Container

	state desk.State
}

// section is one part of a build.
type section struct {
	name  string
	body  fyne.CanvasObject
	show  func(desk.OpenBuild)
	first func() fyne.Focusable
	lost  bool // shown for a lot that another bidder took, too
}

// New returns the page, not yet showing a state. today tells the day that days are counted to.
func New(do func(desk.Action), today func() lot.Date) *Page {
	p := &Page{do: do, today: today, side: newSide(), title: widgets.NewHeading(""), stage: widgets.NewCaption("")}
	p.list = newList(p)
	p.sections = []*section{newProgress(p), newBills(p), newHours(p), newHidden(p), newPhotos(p), newInvoice(p), newSale(p)}
	back := widgets.NewButton("All builds", func() { do(desk.CloseBuild()) })
	var parts []rail.Section
	for _, s := range p.sections {
		parts = append(parts, rail.Section{Name: s.name, Body: s.body})
	}
	p.rail = rail.Across(parts, func(i int) {
		if p.state.Build != nil {
			p.sections[i].show(*p.state.Build)
		}
	})
	p.print = widgets.NewButton("Inspection file…", func() { do(desk.Want(desk.PrintRebuilt)) })
	p.sheet = widgets.NewButton("Worksheet", func() { do(desk.OpenLot(p.open().ID)) })
	head := container.NewBorder(nil, nil, nil, container.NewHBox(p.sheet, p.print),
		container.New(layout.NewCustomPaddedHBoxLayout(theme.Wide), back, p.title, p.stage))
	top := container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, theme.Wide, theme.Wide),
		container.NewVBox(head, p.rail.Buttons))
	right := container.New(form.Side{}, p.side.body)
	p.one = container.NewBorder(top, nil, nil, right, container.New(layout.NewCustomPaddedLayout(0, theme.Space, theme.Wide, theme.Wide),
		container.New(form.Room{Width: 480, Height: 320}, p.rail.Room)))
	p.body = container.NewStack(p.list.body, p.one)
	return p
}

// Sections returns the names of the sections of a build in order.
func (p *Page) Sections() []string { return p.rail.Names() }

// Go shows a section of the open build.
func (p *Page) Go(i int) { p.rail.Go(i) }

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard: the list, or the first field of the section that is shown.
func (p *Page) First() fyne.Focusable {
	if p.state.Build == nil {
		return p.list.first()
	}
	if first := p.sections[p.rail.Current()].first; first != nil {
		return first()
	}
	return nil
}

// Render writes a state into the page: the list, or the build that is open.
func (p *Page) Render(s desk.State) {
	p.state = s
	p.list.body.Hidden, p.one.Hidden = s.Build != nil, s.Build == nil
	if s.Build == nil {
		p.list.render()
	} else {
		p.renderOne(*s.Build)
	}
	p.body.Refresh()
}

func (p *Page) renderOne(o desk.OpenBuild) {
	p.title.SetText(view.BuildName(o.Bought))
	p.stage.SetText(view.Stage(o.Bought))
	for i, s := range p.sections {
		closed := !o.Ours() && !s.lost
		p.rail.Close(i, closed)
		if closed && p.rail.Current() == i {
			p.Go(p.lostSection())
		}
	}
	p.sections[p.rail.Current()].show(o)
	p.side.body.Hidden, p.print.Hidden = !o.Ours(), !o.Ours()
	if o.Ours() {
		p.side.render(view.NewBuildSide(o))
	}
}

// lostSection returns the first section that a lost lot shows.
func (p *Page) lostSection() int {
	for i, s := range p.sections {
		if s.lost {
			return i
		}
	}
	return 0
}

// edit hands an edit on.
func (p *Page) edit(words string, change func(*build.Build)) { p.do(desk.EditBuild(words, change)) }

// currency returns the currency of the open build.
func (p *Page) currency() money.Currency {
	code := ""
	if p.state.Build != nil {
		code = p.state.Build.Currency
	}
	return view.NewPurse(code).Currency
}
