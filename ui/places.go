package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/board"
	"walkline/ui/desk"
	"walkline/ui/listing"
	"walkline/ui/live"
	"walkline/ui/saleday"
	"walkline/ui/theme"
	"walkline/ui/why"
	"walkline/ui/widgets"
	"walkline/ui/worksheet"
)

// page is one page of the window.
type page interface {
	Object() fyne.CanvasObject
	Render(desk.State)     // called with every state while the page is shown
	First() fyne.Focusable // what takes the keyboard; nil: nothing asks for it
}

// station is a place of the window: the page that shows it, and how it is reached.
type station struct {
	place desk.Place
	name  string
	key   fyne.KeyName
	build func() page // called when the place is gone to for the first time, so that the window starts fast
	lot   bool        // shows one lot: closed while none is open or listed
}

// stations lists the places in the order of the job. A new page is entered here and nowhere else.
func (w *Window) stations() []station {
	return []station{
		{desk.Board, "Board", fyne.KeyB, func() page { return w.board }, false},
		{desk.Listing, "Listing", fyne.KeyJ, func() page { return listing.New(w.Do) }, true},
		{desk.Worksheet, "Worksheet", "", func() page { return sheetPage{w.sheet()} }, true},
		{desk.Why, "Why", fyne.KeyE, func() page { return why.New(w.Do) }, true},
		{desk.Live, "Live", fyne.KeyL, func() page { return live.New(w.Do, live.Sights{Runner: w.runner, Photo: w.photoOnLive}) }, true},
		{desk.SalePlan, "Sale plan", fyne.KeyH, func() page { return saleday.New(w.Do) }, false},
		{desk.Builds, "Builds", fyne.KeyU, func() page { return w.builds() }, false},
		{desk.Record, "Track record", fyne.KeyT, func() page { return w.record() }, false},
		{desk.Bench, "Bench", fyne.KeyK, func() page { return w.bench() }, false},
	}
}

// sheetPage is the worksheet as a page.
type sheetPage struct{ *worksheet.Page }

// Render shows the open lot, beside the catalogues of the moment.
func (p sheetPage) Render(s desk.State) {
	p.Page.Know(s.Know)
	if s.Open != nil {
		p.Page.Render(*s.Open)
		p.Page.Reveal(s.Travels, s.Taken.Parts)
	}
}

// places is the strip of places at the top of the window, with the page of the moment under it.
type places struct {
	stations []station
	buttons  []*widgets.Button
	strip    *fyne.Container
	built    map[desk.Place]page
	pages    *fyne.Container
}

func newPlaces(stations []station, visit func(desk.Place)) *places {
	p := &places{stations: stations, strip: container.New(layout.NewCustomPaddedHBoxLayout(theme.Half)), pages: container.NewStack(),
		built: map[desk.Place]page{}}
	for _, s := range stations {
		b := widgets.NewButton(s.name, func() { visit(s.place) })
		p.buttons = append(p.buttons, b)
		p.strip.Add(b)
	}
	return p
}

// at returns the station of a place, the Board where it has none.
func (p *places) at(place desk.Place) station {
	for _, s := range p.stations {
		if s.place == place {
			return s
		}
	}
	return p.stations[0]
}

// page returns the page of a station, built if it is not yet.
func (p *places) page(s station) page {
	if p.built[s.place] == nil {
		made := s.build()
		made.Object().Hide()
		p.built[s.place] = made
		p.pages.Add(made.Object())
	}
	return p.built[s.place]
}

// render shows the page of the state's place and writes the state into it; the other pages are written when they are gone to.
func (p *places) render(s desk.State) {
	now := p.at(s.Place)
	for i, st := range p.stations {
		importance := widget.LowImportance
		if st.place == now.place {
			importance = widget.HighImportance
		}
		if b := p.buttons[i]; b.Importance != importance {
			b.Importance = importance
			b.Refresh()
		}
		if st.lot && s.InHand() == nil && (s.Place != desk.Board || len(s.Entries) == 0) { // on the Board the selected lot is meant
			p.buttons[i].Disable()
		} else {
			p.buttons[i].Enable()
		}
	}
	for place, other := range p.built {
		if place != now.place {
			other.Object().Hide()
		}
	}
	shown := p.page(now)
	shown.Render(s)
	shown.Object().Show()
}

// goTo shows a place and gives its page the keyboard. A place of one lot shows the lot selected on the Board, or that of the
// build on screen; Live goes on with the lot that was called there.
func (w *Window) goTo(to desk.Place) {
	before := w.state.Place
	if id, ok := w.board.Selected(); ok && before == desk.Board && w.places.at(to).lot {
		w.Do(desk.OpenLot(id))
	}
	if b := w.state.BuildInHand(); b != nil && w.places.at(to).lot && (to != desk.Live || w.state.Open == nil) {
		w.Do(desk.OpenLot(b.ID))
	}
	w.Do(desk.Go(to))
	if to == desk.Bench {
		w.Do(desk.ShowSection(w.bench().Section()))
	}
	if to == desk.Board && before == to {
		w.focusPage()
	}
}

// focusPage gives the keyboard to the first field of the page that is shown.
func (w *Window) focusPage() {
	if first := w.places.page(w.places.at(w.state.Place)).First(); first != nil {
		w.window.Canvas().Focus(first)
		return
	}
	w.window.Canvas().Unfocus()
}

var _ page = (*board.Page)(nil)
