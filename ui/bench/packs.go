package bench

import (
	"walkline/ui/widgets/draw"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
)

// packs is the section of the jurisdictions: what ships, what the user added, and all that one of them says.
type packs struct {
	page   *Page
	search *widgets.TextEntry
	table  *table.Table
	rows   []view.Pack
	chosen string // id of the one beside the table
	shown  string // what stands beside the table already
	words  *fyne.Container
	remove *widgets.Button
}

func newPacks(p *Page) *section {
	s := &packs{page: p, search: widgets.NewTextEntry(), words: container.NewVBox()}
	s.search.SetPlaceHolder("Search")
	s.search.OnChanged = func(string) { s.show(p.state) }
	s.search.OnSubmitted = func(string) { s.toFirst() }
	var columns []table.Column
	for i, c := range view.PackColumns {
		columns = append(columns, table.Column{Title: c.Title, Width: c.Width, Grows: i == 0})
	}
	s.table = table.New(columns)
	s.table.Empty = "No jurisdiction has these words."
	s.table.OnSelected = func(row int) { s.choose(s.rows[row].ID) }
	s.table.OnDelete, s.table.Menu = s.drop, s.menu
	add := widgets.NewButton("Add one from a file…", s.add)
	s.remove = widgets.NewButton("Remove this one", func() { p.do(desk.RemovePack(s.chosen)) })
	head := container.NewVBox(form.Heading("Jurisdictions",
		"Where the vehicle will be registered decides which one applies. Each says what was read and when. The agency has the last word."),
		container.NewBorder(nil, nil, nil, add, s.search))
	split := widgets.NewHSplit("bench.packs", form.Under(head, s.table, nil), container.NewVScroll(s.words), 0.5)
	return &section{name: "Jurisdictions", body: split, show: s.show, first: func() fyne.Focusable { return s.search }}
}

func (s *packs) add() { s.page.do(desk.Want(desk.NewPack)) }

// drop takes the jurisdiction of a row away where the user added it; those that ship stay.
func (s *packs) drop(row int) {
	if s.rows[row].Yours {
		s.page.do(desk.RemovePack(s.rows[row].ID))
	}
}

// menu is what may be done with the jurisdiction of a row.
func (s *packs) menu(row int) []*fyne.MenuItem {
	items := []*fyne.MenuItem{fyne.NewMenuItem("Add one from a file…", s.add)}
	if s.rows[row].Yours {
		items = append(items, fyne.NewMenuItem("Remove this one", func() { s.drop(row) }))
	}
	return items
}

func (s *packs) show(st desk.State) {
	s.rows = view.Packs(st, s.search.Text)
	rows := make([]table.Row, len(s.rows))
	at := -1
	for i, p := range s.rows {
		rows[i] = table.Row{Cells: p.Cells()}
		if p.ID == s.chosen {
			at = i
		}
	}
	s.table.SetRows(rows)
	if s.table.Selected() != at {
		s.table.SelectRow(at)
	}
	s.showChosen()
}

func (s *packs) choose(id string) {
	s.chosen = id
	s.showChosen()
}

// toFirst gives the keyboard to the table, on its first row.
func (s *packs) toFirst() {
	if len(s.rows) == 0 {
		return
	}
	if c := draw.CanvasOf(s.table); c != nil {
		c.Focus(s.table)
	}
	s.table.SelectRow(0)
	s.choose(s.rows[0].ID)
}

// showChosen writes all that a jurisdiction says, with what it rests on.
func (s *packs) showChosen() {
	for _, p := range view.Packs(s.page.state, "") {
		if p.ID == s.chosen {
			s.write(p)
			return
		}
	}
	s.chosen, s.shown = "", ""
	s.words.Objects = []fyne.CanvasObject{form.Small("Select a jurisdiction to see what it says, with its sources.")}
	s.words.Refresh()
}

func (s *packs) write(p view.Pack) {
	key := p.ID + p.Note
	if p.Yours {
		key += " yours"
	}
	if s.shown == key {
		return
	}
	s.shown = key
	s.words.Objects = []fyne.CanvasObject{form.LongHeading(p.Name, p.Note)}
	if p.Yours {
		s.words.Add(container.NewHBox(s.remove))
	}
	for _, g := range p.Groups() {
		s.words.Add(form.LongHeading(g.Title, ""))
		for _, r := range g.Rows {
			words := widget.NewLabel(r[0])
			words.Wrapping = fyne.TextWrapWord
			s.words.Add(container.New(form.Tight{}, words, form.Small(r[1])))
		}
	}
	s.words.Refresh()
}
