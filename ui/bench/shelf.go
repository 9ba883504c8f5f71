package bench

import (
	"fmt"
	"strconv"
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

// shelf is the section of all comparables of the shop.
type shelf struct {
	page   *Page
	says   *widget.Label
	search *widgets.TextEntry
	from   *widgets.Select
	table  *table.Table
	line   *form.Comparable
	off    *widgets.Button
	rows   *view.Shelf
	sort   int // column; -1: newest first
	down   bool
	chosen int64 // 0: none, or a row that is still to be typed
	adding bool
}

// everySource is the first way to choose among the sources.
const everySource = "every source"

func newShelf(p *Page) *section {
	s := &shelf{page: p, says: widget.NewLabel(""), search: widgets.NewTextEntry(), sort: -1, rows: &view.Shelf{}}
	s.says.Wrapping = fyne.TextWrapWord
	s.search.SetPlaceHolder("Search")
	s.search.OnChanged = func(string) { s.list() }
	s.from = widgets.NewSelect([]string{everySource}, nil)
	s.from.SetSelected(everySource)
	s.from.OnChanged = func(string) { s.list() }
	var columns []table.Column
	for _, c := range view.ShelfColumns {
		columns = append(columns, table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Grows: c.Title == "Vehicle",
			Sortable: true})
	}
	s.table = table.New(columns)
	s.table.OnSort = func(column int, falling bool) {
		s.sort, s.down = column, falling
		s.list()
	}
	s.table.Empty = "No comparable is like this."
	s.table.OnSelected = func(row int) { s.choose(s.rows.At(row).ID) }
	remove := func(id int64) { p.do(desk.RemoveComparables("remove a comparable", id)) }
	s.line = form.NewComparable(s.keep, func() { remove(s.chosen) })
	s.table.OnDelete = func(row int) { remove(s.rows.At(row).ID) }
	s.table.Menu = func(row int) []*fyne.MenuItem {
		return []*fyne.MenuItem{fyne.NewMenuItem("Remove this row", func() { remove(s.rows.At(row).ID) })}
	}
	load := widgets.NewButton("Import…", func() { p.do(desk.Want(desk.ImportToShelf)) })
	add := widgets.NewButton("New row", func() {
		s.adding = true
		s.choose(0)
	})
	s.off = widgets.NewButton("Remove this source", s.removeSource)
	known := widgets.NewButton("What is remembered…", func() { p.do(desk.Want(desk.RememberedTables)) })
	head := container.NewVBox(form.Heading("Comparables",
		"All prices that you know, of every model. A lot draws those that are near to it; all "+
			"of them together teach how your market falls with age and mileage."), s.says,
		container.NewBorder(nil, nil, nil, container.NewHBox(s.from, s.off, add, load, known), s.search))
	body := form.Under(head, s.table, s.line.Row)
	return &section{name: desk.ShelfSection, body: body, show: s.show, first: func() fyne.Focusable { return s.search }}
}

func (s *shelf) show(st desk.State) {
	s.says.SetText(view.ShelfWords(st))
	s.from.Options = append([]string{everySource}, view.Sources(st)...)
	if !s.rows.Of(st) {
		s.rows = view.NewShelf(st)
	}
	s.list()
}

// list shows the rows that are searched for, in their order.
func (s *shelf) list() {
	from := s.from.Selected
	if from == everySource || s.from.SelectedIndex() < 0 {
		from = ""
	}
	s.off.Hidden = from == ""
	s.rows.Show(view.ShelfFilter{Search: s.search.Text, From: from, Sort: s.sort, Down: s.down})
	s.table.SetSource(s.rows.Len(), func(i int) table.Row { return table.Row{Cells: s.rows.Cells(i)} })
	at := s.rows.Shown(s.chosen)
	if s.table.Selected() != at {
		s.table.SelectRow(at)
	}
	if at < 0 {
		s.chosen = 0
	}
	s.showLine(at)
}

// choose shows the cells of a row, or empty ones for a new row.
func (s *shelf) choose(id int64) {
	s.chosen = id
	at := s.rows.Shown(id)
	if at < 0 {
		s.table.SelectRow(-1)
	}
	s.showLine(at)
	if id == 0 {
		if c := draw.CanvasOf(s.table); c != nil {
			c.Focus(s.line.First())
		}
	}
}

// showLine shows the cells of a row where one is chosen or to be typed, and else leaves their room to the table.
func (s *shelf) showLine(at int) {
	if s.adding = s.adding && at < 0; at < 0 && !s.adding {
		s.line.Row.Hide()
		return
	}
	s.line.Row.Show()
	if at < 0 {
		s.line.Show("", nil)
		return
	}
	c := s.rows.At(at)
	s.line.Show(strconv.FormatInt(c.ID, 10), view.ComparableCells(c.Row, c.Currency))
}

// keep hands what was typed on; a row that was added leaves empty cells for the next.
func (s *shelf) keep(cells map[string]string) {
	before := len(s.page.state.Shelf)
	s.page.do(desk.TypeComparable(s.chosen, cells))
	if s.chosen == 0 && len(s.page.state.Shelf) > before {
		s.line.Clear()
	}
}

// removeSource takes every row of the chosen source off the shelf.
func (s *shelf) removeSource() {
	from := s.from.Selected
	var ids []int64
	for _, c := range s.page.state.Shelf {
		if view.SourceOf(c) == from {
			ids = append(ids, c.ID)
		}
	}
	s.page.do(desk.RemoveComparables(fmt.Sprintf("remove %s (%s rows)", from, desk.Grouped(len(ids))), ids...))
	s.from.SetSelected(everySource)
}
