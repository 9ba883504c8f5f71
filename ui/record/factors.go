package record

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/table"
	"walkline/valuation/learn"
)

// factors is the section of the proposals: the table of all, and beside it the selected one with its evidence and effects.
type factors struct {
	page     *Page
	drawn    *plot.Ranges // all factors on one axis, before their table
	sight    *container.Scroll
	other    *widgets.Button // turns to the table and back
	table    *table.Table
	title    *widget.Label
	why      *widget.Label
	evidence *table.Table
	effects  *table.Table
	accept   *widgets.Button
	whole    *widgets.Button // takes all of a factor from few buys, knowingly
	few      *widgets.Note
	means    *widget.Label // what the factor means, in money
	picture  *plot.Scatter // of the buys behind it
	refuse   *widgets.Button
	selected *widgets.Note // what no figure of the record can show
	beside   *fyne.Container
	record   desk.TrackRecord
	key      string // of the selected proposal
}

// leastPicture is the least height of the picture of a factor and the tables beside it: where there is less, the detail scrolls.
const leastPicture = 190

func newFactors(p *Page) *section {
	f := &factors{page: p, table: newTable(view.ProposalColumns, "No past buy with a forecast and an outcome: nothing is proposed yet."),
		title: widget.NewLabel(""), why: widget.NewLabel(""),
		evidence: newTable(view.EvidenceColumns, "No buy of its own."), effects: newTable(view.EffectColumns, "No lot is still open for bids.")}
	f.title.TextStyle.Bold, f.why.Wrapping = true, fyne.TextWrapWord
	f.drawn = plot.NewRanges()
	f.drawn.OnSelected = func(row int) { f.choose(f.record.Proposals[row].Key) }
	f.sight = container.NewVScroll(f.drawn)
	f.table.OnSelected = func(row int) { f.choose(f.record.Proposals[row].Key) }
	f.accept = widgets.NewButton("Accept this factor", func() { p.do(desk.Accept(f.key)) })
	f.accept.Importance = widget.HighImportance
	f.whole = widgets.NewButton("Take all of it, knowingly", func() { p.do(desk.AcceptWhole(f.key)) })
	f.means, f.picture = widget.NewLabel(""), plot.NewScatter()
	f.means.Wrapping = fyne.TextWrapWord
	f.few = widgets.NewNote(widgets.Info, "")
	f.refuse = widgets.NewButton("Refuse it", func() { p.do(desk.Refuse(f.key)) })
	f.table.OnOpen = func(row int) { f.choose(f.record.Proposals[row].Key) }
	tables := widgets.NewHSplit("record.buys", container.NewBorder(form.Label("The buys behind it"), nil, nil, nil, f.evidence),
		container.NewBorder(form.Label("What it would do to open lots"), nil, nil, nil, f.effects), 0.44)
	beside := widgets.NewHSplit("record.factor", f.picture, tables, 0.25)
	head := container.NewVBox(container.NewBorder(nil, nil, f.title, container.NewHBox(f.accept, f.whole, f.refuse)), f.means, f.few, f.why)
	f.selected = widgets.NewNote(widgets.Info, learn.Selection)
	detail := container.NewBorder(head, f.selected, nil, nil, container.New(form.Room{Width: 480, Height: leastPicture}, beside))
	f.beside = container.NewStack(container.NewVScroll(detail))
	help := form.Small("Nothing changes by itself. An accepted factor goes into every lot that is valued from then on; forecasts that were " +
		"kept stay as they were.")
	f.table.Hide()
	f.other = widgets.NewButton(asTable, f.turn)
	top := container.NewBorder(nil, nil, nil, f.other, help)
	split := widgets.NewVSplit("record.factors", form.Under(top, container.NewStack(f.sight, f.table), nil), f.beside, 0.46)
	return &section{name: "Factors", body: split, show: f.render, first: f.drawn, noted: true}
}

// What the button says that turns from the picture to the table and back.
const (
	asTable   = "Show as a table"
	asPicture = "Show as a picture"
)

// turn shows the table in the place of the picture, or the picture again.
func (f *factors) turn() {
	if f.table.Hidden {
		f.sight.Hide()
		f.table.Show()
		f.other.SetText(asPicture)
		return
	}
	f.table.Hide()
	f.sight.Show()
	f.other.SetText(asTable)
}

func (f *factors) render(r desk.TrackRecord) {
	f.record = r
	setRows(f.table, view.Proposals(r))
	f.draw()
	f.selected.Set(widgets.Info, view.SelectionWords(&r))
	f.detail()
}

// choose shows a proposal and has its effects worked out, unless they are.
func (f *factors) choose(key string) {
	f.key = key
	f.detail()
	if _, known := f.record.Effects[key]; !known {
		f.page.do(desk.WantOf(desk.EffectOfFactor, key))
	}
}

