package builds

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/build"
)

// hidden is the section of what stripping the vehicle has shown.
type hidden struct {
	page *Page
	list *fyne.Container
	none *widgets.Note
	rows []*hiddenRow
	more *ledger[build.Unlisted] // found, and on no list

	scale float32 // of the text that the rows are laid out for
}

// hiddenRow is one risk with what was seen of it.
type hiddenRow struct {
	risk   view.HiddenRow
	answer *widget.RadioGroup
	muted  bool
}

func newHidden(p *Page) *section {
	h := &hidden{page: p, more: newUnlisted(p), list: container.NewVBox(), none: widgets.NewNote(widgets.Info,
		"Nothing entered for this lot points to hidden damage.")}
	body := container.NewVBox(form.Heading("What teardown found",
		"What was found becomes known work. What is not there is dropped. Both teach the next bid, so mark what is not there, too."), h.none,
		h.list,
		form.Heading("Found, and not on the list",
			"Known work from then on: bills and hours can name it. It teaches as hidden damage."), h.more.body)
	return &section{name: "Hidden damage", body: container.NewVScroll(clearOfBar(body)), show: h.render}
}

// seenWords are the answers in their order, with what each means.
var seenWords = []string{"not known", build.Found, build.NotThere}

func (h *hidden) render(o desk.OpenBuild) {
	h.more.render(o)
	rows := view.HiddenRows(o)
	h.none.Hidden = len(rows) > 0
	if h.scale != theme.Scale() || !slices.EqualFunc(rows, h.rows, func(a view.HiddenRow,
		b *hiddenRow) bool {
		return a.ID == b.risk.ID && a.Name == b.risk.Name
	}) {
		h.rebuild(rows)
	}
	for i, r := range h.rows {
		r.risk = rows[i]
		r.muted = true
		r.answer.SetSelected(rows[i].Seen)
		r.muted = false
	}
}

// largeText is the scale of the text from which on an answer stands under its question.
const largeText = 1.2

func (h *hidden) rebuild(rows []view.HiddenRow) {
	h.list.Objects, h.rows, h.scale = nil, nil, theme.Scale()
	for _, risk := range rows {
		r := &hiddenRow{risk: risk}
		r.answer = widget.NewRadioGroup(seenWords, func(answer string) { h.answered(r, answer) })
		r.answer.Horizontal, r.answer.Required = true, true
		h.rows = append(h.rows, r)
		words := container.New(form.Tight{}, widget.NewLabel(risk.Name), form.Small(risk.Said))
		if h.scale > largeText {
			h.list.Add(container.NewVBox(words, r.answer))
			continue
		}
		h.list.Add(container.NewBorder(nil, nil, nil, r.answer, words))
	}
	h.list.Refresh()
}

func (h *hidden) answered(r *hiddenRow, answer string) {
	if r.muted {
		return
	}
	if answer == seenWords[0] {
		answer = ""
	}
	h.page.edit("hidden damage: "+r.risk.Name, func(b *build.Build) { b.See(r.risk.ID, answer) })
}
