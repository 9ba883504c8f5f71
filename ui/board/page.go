package board

import (
	"image"
	"slices"
	"walkline/ui/widgets/draw"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
	"walkline/valuation/lot"
)

// Page is the Board.
type Page struct {
	do     func(desk.Action)
	search *widgets.TextEntry
	table  *table.Table
	first  *fyne.Container // shown while there is no lot
	list   *fyne.Container
	count  *widget.Label
	says   *widget.RichText // what the run list says of the selected lot
	body   *fyne.Container

	state  desk.State
	filter view.Filter
	lots   view.Listing
	rows   []*view.BoardRow
	ticked map[int64]bool // lots that a command is given to at once
	chosen []view.BoardColumn
	number string // the longest that is listed

	// OnSight is called when other lots come in sight.
	OnSight func()
	// Thumbnail brings the small picture of a photograph, at once or later, on the window's goroutine; nil: none are shown.
	Thumbnail func(p lot.Photo, show func(image.Image, error))
	pictures  pictures
}

// inWords is the least width of the columns that hold words: they share the room that is left.
const inWords = 150

// New returns the page, not yet showing a state.
func New(do func(desk.Action)) *Page {
	p := &Page{do: do, count: widget.NewLabel(""), says: form.Small(""), ticked: map[int64]bool{}}
	p.search = widgets.NewTextEntry()
	p.search.SetPlaceHolder("Search lots")
	p.search.OnChanged = func(s string) { p.filter.Search = s; p.renderRows() }
	p.search.OnSubmitted = func(string) { p.toFirst() }
	archived := widget.NewCheck("show archived", func(on bool) { p.filter.Archived = on; p.renderRows() })
	add := widgets.NewButton("New lot", func() { do(desk.Want(desk.AddLot)) })
	add.Importance = widget.HighImportance
	p.chosen = keptColumns()
	p.table = table.New(p.columns())
	p.table.OnWidth = p.widen
	p.table.OnSight = func() {
		if p.OnSight != nil {
			p.OnSight()
		}
	}
	p.table.Empty = "No lot fits the search."
	p.table.OnOpen = func(row int) { do(desk.OpenLot(p.rows[row].ID)) }
	p.table.OnSelected = func(int) { p.renderListed() }
	p.table.OnTick = func(row int, on bool) { p.tick(row, row, on) }
	p.table.OnTickMany = func(from, to int) { p.tick(from, to, true) }
	p.table.OnDelete = func(int) { do(desk.RemoveLots(p.Ticked()...)) }
	p.table.Menu = p.menu
	p.table.OnSort = func(column int, falling bool) {
		p.filter.Sort, p.filter.Down = p.chosen[column].At(), falling
		p.renderRows()
	}
	p.table.SetSort(0, false)
	choose := widgets.NewButton("Columns…", func() { do(desk.Want(desk.BoardColumns)) })
	choose.Importance = widget.LowImportance
	list := widgets.NewButton("Import a run list…", func() { do(desk.Want(desk.ImportRunList)) })
	top := container.NewBorder(nil, nil, nil, container.NewHBox(p.count, archived, choose, list, add), p.search)
	p.list = form.Under(container.NewPadded(top), p.table, p.says)
	p.first = firstSteps(do)
	p.body = container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, theme.Wide, theme.Wide), container.NewStack(p.list, p.first))
	return p
}

// toFirst gives the keyboard to the table, on its first row, so that a search goes on with Enter.
func (p *Page) toFirst() {
	if c := draw.CanvasOf(p.table); c != nil && len(p.rows) > 0 {
		c.Focus(p.table)
		p.table.SelectRow(0)
	}
}

