package builds

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// newUnlisted returns the ledger of damage that was found and that no risk on the list covers.
func newUnlisted(p *Page) *ledger[build.Unlisted] {
	l := newLedger(p, spec[build.Unlisted]{name: "Not on the list", noun: "find", columns: view.UnlistedColumns,
		empty: "Nothing else was found.", whole: true,
		of: func(b *build.Build) *[]build.Unlisted { return &b.Unlisted }, cells: view.Unlisted, total: view.UnlistedTotal,
		blank: func(build.Unlisted) build.Unlisted {
			return build.Unlisted{ID: p.open().Build.FreeID(), Trade: lot.Trades[0]}
		}})
	l.form.Text("Found", func(u *build.Unlisted) *string { return &u.Name }).SetPlaceHolder("cracked mount")
	l.form.Three("Money", form.Amounts, func(u *build.Unlisted) any { return &u.Cost })
	l.form.Three("My hours", widgets.Spec{Unit: "h", Least: widgets.Bound(0)}, func(u *build.Unlisted) any { return &u.Hours })
	l.form.Choice("Trade", lot.Trades, func(u *build.Unlisted) *string { return &u.Trade })
	l.lay()
	return l
}

// newPhotos returns the section of the photographs of the vehicle, before the work and after it.
func newPhotos(p *Page) *section {
	g := &photos{page: p, table: newPhotoTable()}
	g.table.OnOpen = func(row int) { p.do(desk.WantOf(desk.LargePhoto, g.rows[row].Hash)) }
	g.table.OnDelete = func(row int) { p.do(desk.RemovePhoto(g.rows[row].Hash)) }
	g.table.Menu = g.menu
	add := widgets.NewButton("Add photos…", func() { p.do(desk.Want(desk.NewPhotos)) })
	help := form.Small("Photos can also be dropped on this page: they count as taken after the work. Enter shows one large, with " +
		"its caption and area; Delete removes it.")
	body := container.NewBorder(container.NewVBox(help, container.NewHBox(add)), nil, nil, nil, g.table)
	return &section{name: "Photos", body: body, show: g.render, first: func() fyne.Focusable { return g.table }}
}

// menu is what may be done with a photograph.
func (g *photos) menu(row int) []*fyne.MenuItem {
	p := g.rows[row]
	item := func(words string, action desk.Action) *fyne.MenuItem {
		return fyne.NewMenuItem(words, func() { g.page.do(action) })
	}
	return []*fyne.MenuItem{item("Show it large", desk.WantOf(desk.LargePhoto, p.Hash)),
		item("Open it in the system's viewer", desk.WantOpen(p.Name, p.Hash)), item("Remove it", desk.RemovePhoto(p.Hash))}
}

// PhotosShown reports whether the open build shows its photographs.
func (p *Page) PhotosShown() bool { return p.Sections()[p.rail.Current()] == "Photos" }

// photos is the section of the photographs.
type photos struct {
	page  *Page
	table *table.Table
	rows  []lot.Photo
}

func newPhotoTable() *table.Table {
	t := table.New(columns(view.PhotoColumns, false))
	t.Empty = "No photos yet. Photos of the finished work go into the file for the inspection."
	return t
}

func (g *photos) render(o desk.OpenBuild) {
	g.rows = view.SortedPhotos(o.Photos)
	rows := make([]table.Row, len(g.rows))
	for i, x := range g.rows {
		rows[i] = table.Row{Cells: view.PhotoCells(x)}
	}
	g.table.SetRows(rows)
}