// detail writes the selected proposal.
func (f *factors) detail() {
	f.beside.Hidden = true
	for i, p := range f.record.Proposals {
		if p.Key != f.key {
			continue
		}
		f.beside.Hidden = false
		f.table.SelectRow(i)
		f.drawn.Select(i)
		f.inSight(i)
		f.title.SetText(p.Name)
		f.means.SetText(view.MeaningWords(f.record, p))
		f.picture.SetData(pictured(p))
		f.why.SetText(strings.Join(p.Why, " "))
		setRows(f.evidence, view.Evidence(p))
		effects, known := f.record.Effects[p.Key]
		f.effects.Empty = "No lot is still open for bids."
		if !known {
			f.effects.Empty = "Valuing the open lots…"
		}
		setRows(f.effects, view.Effects(effects))
		words := view.FewWords(p, effects)
		f.whole.Hidden, f.few.Hidden = words == "", words == ""
		f.few.Set(widgets.Info, words)
	}
	f.beside.Refresh()
}

// draw draws all factors on one axis.
func (f *factors) draw() {
	d := plot.RangesData{Axis: plot.Axis{Title: "times the starter value", Format: func(x float64) string { return fmt.Sprintf("%.3g", x) }},
		Start: 1, Begun: "starter", Now: "today", Value: "proposed", Spread: "8 times in 10"}
	for _, r := range view.FactorRanges(f.record) {
		d.Rows = append(d.Rows, plot.Range{Name: r.Name, Figure: r.Figure, Low: r.Low, Middle: r.Middle, High: r.High, Today: r.Today,
			Fact: r.Words, Blank: r.Placeless})
	}
	f.drawn.SetData(d)
}

// inSight scrolls the picture of all factors to a row.
func (f *factors) inSight(row int) {
	top, height := f.drawn.Place(row)
	switch at, room := f.sight.Offset.Y, f.sight.Size().Height; {
	case top < at:
		f.sight.ScrollToOffset(fyne.NewPos(0, top))
	case top+height > at+room:
		f.sight.ScrollToOffset(fyne.NewPos(0, top+height-room))
	}
}

// newHistory returns the section of the decisions.
func newHistory(p *Page) *section {
	t := newTable(view.HistoryColumns, "Nothing has been decided yet: the starter values are in force.")
	var ids []int64
	back := widgets.NewButton("Restore the factors from before this decision", func() {
		if i := t.Selected(); i >= 0 && i < len(ids) {
			p.do(desk.Restore(ids[i]))
		}
	})
	help := form.Small("Select a decision to go back to the factors before it. Going back is a decision, too, and can be undone.")
	body := container.NewBorder(container.NewVBox(help, container.NewHBox(back)), nil, nil, nil, t)
	return &section{name: "History", body: body, first: t, show: func(r desk.TrackRecord) {
		var rows [][]string
		rows, ids = view.History(r)
		setRows(t, rows)
		back.Hidden = len(ids) == 0
		back.Refresh()
	}}
}

// newReplay returns the section of the replay.
func newReplay(p *Page) *section {
	t := newTable(view.ReplayColumns, "Not replayed yet.")
	words := widget.NewLabel("")
	words.Wrapping = fyne.TextWrapWord
	again := widgets.NewButton("Replay past lots with today's factors", func() { p.do(desk.Want(desk.ReplayPast)) })
	again.Importance = widget.HighImportance
	body := container.NewBorder(container.NewVBox(container.NewHBox(again), words), nil, nil, nil, t)
	return &section{name: "Replay", body: body, first: t, show: func(r desk.TrackRecord) {
		words.SetText("Each past lot is valued anew as it was kept, with the factors in force: which would have been refused, and which lost " +
			"lots would have been bought?")
		t.Empty = "Not replayed yet."
		if r.Replay != nil {
			words.SetText(strings.Join(append([]string{view.ReplayWords(*r.Replay, r.Currency)}, r.Replay.Doubts...), " "))
			t.Empty = "There is no past lot."
			setRows(t, view.ReplayRows(*r.Replay, r.Currency))
			return
		}
		t.SetRows(nil)
	}}
}

// pictured returns the picture of the buys behind a proposal, oldest first, with the range in which the factor lies.
func pictured(p learn.Proposal) plot.ScatterData {
	number := func(x float64) string { return fmt.Sprintf("%.2g", x) }
	d := plot.ScatterData{X: plot.Axis{Title: "buys, oldest first", Format: func(x float64) string { return fmt.Sprintf("%.0f", x) }},
		Y: plot.Axis{Title: "came / forecast", Format: number}, Empty: "No buy of its own.", Fit: "the factor, 8 times in 10", Thing: "buy"}
	for i, e := range p.Evidence {
		d.Points = append(d.Points, plot.ScatterPoint{X: float64(i + 1), Y: e.Says, Weight: e.Weight, Used: true})
	}
	d.Words = func(i int) string { return fmt.Sprintf("%s: %.2f", p.Evidence[i].Name, p.Evidence[i].Says) }
	for _, x := range []float64{0.5, float64(len(p.Evidence)) + 0.5} {
		d.Band = append(d.Band, plot.BandPoint{X: x, Low: p.Proposed.Low, Middle: p.Proposed.At, High: p.Proposed.High})
	}
	return d
}
