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
)

// progress is the section of what was foretold against what came.
type progress struct {
	page   *Page
	table  *table.Table
	trades *table.Table
	note   *widgets.Note
	labour *widgets.Check // money with own hours at their rates
	rows   []view.ProgressRow
}

func newProgress(p *Page) *section {
	g := &progress{page: p, table: table.New(columns(view.ProgressColumns, false)), trades: table.New(columns(view.TradeColumns, false)),
		note: widgets.NewNote(widgets.Info, "")}
	g.table.Empty = "No work is planned."
	g.table.OnTick = g.tick
	g.trades.Empty = "No hours of yours are planned or worked."
	g.labour = widgets.NewCheck("count my hours at their rates", func(bool) { g.render(p.open()) })
	g.labour.SetChecked(true)
	below := container.NewGridWithColumns(2, g.trades, container.NewVScroll(clearOfBar(form.Small(view.ProgressRule))))
	split := widgets.NewVSplit("build.progress", g.table, below, 0.62)
	body := container.NewBorder(container.NewVBox(container.NewHBox(g.labour), g.note), nil, nil, nil, split)
	return &section{name: "Progress", body: body, show: g.render, first: func() fyne.Focusable { return g.table }}
}

func (g *progress) render(o desk.OpenBuild) {
	g.note.Hidden = o.Foretold != nil
	g.note.Set(widgets.Info, "No forecast was kept of this lot: only what came is shown.")
	g.rows = view.Progress(o, g.labour.Checked)
	g.table.SetRows(tableRows(g.rows))
	g.trades.SetRows(tableRows(view.Trades(o)))
}

func tableRows(list []view.ProgressRow) []table.Row {
	rows := make([]table.Row, len(list))
	for i, r := range list {
		rows[i] = table.Row{Cells: r.Cells, Ticked: r.Done, Strong: r.Strong, Muted: r.Done, Boxless: r.ID == ""}
	}
	return rows
}

// tick finishes a line of work, or takes that back; a row that is none has no box.
func (g *progress) tick(row int, done bool) {
	r := g.rows[row]
	label := "work begun again"
	if done {
		label = "work finished"
	}
	g.page.edit(label, func(b *build.Build) { b.Finish(r.ID, done) })
}
