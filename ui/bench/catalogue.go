package bench

import (
	"fmt"
	"slices"
	"walkline/ui/widgets/draw"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/money"
)

// kind is what tells one catalogue from another.
type kind[T any] struct {
	name, title, help string
	noun              string // of one entry
	under             string // how the keys of its faults begin
	columns           []view.Column
	starter           func(*valuation.Knowledge) []T
	own               func(*valuation.Own) *[]T
	id                func(*T) *string
	called            func(T) string // what a search looks at
	cells             func(view.CatalogueEntry[T]) []string
	blank             T
	shape             func(T) string // names the fields that an entry needs
	build             func(*editor[T])
}

// catalogue is a catalogue of the Bench: a table with a search, and the entry that is selected beside it.
type catalogue[T any] struct {
	kind[T]
	page   *Page
	search *widgets.TextEntry
	table  *table.Table
	rows   []view.CatalogueEntry[T]
	chosen string // id of the entry beside the table
	editor *editor[T]
	faults *fyne.Container
}

// newCatalogue returns the section of a catalogue.
func newCatalogue[T any](p *Page, k kind[T]) *section {
	s := &catalogue[T]{kind: k, page: p, search: widgets.NewTextEntry(), faults: container.NewVBox()}
	s.search.SetPlaceHolder("Search")
	s.search.OnChanged = func(string) { s.show(p.state) }
	s.search.OnSubmitted = func(string) { s.toFirst() }
	var columns []table.Column
	for i, c := range k.columns {
		columns = append(columns, table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Meaning: view.Help(c.Title), Grows: i == 0})
	}
	s.table = table.New(columns)
	s.table.Empty = "Nothing here has these words."
	s.table.OnSelected = func(row int) { s.choose(s.idOf(s.rows[row].Item)) }
	s.table.OnDelete, s.table.Menu = s.drop, s.menu
	s.editor = newEditor(s)
	add := widgets.NewButton("Add "+article(k.noun), s.add)
	head := container.NewVBox(form.Heading(k.title, k.help), s.faults, container.NewBorder(nil, nil, nil, add, s.search))
	split := widgets.NewHSplit("bench."+k.name, form.Under(head, s.table, nil), s.editor.pane.Pane, 0.5)
	return &section{name: k.name, body: split, show: s.show, first: func() fyne.Focusable { return s.search }}
}

func (s *catalogue[T]) idOf(e T) string { return *s.id(&e) }

// list returns the entries that a search leaves.
func (s *catalogue[T]) list(search string) []view.CatalogueEntry[T] {
	if s.page.state.Starter == nil {
		return nil
	}
	own := s.page.state.Own
	return view.Catalogue(s.starter(s.page.state.Starter), *s.own(&own), s.idOf, s.called, search)
}

func (s *catalogue[T]) show(st desk.State) {
	s.rows = s.list(s.search.Text)
	rows := make([]table.Row, len(s.rows))
	at := -1
	for i, r := range s.rows {
		rows[i] = table.Row{Cells: s.cells(r)}
		if s.idOf(r.Item) == s.chosen {
			at = i
		}
	}
	s.table.SetRows(rows)
	if s.table.Selected() != at {
		s.table.SelectRow(at)
	}
	s.showFaults(view.EntryFaults(st.OwnFaults, s.under))
	s.showEntry()
}

func (s *catalogue[T]) showFaults(faults []string) {
	if len(faults)+len(s.faults.Objects) == 0 {
		return
	}
	s.faults.Objects = nil
	for _, words := range faults {
		s.faults.Add(widgets.NewNote(widgets.Care, words))
	}
	s.faults.Refresh()
}

// showEntry shows the chosen entry beside the table, though the search may hide its row.
func (s *catalogue[T]) showEntry() {
	for _, e := range s.list("") {
		if s.idOf(e.Item) == s.chosen {
			s.editor.show(e)
			return
		}
	}
	s.chosen = ""
	s.editor.clear()
}

func (s *catalogue[T]) choose(id string) {
	s.chosen = id
	s.showEntry()
}

// toFirst gives the keyboard to the table, on its first row.
func (s *catalogue[T]) toFirst() {
	if len(s.rows) == 0 {
		return
	}
	if c := draw.CanvasOf(s.table); c != nil {
		c.Focus(s.table)
	}
	s.table.SelectRow(0)
	s.choose(s.idOf(s.rows[0].Item))
}

// put lays an entry over the catalogue.
func (s *catalogue[T]) put(label string, e T) {
	s.page.do(desk.EditOwn(label, func(o *valuation.Own) {
		own := s.own(o)
		if at := slices.IndexFunc(*own, func(x T) bool { return s.idOf(x) == s.idOf(e) }); at >= 0 {
			(*own)[at] = e
		} else {
			*own = append(*own, e)
		}
	}))
}

