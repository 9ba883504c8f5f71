package why

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/rail"
)

// section is one part of the page.
type section struct {
	name   string
	body   fyne.CanvasObject
	first  fyne.Focusable
	render func(desk.Open)
	// headline says what the section shows, once it is rendered; nil: what the page says.
	headline func() (words string, warns bool)
}

// Page shows why the bid is where it is.
type Page struct {
	sections []section
	rail     *rail.Rail
	title    *widgets.Words
	headline *widgets.Words
	notes    *fyne.Container
	body     fyne.CanvasObject

	state desk.State
}

// New returns the page, not yet showing a lot.
func New(do func(desk.Action)) *Page {
	p := &Page{title: widgets.NewHeading(""), headline: widgets.NewLine(""), notes: container.NewVBox()}
	p.sections = []section{newFall(), newOdds(do), newDrivers()}
	var parts []rail.Section
	for _, s := range p.sections {
		parts = append(parts, rail.Section{Name: s.name, Body: s.body})
	}
	p.rail = rail.Across(parts, func(int) { p.renderSection() })
	head := container.NewBorder(nil, nil, nil, p.rail.Buttons, p.title)
	top := container.New(layout.NewCustomPaddedVBoxLayout(theme.Half), head, p.headline, p.notes)
	inner := container.NewBorder(top, nil, nil, nil, container.New(layout.NewCustomPaddedLayout(theme.Space, 0, 0, 0), p.rail.Room))
	p.body = container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, theme.Wide, theme.Wide), inner)
	return p
}

// Go shows a section.
func (p *Page) Go(i int) { p.rail.Go(i) }

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard.
func (p *Page) First() fyne.Focusable { return p.sections[p.rail.Current()].first }

// Render writes the open lot into the page.
func (p *Page) Render(s desk.State) {
	p.state = s
	if s.Open == nil {
		return
	}
	p.title.SetText(view.LotTitle(s.Open.Case))
	p.renderNotes(view.NewWhy(*s.Open))
	p.renderSection()
}

// headline says what the page tells of.
func headline(w view.Why) string {
	switch {
	case len(w.Bars) == 0:
		return "There is nothing to explain before the lot can be valued."
	case !w.Settled:
		return w.Headline + ". Before your last change."
	}
	return w.Headline
}

// renderNotes writes the reasons, or what is still to be entered.
func (p *Page) renderNotes(w view.Why) {
	p.notes.Objects = nil
	if len(w.Bars) == 0 {
		for _, words := range w.Next {
			p.notes.Add(widgets.NewNote(widgets.Info, words))
		}
	}
	p.rail.Room.Hidden = len(w.Bars) == 0
	p.notes.Refresh()
}

// renderSection writes the open lot into the section that is shown, and says what it shows.
func (p *Page) renderSection() {
	if p.state.Open == nil {
		return
	}
	o := *p.state.Open
	words, warns := headline(view.NewWhy(o)), false
	now := p.sections[p.rail.Current()]
	if o.Valued != nil {
		now.render(o)
		if now.headline != nil {
			words, warns = now.headline()
			words += before(o)
		}
	}
	p.headline.SetText(words)
	p.headline.SetWarning(warns)
}

// before says that the figures are of an older state of the case; nothing when they are not.
func before(o desk.Open) string {
	if o.Fresh {
		return ""
	}
	return " Before your last change."
}