// firstSteps is what an empty Board says.
func firstSteps(do func(desk.Action)) *fyne.Container {
	words := widget.NewRichTextFromMarkdown("## What is the most you may bid?\n\nEnter a lot from a sale's list: what it is, " +
		"what's damaged, what it should sell for. The walk-away bid follows as you type.")
	words.Wrapping = fyne.TextWrapWord
	add := widgets.NewButton("Enter my first lot", func() { do(desk.Want(desk.AddLot)) })
	add.Importance = widget.HighImportance
	demo := widgets.NewButton("Show me the demo sale: three invented lots at Harrow Flats", func() { do(desk.Want(desk.AddDemo)) })
	list := widgets.NewButton("Import a sale's run list, or drop it here", func() { do(desk.Want(desk.ImportRunList)) })
	steps := container.New(layout.NewCustomPaddedVBoxLayout(theme.Space), words, container.NewHBox(add), container.NewHBox(list),
		container.NewHBox(demo))
	return container.NewCenter(container.New(form.FixedWidth{Width: 560}, steps))
}

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard.
func (p *Page) First() fyne.Focusable { return p.table }

// Search returns the search field.
func (p *Page) Search() fyne.Focusable { return p.search }

// Selected returns the id of the selected lot, and whether one is.
func (p *Page) Selected() (int64, bool) {
	if i := p.table.Selected(); i >= 0 && i < len(p.rows) {
		return p.rows[i].ID, true
	}
	return 0, false
}

// Unrated returns the lots that have no figures yet, or of which they are known to be out of date, in the order of the rows from the first
// in sight on.
func (p *Page) Unrated() []int64 { return p.ordered(p.state.Unrated) }

// ToBid returns the lots that are still to be bid for, in that order.
func (p *Page) ToBid() []int64 { return p.ordered(desk.ToBid) }

func (p *Page) ordered(is func(book.Entry) bool) []int64 {
	lacks := map[int64]bool{}
	for _, e := range p.state.Entries {
		lacks[e.ID] = is(e)
	}
	var ids []int64
	from := p.table.FirstInSight()
	for i := range p.rows {
		if id := p.rows[(from+i)%len(p.rows)].ID; lacks[id] {
			ids, lacks[id] = append(ids, id), false
		}
	}
	return ids
}

// Render writes a state into the page.
func (p *Page) Render(s desk.State) {
	if !same(s.Entries, p.state.Entries) {
		p.lots = view.List(s.Entries)
	}
	p.state = s
	clear(p.pictures.asked) // what did not come is asked for once more
	place := p.table.Selected()
	p.renderRows()
	if p.table.Selected() < 0 && place >= 0 { // the lot is gone: the next one is in its place
		p.table.SelectRow(min(place, len(p.rows)-1))
	}
}

// same reports whether two lists are one and the same.
func same(a, b []book.Entry) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

// renderListed says what the run list says of the selected lot, in a line that takes no room where it says nothing.
func (p *Page) renderListed() {
	words := ""
	if i := p.table.Selected(); i >= 0 && i < len(p.rows) {
		words = p.rows[i].Listed()
	}
	p.says.Segments[0].(*widget.TextSegment).Text = words
	p.says.Hidden = words == ""
	p.says.Refresh()
	p.list.Refresh()
}

// renderRows lists what the filter leaves. The selection stays on its lot; where that is hidden, nothing is selected.
func (p *Page) renderRows() {
	p.first.Hidden = len(p.state.Entries) > 0
	p.list.Hidden = !p.first.Hidden
	id, selected := p.Selected()
	p.rows = p.lots.Rows(p.filter)
	p.table.SetSource(len(p.rows), func(row int) table.Row { return p.row(p.rows[row]) })
	if longest := view.LongestNumber(p.rows); len(longest) != len(p.number) {
		p.number = longest
		p.table.SetColumns(p.columns())
	}
	at := -1
	if selected {
		at = slices.IndexFunc(p.rows, func(r *view.BoardRow) bool { return r.ID == id })
	}
	p.table.SelectRow(at)
	p.renderListed()
	p.sayCount()
	p.body.Refresh()
}
