package worksheet

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// limits are the house rules beside the verdict: each with what it does to the bid, and a tick to try without it.
type limits struct {
	do    func(desk.Action)
	title fyne.CanvasObject
	body  *fyne.Container
	rows  []*limit
	note  *widgets.Note
	end   *widgets.Button
	trial *fyne.Container // what says that a try is on
	muted bool
}

type limit struct {
	view.LimitRow
	tick  *widgets.Check
	words *widget.RichText
}

func newLimits(do func(desk.Action)) *limits {
	l := &limits{do: do, title: form.Label("My limits. Untick one to try the bid without it."), body: container.NewVBox(),
		note: widgets.NewNote(widgets.Care, "")}
	l.end = widgets.NewButton("End the try", func() { l.do(desk.EndTry()) })
	l.trial = container.NewVBox(l.note, container.NewHBox(l.end))
	l.trial.Hide()
	return l
}

// render writes the rules of the moment; the ticks stay while the same rules are on, so that the keyboard keeps its place.
func (l *limits) render(o desk.Open) {
	show(l.trial, len(o.Tried) > 0)
	if len(o.Tried) > 0 {
		l.note.Set(widgets.Care, form.Sentence(view.TriedWords(o))+" Leaving the worksheet ends it.")
	}
	rows := view.LimitRows(o)
	same := func(a *limit, b view.LimitRow) bool { return a.Rule == b.Rule }
	if !slices.EqualFunc(l.rows, rows, same) {
		l.build(rows)
	}
	l.muted = true
	for i, r := range rows {
		x := l.rows[i]
		x.tick.SetChecked(!r.Tried)
		if x.Words != r.Words {
			x.words.Segments[0].(*widget.TextSegment).Text = r.Words
			x.words.Refresh()
		}
		x.LimitRow = r
	}
	l.muted = false
}

func (l *limits) build(rows []view.LimitRow) {
	l.rows, l.body.Objects = nil, nil
	if len(rows) > 0 {
		l.body.Add(l.title)
	}
	for _, r := range rows {
		x := &limit{LimitRow: view.LimitRow{Rule: r.Rule}, words: form.Small("")}
		x.tick = widgets.NewCheck(form.Sentence(r.Name), func(on bool) {
			if !l.muted {
				l.do(desk.Try(r.Rule, !on))
			}
		})
		l.rows = append(l.rows, x)
		l.body.Add(container.New(form.Tight{}, x.tick, x.words))
	}
	l.body.Refresh()
}
