package builds

import (
	"slices"
	"walkline/ui/widgets/draw"

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
	"walkline/valuation/build"
	"walkline/valuation/money"
)

// ledger is one list of entries of a build: a table, and a form beside it that edits the selected entry, or makes a new one
// where none is selected.
type ledger[T any] struct {
	page  *Page
	noun  string
	of    func(*build.Build) *[]T
	cells func(desk.OpenBuild, T) []string
	total func(desk.OpenBuild) string
	blank func(last T) T // what a new entry begins with, after the one before it

	table  *table.Table
	form   *form.Of[T]
	title  *widgets.Words
	sum    *widget.Label
	add    *widgets.Button
	remove *widgets.Button
	fresh  *widgets.Button
	like   *widgets.Button // nil: a new entry takes nothing over
	keys   *fyne.Container
	body   fyne.CanvasObject
	whole  bool // the page around it scrolls

	entries  []T
	draft    T
	selected int // -1: the draft
	shown    int64
}

// spec is what a ledger is made of.
type spec[T any] struct {
	name, noun string
	columns    []view.Column
	empty      string
	of         func(*build.Build) *[]T
	cells      func(desk.OpenBuild, T) []string
	total      func(desk.OpenBuild) string
	blank      func(last T) T
	whole      bool           // the page around it scrolls
	again      func(last T) T // what a new entry takes over where the user asks for it; nil: nothing can be
}

// formWidth is the width of the form beside the table, tableWidth the least that the table needs then, at text scale 1. leastHeight is
// that of both.
const (
	formWidth   = 330
	tableWidth  = 480
	leastHeight = 150
)

// sideBySide lays a form at the right of a table, or under it where there is no room for both. The form is as wide as its widest field.
// One that is whole needs the height of its form, and its table some rows: the page around it scrolls.
type sideBySide struct {
	form  *fyne.Container
	whole bool
}

func (l sideBySide) MinSize([]fyne.CanvasObject) fyne.Size {
	if l.whole {
		return fyne.NewSize(formWidth, leastHeight*theme.Scale()+l.form.MinSize().Height+theme.Space)
	}
	return fyne.NewSize(formWidth, leastHeight)
}

func (l sideBySide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	list, entry, right := objects[0], objects[1], max(formWidth*theme.Scale(), l.form.MinSize().Width)
	if size.Width < right+tableWidth*theme.Scale() {
		top := size.Height / 2
		if l.whole {
			top = max(0, size.Height-l.form.MinSize().Height)
		}
		list.Resize(fyne.NewSize(size.Width, top-theme.Space))
		entry.Resize(fyne.NewSize(size.Width, size.Height-top))
		entry.Move(fyne.NewPos(0, top))
		return
	}
	list.Resize(fyne.NewSize(size.Width-right-theme.Space, size.Height))
	entry.Resize(fyne.NewSize(right, size.Height))
	entry.Move(fyne.NewPos(size.Width-right, 0))
}

func newLedger[T any](p *Page, s spec[T]) *ledger[T] {
	l := &ledger[T]{page: p, noun: s.noun, of: s.of, cells: s.cells, total: s.total, blank: s.blank, whole: s.whole, selected: -1,
		title: widgets.NewHeading("New " + s.noun), sum: widget.NewLabel("")}
	l.form = form.NewOf(l.change, func(T) money.Currency { return p.currency() })
	l.table = table.New(columns(s.columns, false))
	l.table.Empty = s.empty
	l.table.OnSelected = l.choose
	l.table.OnOpen = func(row int) { l.choose(row); l.takeKeyboard() }
	l.add = widgets.NewButton("Add this "+s.noun, l.take)
	l.add.Importance = widget.HighImportance
	l.remove = widgets.NewButton("Remove this "+s.noun, func() { l.drop(l.selected) })
	l.table.OnDelete, l.table.Menu = l.drop, l.menu
	l.fresh = widgets.NewButton("New "+s.noun, l.begin)
	if s.again != nil {
		l.like = widgets.NewButton("As the last "+s.noun, func() {
			l.draft = s.again(l.last())
			l.renderForm()
			l.takeKeyboard()
		})
	}
	l.sum.Wrapping = fyne.TextWrapWord
	return l
}