// add adds a blank entry and shows it.
func (s *catalogue[T]) add() {
	e := valuation.Copy(s.blank)
	*s.id(&e) = s.freeID()
	s.chosen = *s.id(&e)
	s.search.SetText("")
	s.put("add a "+s.noun, e)
}

// freeID returns an id that no entry has.
func (s *catalogue[T]) freeID() string {
	all := s.list("")
	for n := 1; ; n++ {
		id := fmt.Sprint("own_", n)
		if !slices.ContainsFunc(all, func(e view.CatalogueEntry[T]) bool { return s.idOf(e.Item) == id }) {
			return id
		}
	}
}

// putBack takes the shop's own entry away: the starter's is there again, if there was one.
func (s *catalogue[T]) putBack(id string) {
	s.page.do(desk.EditOwn("starter value: "+id, func(o *valuation.Own) {
		own := s.own(o)
		*own = slices.DeleteFunc(*own, func(x T) bool { return s.idOf(x) == id })
	}))
}

// dropWords says what becomes of an entry of the shop's own that is taken away.
func (s *catalogue[T]) dropWords(x view.CatalogueEntry[T]) string {
	if x.Added {
		return "Remove this " + s.noun
	}
	return "Put the starter value back"
}

// drop takes the entry of a row away where it is the shop's own; the starter's stay.
func (s *catalogue[T]) drop(row int) {
	if s.rows[row].Yours {
		s.putBack(s.idOf(s.rows[row].Item))
	}
}

// menu is what may be done with the entry of a row.
func (s *catalogue[T]) menu(row int) []*fyne.MenuItem {
	items := []*fyne.MenuItem{fyne.NewMenuItem("Add a "+s.noun, s.add)}
	if x := s.rows[row]; x.Yours {
		items = append(items, fyne.NewMenuItem(s.dropWords(x), func() { s.drop(row) }))
	}
	return items
}

// editor is the form of one entry.
type editor[T any] struct {
	page      *Page
	put       func(label string, x T) // keeps the entry
	catalogue *catalogue[T]           // nil: the entry stands alone
	body      *fyne.Container
	pane      *form.Fit // around the body; nil: the whole page is the entry's
	forms     []*form.Of[T]
	entry     T
	shape     string // of the entry that the fields were made for
	mark      *whose // the entry is
}

func newEditor[T any](s *catalogue[T]) *editor[T] {
	e := &editor[T]{page: s.page, catalogue: s, body: container.NewVBox()}
	e.pane = form.NewFit(e.body)
	e.put = func(label string, x T) { s.put(s.noun+": "+label, x) }
	e.clear()
	return e
}

// clear shows that no entry is selected.
func (e *editor[T]) clear() {
	e.shape = ""
	e.body.Objects = []fyne.CanvasObject{form.Small("Select an entry to see and change it. A change is yours and holds for every lot that " +
		"the entry is called for; what was changed in a lot stays as it is there.")}
	e.body.Refresh()
}

func (e *editor[T]) show(x view.CatalogueEntry[T]) {
	e.entry = x.Item
	if shape := fmt.Sprint(e.catalogue.idOf(x.Item), x.Added, e.catalogue.shape(x.Item)); shape != e.shape {
		e.shape = shape
		e.build(x)
	}
	e.mark.set(x.Yours)
	for _, f := range e.forms {
		f.Render(x.Item)
	}
}

// build makes the fields of an entry.
func (e *editor[T]) build(x view.CatalogueEntry[T]) {
	id := e.catalogue.idOf(x.Item)
	e.mark = newWhose(e.catalogue.dropWords(x), func() { e.catalogue.putBack(id) })
	e.pane.Clear()
	e.body.Objects, e.forms = []fyne.CanvasObject{e.mark.body}, nil
	e.catalogue.build(e)
	e.body.Refresh()
	e.pane.Refresh()
}

// edit changes the entry that is shown.
func (e *editor[T]) edit(label string, change func(*T)) {
	x := valuation.Copy(e.entry)
	change(&x)
	e.put(label, x)
}

// rows adds a form of the entry to the page.
func (e *editor[T]) rows() *form.Of[T] {
	f := form.NewOf(e.edit, func(T) money.Currency { return view.NewPurse(e.page.state.Own.Currency).Currency })
	if e.pane != nil {
		f.Fit(e.pane)
	}
	e.forms = append(e.forms, f)
	e.body.Add(f.Rows)
	return f
}

// button adds a button that changes the entry.
func (e *editor[T]) button(words string, change func(*T)) {
	b := widgets.NewButton(words, func() { e.edit(words, change) })
	b.Importance = widget.LowImportance
	e.body.Add(container.NewHBox(b))
}
