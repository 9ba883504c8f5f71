package why

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/table"
)

// fall is the section from the resale price down to the bid.
type fall struct {
	chart   *plot.Waterfall
	name    *widget.RichText
	meaning *widget.Label
	lines   *table.Table
	note    *widget.Label

	bars []view.WhyBar
}

func newFall() section {
	f := &fall{chart: plot.NewWaterfall(), name: heading(), meaning: wrapping(), note: wrapping()}
	var columns []table.Column
	for i, c := range view.WhyColumns {
		columns = append(columns, table.Column{Title: c.Title, Width: c.Width, Right: c.Figures, Meaning: view.Help(c.Title), Grows: i == 0})
	}
	f.lines = table.New(columns)
	f.lines.Empty = "Nothing here: this lot has none of it."
	f.lines.OnSelected = f.showNote
	f.chart.OnSelected = f.show
	words := container.New(layout.NewCustomPaddedVBoxLayout(0), f.name, f.meaning)
	foot := container.New(&least{72}, container.NewVScroll(f.note))
	beside := container.NewBorder(words, foot, nil, nil, f.lines)
	body := container.New(&columns2{0.46}, scrolled(f.chart), beside)
	return section{name: "From price to bid", body: body, first: f.chart, render: f.render}
}

func wrapping() *widget.Label {
	l := widget.NewLabel("")
	l.Wrapping = fyne.TextWrapWord
	return l
}

// heading returns a heading that wraps.
func heading() *widget.RichText {
	t := widget.NewRichText()
	t.Wrapping = fyne.TextWrapWord
	return t
}

func write(t *widget.RichText, words string) {
	style := widget.RichTextStyle{SizeName: theme.SizeHeading, ColorName: "foreground", TextStyle: fyne.TextStyle{Bold: true}}
	t.Segments = []widget.RichTextSegment{&widget.TextSegment{Text: words, Style: style}}
	t.Refresh()
}

// scrolled returns a chart in room that scrolls, with place for its ring.
func scrolled(chart fyne.CanvasObject) *container.Scroll {
	return container.NewVScroll(container.NewVBox(container.New(layout.NewCustomPaddedLayout(theme.Half, theme.Half, theme.Half, theme.Space),
		chart)))
}

func (f *fall) render(o desk.Open) {
	f.bars = view.NewWhy(o).Bars
	steps := make([]plot.WaterfallBar, len(f.bars))
	for i, b := range f.bars {
		steps[i] = plot.WaterfallBar{Name: b.Name, Amount: b.Amount, Text: b.Text}
	}
	f.chart.SetBars(steps)
	if f.chart.Selected() < 0 {
		f.chart.Select(len(f.bars) - 1)
	}
	f.show(f.chart.Selected())
}

// show writes the lines of a bar beside the fall.
func (f *fall) show(bar int) {
	if bar < 0 || bar >= len(f.bars) {
		return
	}
	b := f.bars[bar]
	write(f.name, b.Name+"   "+b.Figure)
	f.meaning.SetText(b.Meaning)
	rows := make([]table.Row, len(b.Lines))
	for i, l := range b.Lines {
		rows[i] = table.Row{Cells: []string{l.What, l.How, l.Money}}
	}
	f.lines.SelectRow(-1)
	f.lines.SetRows(rows)
	f.note.SetText("Select a line to read more about it.")
}

// showNote says what is to be known of a line.
func (f *fall) showNote(row int) {
	bar := f.chart.Selected()
	if bar < 0 || row >= len(f.bars[bar].Lines) {
		return
	}
	l := f.bars[bar].Lines[row]
	f.note.SetText(strings.TrimSpace(strings.Join([]string{l.What + ".", l.Note}, " ")))
}

// columns2 lays two objects out side by side, the first taking a share of the width.
type columns2 struct{ share float32 }

func (c *columns2) MinSize(objects []fyne.CanvasObject) fyne.Size {
	a, b := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(a.Width+theme.Broad+b.Width, max(a.Height, b.Height))
}

func (c *columns2) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left := (size.Width - theme.Broad) * c.share
	objects[0].Resize(fyne.NewSize(left, size.Height))
	objects[1].Move(fyne.NewPos(left+theme.Broad, 0))
	objects[1].Resize(fyne.NewSize(size.Width-left-theme.Broad, size.Height))
}

// least keeps a height free, at text scale 1, so that what comes and goes moves nothing.
type least struct{ height float32 }

func (l *least) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[0].MinSize().Width, l.height*theme.Scale())
}

func (l *least) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }
