package builds

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
)

// years shows what each year came to.
type years struct {
	table *table.Table
	body  *fyne.Container
}

func newYears(p *Page, back func()) *years {
	y := &years{table: table.New(columns(view.YearColumns, false))}
	y.table.Empty = "Nothing was bought yet."
	csv := widgets.NewButton("Write all entries for the accountant…", func() { p.do(desk.Want(desk.WriteLedger)) })
	top := container.NewVBox(container.NewHBox(widgets.NewButton("All builds", back), csv), form.Small(view.YearNote))
	y.body = form.Under(container.NewPadded(top), y.table, nil)
	y.body.Hide()
	return y
}

func (y *years) render(list []book.Bought) {
	all := view.Years(list)
	rows := make([]table.Row, len(all))
	for i, r := range all {
		rows[i] = table.Row{Cells: r.Cells, Strong: r.Strong}
	}
	y.table.SetRows(rows)
}
