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
	rows   []view.ProgressRow
}

func newProgress(p *Page) *section {
	g := &progress{page: p, table: table.New(columns(view.ProgressColumns, false)), trades: table.New(columns(view.TradeColumns, false)),
		note: widgets.NewNote(widgets.Info, "")}
	g.table.Empty = "No work is planned."
	g.table.OnTick = g.tick
	g.trades.Empty = "No hours of yours are planned or worked."
	help := form.Small("Tick a line when its work is finished: the forecast takes it off. Forecast money and hours carry the chance that " +
		"the work was needed.")
	split := container.NewVSplit(g.table, g.trades)
	split.Offset = 0.62
	body := container.NewBorder(container.NewVBox(help, g.note), nil, nil, nil, split)
	return &section{name: "Progress", body: body, show: g.render, first: func() fyne.Focusable { return g.table }}
}

func (g *progress) render(o desk.OpenBuild) {
	g.note.Hidden = o.Foretold != nil
	g.note.Set(widgets.Info, "Nothing was forecast of this lot, or no forecast was kept: only what came is shown.")
	g.rows = view.Progress(o)
	g.table.SetRows(tableRows(g.rows))
	g.trades.SetRows(tableRows(view.Trades(o)))
}

func tableRows(list []view.ProgressRow) []table.Row {
	rows := make([]table.Row, len(list))
	for i, r := range list {
		rows[i] = table.Row{Cells: r.Cells, Ticked: r.Done, Strong: r.Strong, Muted: r.Done}
	}
	return rows
}

// tick finishes a line of work, or takes that back; a row that is none stays as it is.
func (g *progress) tick(row int, done bool) {
	r := g.rows[row]
	if r.ID == "" {
		g.table.SetRows(tableRows(g.rows))
		return
	}
	label := "work begun again"
	if done {
		label = "work finished"
	}
	g.page.edit(label, func(b *build.Build) { b.Finish(r.ID, done) })
}