// lay puts the table and the form side by side; to be called when the form has its rows. extra stands below them.
func (l *ledger[T]) lay(extra ...fyne.CanvasObject) {
	l.keys = container.NewHBox(l.add, l.remove, l.fresh)
	if l.like != nil {
		l.keys.Add(l.like)
	}
	beside := container.NewVBox(append([]fyne.CanvasObject{l.title, l.form.Rows, l.keys}, extra...)...)
	clear := clearOfBar(beside)
	l.body = container.NewBorder(nil, l.sum, nil, nil, container.New(sideBySide{clear, l.whole}, l.table, container.NewVScroll(clear)))
	l.renderForm()
}

// clearOfBar keeps what is scrolled clear of the bar at its right.
func clearOfBar(o fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedLayout(0, 0, 0, theme.Wide), o)
}

// first returns the first field of the form.
func (l *ledger[T]) first() fyne.Focusable { return l.form.First() }

func (l *ledger[T]) takeKeyboard() {
	if c := draw.CanvasOf(l.table); c != nil && l.form.First() != nil {
		c.Focus(l.form.First())
	}
}

// render writes a build into the table and the form. Another build begins with a new draft.
func (l *ledger[T]) render(o desk.OpenBuild) {
	l.entries = *l.of(&o.Build)
	if o.ID != l.shown {
		l.shown, l.selected = o.ID, -1
		l.draft = l.blank(l.last())
	}
	if l.selected >= len(l.entries) {
		l.selected = -1
	}
	rows := make([]table.Row, len(l.entries))
	for i, e := range l.entries {
		rows[i] = table.Row{Cells: l.cells(o, e)}
	}
	l.table.SetRows(rows)
	l.table.SelectRow(l.selected)
	l.sum.SetText(l.total(o))
	l.renderForm()
}

// last returns the last entry, the zero entry where there is none.
func (l *ledger[T]) last() T {
	var none T
	if len(l.entries) == 0 {
		return none
	}
	return l.entries[len(l.entries)-1]
}

func (l *ledger[T]) renderForm() {
	e, title := l.draft, "New "+l.noun
	if l.selected >= 0 {
		e, title = l.entries[l.selected], form.Sentence(l.noun)+" that is selected"
	}
	l.title.SetText(title)
	l.form.Render(e)
	l.add.Hidden, l.remove.Hidden, l.fresh.Hidden = l.selected >= 0, l.selected < 0, l.selected < 0
	if l.like != nil {
		l.like.Hidden = l.selected >= 0 || len(l.entries) == 0
	}
	l.keys.Refresh() // one that is shown again has to be laid out
}

// choose goes to an entry, or to the draft.
func (l *ledger[T]) choose(row int) {
	l.selected = row
	l.table.SelectRow(row)
	l.renderForm()
}

// change changes the draft, or the selected entry of the build.
func (l *ledger[T]) change(label string, change func(*T)) {
	if l.selected < 0 {
		change(&l.draft)
		l.renderForm()
		return
	}
	at := l.selected
	l.page.edit(l.noun+": "+label, func(b *build.Build) { change(&(*l.of(b))[at]) })
}

// take adds the draft to the build and begins another; a draft that can't be kept stays to be put right.
func (l *ledger[T]) take() {
	made, before := l.draft, len(l.entries)
	l.page.edit("add "+l.noun, func(b *build.Build) { at := l.of(b); *at = append(*at, made) })
	if len(l.entries) == before {
		return
	}
	l.draft = l.blank(made)
	l.renderForm()
	l.takeKeyboard()
}

// begin goes to the draft.
func (l *ledger[T]) begin() {
	l.choose(-1)
	l.takeKeyboard()
}

// menu is what may be done with an entry.
func (l *ledger[T]) menu(row int) []*fyne.MenuItem {
	return []*fyne.MenuItem{fyne.NewMenuItem("Change this "+l.noun, func() { l.table.OnOpen(row) }),
		fyne.NewMenuItem("Remove this "+l.noun, func() { l.drop(row) }), fyne.NewMenuItem("New "+l.noun, l.begin)}
}

// drop removes an entry.
func (l *ledger[T]) drop(at int) {
	l.selected = -1
	l.page.edit("remove "+l.noun, func(b *build.Build) { list := l.of(b); *list = slices.Delete(*list, at, at+1) })
}
