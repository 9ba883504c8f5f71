package builds

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
)

// list is the list of all builds.
type list struct {
	page   *Page
	search *widgets.TextEntry
	table  *table.Table
	count  *widget.Label
	empty  *fyne.Container // said while there is none
	full   *fyne.Container
	years  *years
	undo   *widgets.Button // takes the last import back
	body   *fyne.Container
	filter view.BuildFilter
	rows   []view.BuildRow
}

func newList(p *Page) *list {
	l := &list{page: p, search: widgets.NewTextEntry(), count: widget.NewLabel(""), filter: view.BuildFilter{Down: true}}
	l.search.SetPlaceHolder("Search builds")
	l.search.OnChanged = func(s string) { l.filter.Search = s; l.render() }
	lost := widget.NewCheck("show lost lots", func(on bool) { l.filter.Lost = on; l.render() })
	past := widgets.NewButton("Import past buys…", func() { p.do(desk.Want(desk.ImportPastBuys)) })
	l.table = table.New(columns(view.BuildColumns, true))
	l.table.Empty = "No build fits the search."
	l.table.OnOpen = func(row int) { p.do(desk.ShowBuild(l.rows[row].ID)) }
	l.table.OnDelete = func(row int) { p.do(desk.RemoveBuild(l.rows[row].ID)) }
	l.table.Menu = l.menu
	l.table.OnSort = func(column int, falling bool) {
		l.filter.Sort, l.filter.Down = column, falling
		l.render()
	}
	l.table.SetSort(0, true)
	l.years = newYears(p, func() { l.show(false) })
	blank := widgets.NewButton("Table to fill in…", func() { p.do(desk.Want(desk.PastTemplate)) })
	totals := widgets.NewButton("Year totals", func() { l.show(true) })
	l.undo = widgets.NewButton("Undo", func() { p.do(desk.Undo()) })
	top := container.NewBorder(nil, nil, nil, container.NewHBox(l.count, l.undo, lost, totals, past, blank), l.search)
	l.full = form.Under(container.NewPadded(top), l.table, form.Small(view.BuildNote))
	l.empty = firstSteps(p.do)
	l.body = container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, theme.Wide, theme.Wide),
		container.NewStack(l.full, l.years.body, l.empty))
	return l
}

// menu is what may be done with a build.
func (l *list) menu(row int) []*fyne.MenuItem {
	id := l.rows[row].ID
	item := func(words string, action desk.Action) *fyne.MenuItem {
		return fyne.NewMenuItem(words, func() { l.page.do(action) })
	}
	return []*fyne.MenuItem{item("Open", desk.ShowBuild(id)), item("Worksheet", desk.OpenLot(id)), item("Remove", desk.RemoveBuild(id))}
}

// firstSteps is what the page says while no lot was won.
func firstSteps(do func(desk.Action)) *fyne.Container {
	words := widget.NewRichTextFromMarkdown("## No lot has been won yet\n\nMark a lot as won on the Board, and it becomes a build: its " +
		"bills, hours and what teardown found, " +
		"against what was forecast at the bid.\n\nBuys from before this program teach it too: fill the table in with what you know, and leave " +
		"empty what you do not.")
	words.Wrapping = fyne.TextWrapWord
	past := widgets.NewButton("Import past buys…", func() { do(desk.Want(desk.ImportPastBuys)) })
	template := widgets.NewButton("Table to fill in…", func() { do(desk.Want(desk.PastTemplate)) })
	steps := container.New(layout.NewCustomPaddedVBoxLayout(theme.Space), words, container.NewHBox(past), container.NewHBox(template))
	return container.NewCenter(container.New(form.FixedWidth{Width: 560}, steps))
}

// show goes to the totals of the years, or back to the builds.
func (l *list) show(years bool) {
	l.years.body.Hidden = !years
	l.render()
}

func (l *list) first() fyne.Focusable {
	if len(l.page.state.Bought) == 0 {
		return nil
	}
	return l.table
}

func (l *list) render() {
	s := l.page.state
	l.undo.SetText("Undo: " + s.Reach.Undo)
	l.undo.Hidden = s.Reach.Undo == ""
	l.empty.Hidden = len(s.Bought) > 0
	l.years.body.Hidden = l.years.body.Hidden || !l.empty.Hidden
	l.full.Hidden = !l.empty.Hidden || !l.years.body.Hidden
	if !l.years.body.Hidden {
		l.years.render(s.Bought)
	}
	l.rows = view.Builds(s.Bought, s.Outlooks, l.page.today(), l.filter)
	rows := make([]table.Row, len(l.rows))
	for i, r := range l.rows {
		rows[i] = table.Row{Cells: r.Cells, Muted: r.Ended}
	}
	l.table.SetRows(rows)
	l.count.SetText(view.Count(len(rows), "build"))
	l.body.Refresh()
}

// inWords is the least width of the columns that hold words: they share the room that is left.
const inWords = 150

// columns returns the columns of a table.
func columns(list []view.Column, sortable bool) []table.Column {
	out := make([]table.Column, len(list))
	for i, c := range list {
		out[i] = table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Sortable: sortable, Grows: c.Width >= inWords}
	}
	return out
}
