package record

import (
	"math"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/table"
	"walkline/valuation/hindsight"
	"walkline/valuation/score"
)

// forecasts is the section of the figures that were foretold.
type forecasts struct {
	pick   *widgets.Select
	held   *table.Table
	where  *plot.Histogram
	words  *widget.Label
	ratios *fyne.Container
	record desk.TrackRecord
	muted  bool
}

// heldHeight is the height of the table of intervals: its header and three rows.
const heldHeight = 134

// lowered gives its one object a height, which grows with the text.
type lowered struct{ height float32 }

func (l lowered) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[0].MinSize().Width, l.height*theme.Scale())
}

func (l lowered) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

func newForecasts() *section {
	f := &forecasts{pick: widgets.NewSelect(nil, nil), held: newTable(view.CoverageColumns, "No outcome is known yet."),
		where: plot.NewHistogram(),
		words: widget.NewLabel(""), ratios: container.NewVBox()}
	f.words.Wrapping = fyne.TextWrapWord
	f.pick.OnChanged = func(string) {
		if !f.muted {
			f.write()
		}
	}
	top := container.NewVBox(container.NewHBox(form.Label("Figure"), form.Roomy(f.pick, []string{"Days until it is sold"})), f.words)
	intervals := container.NewVBox(form.Small("How often the result fell in the range, and what that share could be with so few"),
		container.New(lowered{heldHeight}, f.held))
	left := container.NewBorder(intervals, nil, nil, nil, container.NewVScroll(f.ratios))
	split := widgets.NewHSplit("record.forecasts", left, container.NewPadded(f.where), 0.52)
	return &section{name: "Forecasts", body: container.NewBorder(top, nil, nil, nil, split), show: f.render, first: f.held}
}

func (f *forecasts) render(r desk.TrackRecord) {
	f.record = r
	var names []string
	for _, x := range r.Judged.Figures {
		names = append(names, x.Name)
	}
	f.muted = true
	if !slices.Equal(f.pick.Options, names) {
		f.pick.SetOptions(names)
	}
	if f.pick.SelectedIndex() < 0 && len(names) > 0 {
		f.pick.SetSelectedIndex(0)
	}
	f.muted = false
	f.write()
}

// study shows what the ratios of resale prices say, beside every figure but what lots went for.
func (f *forecasts) study(x hindsight.FigureRecord) {
	f.ratios.Objects = nil
	if x.Key != hindsight.HammerKey {
		for _, l := range view.RatioLines(f.record.Judged) {
			f.ratios.Add(container.NewBorder(nil, nil, widgets.NewLine(l[0]), widgets.NewLine(l[1])))
		}
		for _, words := range f.record.Judged.LeftOut {
			f.ratios.Add(form.Small(words))
		}
	}
	f.ratios.Refresh()
}

// write shows the chosen figure.
func (f *forecasts) write() {
	at := f.pick.SelectedIndex()
	if at < 0 || at >= len(f.record.Judged.Figures) {
		return
	}
	x := f.record.Judged.Figures[at]
	f.words.SetText(view.FigureWords(f.record, x))
	f.study(x)
	setRows(f.held, view.Coverage(x))
	d := plot.HistogramData{X: plot.Axis{Title: "where in its forecast, low to high", Format: percent},
		Y:    plot.Axis{Title: "outcomes", Format: counted},
		Name: "if the forecasts are right", Empty: "No outcome is known yet."}
	for _, b := range view.Tenths(x) {
		d.Bins = append(d.Bins, plot.HistogramBin(b))
	}
	if len(d.Bins) > 0 {
		d.Even = float64(x.N) / float64(len(d.Bins))
	}
	f.where.SetData(d)
}

// counted writes a count; between two counts there is none.
func counted(x float64) string {
	if x != math.Trunc(x) {
		return ""
	}
	return strconv.FormatFloat(x, 'f', 0, 64)
}

func percent(x float64) string { return strconv.FormatFloat(100*x, 'f', 0, 64) + " %" }

// chances is the section of the stated chances.
type chances struct {
	plots [2]*plot.Reliability
	words [2]*widget.Label
}

func newChances() *section {
	c := &chances{}
	grid := container.NewGridWithColumns(2)
	for i, title := range []string{"Hidden damage", "A loss"} {
		c.plots[i], c.words[i] = plot.NewReliability(), widget.NewLabel("")
		c.words[i].Wrapping = fyne.TextWrapWord
		grid.Add(container.NewBorder(container.NewVBox(widgets.NewHeading(title), c.words[i]), nil, nil, nil, c.plots[i]))
	}
	return &section{name: "Chances", body: grid, show: c.render, first: c.plots[0]}
}

func (c *chances) render(r desk.TrackRecord) {
	for i, x := range []score.Reliability{r.Judged.Risks, r.Judged.Losses} {
		c.words[i].SetText(view.BrierWords(x))
		d := plot.ReliabilityData{X: plot.Axis{Title: "chance that was stated", Format: percent},
			Y: plot.Axis{Title: "share that came", Format: percent}, Empty: "No outcome of a forecast chance is known yet."}
		for _, b := range view.Reliability(x) {
			d.Bins = append(d.Bins, plot.ReliabilityBin(b))
		}
		c.plots[i].SetData(d)
	}
}

// newMoney returns the section of the money won and lost by cause.
func newMoney() *section {
	fall, words := plot.NewWaterfall(), widget.NewLabel("")
	words.Wrapping = fyne.TextWrapWord
	body := container.NewBorder(words, nil, nil, nil, container.NewVScroll(container.NewPadded(fall)))
	return &section{name: "Money", body: body, first: fall, show: func(r desk.TrackRecord) {
		m := r.Judged.Money
		words.SetText(view.MoneyWords(m))
		var bars []plot.WaterfallBar
		for _, b := range view.Causes(m) {
			bars = append(bars, plot.WaterfallBar{Name: b.Name, Amount: b.Amount, Text: b.Text})
		}
		fall.SetBars(bars)
	}}
}
