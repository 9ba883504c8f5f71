package worksheet

import (
	"maps"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/valuation"
)

// checkRow is one item on the list.
type checkRow struct {
	list    *checklist
	check   view.Check
	ask     *widget.Label
	why     *widget.RichText
	figures *widgets.Words
	answer  *widgets.Reply // yes, no, not looked; nil for what is ticked
	tick    *tick
	seen    *fyne.Container // what can be done about what is seen
	body    fyne.CanvasObject
	muted   bool
}

// made says what the rows are made of; while it stays, the rows stay.
func (c *checklist) made(v view.ChecksPage) string {
	var b strings.Builder
	b.WriteString(c.order.Selected)
	add := func(items []view.Check) {
		for _, i := range items {
			b.WriteString("\n" + i.ID)
		}
		b.WriteString("\n")
	}
	add(v.Looks)
	add(v.Titles)
	for _, l := range v.Lists {
		add(l.Items)
	}
	return b.String()
}

// rebuild makes the rows.
func (c *checklist) rebuild(v view.ChecksPage) {
	c.rows = map[string]*checkRow{}
	var looks []fyne.CanvasObject
	if c.order.Selected == byWalk {
		for _, g := range view.Walk(v.Looks, c.page.known.Risks.Findings) {
			looks = append(looks, widgets.NewHeading(form.Sentence(g.Where)+", "+g.Minutes))
			looks = append(looks, c.add(g.Looks)...)
		}
	} else {
		looks = c.add(v.Looks)
	}
	fill(c.list, looks)
	var paper []fyne.CanvasObject
	if len(v.Titles) > 0 {
		paper = append(paper, form.Heading("Title and papers", "Asked of the sale or of the title office. Yes means trouble."))
		paper = append(paper, c.add(v.Titles)...)
	}
	for _, l := range v.Lists {
		paper = append(paper, form.Heading(l.Name, l.Help))
		paper = append(paper, c.add(l.Items)...)
	}
	fill(c.paper, paper)
}

// add makes a row for each item and returns what is shown of them.
func (c *checklist) add(items []view.Check) []fyne.CanvasObject {
	var shown []fyne.CanvasObject
	for _, i := range items {
		r := c.row(i)
		c.rows[i.ID] = r
		shown = append(shown, r.body)
	}
	return shown
}

func (c *checklist) row(i view.Check) *checkRow {
	r := &checkRow{list: c, check: i, ask: widget.NewLabel(""), why: form.Small(""), figures: widgets.NewCaption(""),
		seen: container.NewVBox()}
	r.ask.Wrapping = fyne.TextWrapWord
	text := container.NewVBox(r.ask, r.seen)
	if i.Why+i.Source != "" {
		text = container.NewVBox(container.New(form.Tight{}, r.ask, r.why), r.seen)
	}
	if i.Tick {
		r.tick = newTick(func(on bool) { r.answered(map[bool]string{true: view.No, false: view.NotLooked}[on]) })
		r.tick.reached = func() { c.reveal(r.body) }
		r.body = container.NewBorder(nil, nil, container.NewVBox(r.tick), nil, text)
		return r
	}
	r.answer = widgets.NewReply([]string{view.Yes, view.No, view.NotLooked}, r.answered)
	r.answer.OnReached = func() { c.reveal(r.body) }
	right := container.NewVBox(container.NewPadded(r.figures), r.answer)
	if i.Fixed {
		r.answer.Hide()
	}
	r.body = container.NewBorder(nil, nil, nil, right, text)
	return r
}

// render writes an item into its row.
func (r *checkRow) render(i view.Check) {
	changed := len(i.Seen) != len(r.check.Seen) || r.ask.Text == ""
	r.check, r.muted = i, true
	if ask := strings.TrimSpace(i.Ask + " " + i.Look); r.ask.Text != ask {
		r.ask.SetText(ask)
	}
	words(r.why, strings.TrimSpace(i.Why+" "+i.Source))
	r.figures.SetText(strings.Trim(i.Minutes+", "+i.Worth, ", "))
	if r.tick != nil {
		r.tick.SetChecked(i.Answer == view.No)
	} else {
		r.answer.Set(i.Answer)
	}
	if changed {
		r.offer(i.Seen)
	}
	r.muted = false
}

// offer shows a button for each risk that a look may have made certain.
func (r *checkRow) offer(seen []view.Seen) {
	var buttons []fyne.CanvasObject
	for _, s := range seen {
		name := widget.NewLabel("Certain: " + s.Name)
		name.Wrapping = fyne.TextWrapWord
		buttons = append(buttons, container.NewBorder(nil, nil, nil, widgets.NewButton("Repair line", func() { r.list.confirm(s) }), name))
	}
	fill(r.seen, buttons)
}

// confirm turns a risk into a repair line.
func (c *checklist) confirm(s view.Seen) {
	know := *c.page.known
	c.page.edit("repair line for "+s.Name, func(k *valuation.Case) { valuation.Confirm(k, know, s.Risk) })
}

// answered notes an answer; "not checked" takes it back.
func (r *checkRow) answered(answer string) {
	if r.muted {
		return
	}
	id := r.check.ID
	r.list.page.edit(view.Answered(r.check, answer), func(k *valuation.Case) {
		findings := maps.Clone(k.Findings)
		if findings == nil {
			findings = map[string]string{}
		}
		findings[id] = answer
		if answer == view.NotLooked {
			delete(findings, id)
		}
		k.Findings = findings
	})
}

// tick is a box that tells when it takes the keyboard.
type tick struct {
	widget.Check
	reached func()
}

func newTick(changed func(bool)) *tick {
	t := &tick{}
	t.OnChanged = changed
	t.ExtendBaseWidget(t)
	return t
}

// FocusGained shows the focus and tells the list.
func (t *tick) FocusGained() {
	t.Check.FocusGained()
	t.reached()
}

// reveal scrolls a row into sight.
func (c *checklist) reveal(row fyne.CanvasObject) { draw.Bring(c.room, row) }

// notes returns items as notes.
func notes(kind widgets.NoteKind, items []view.Check) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, i := range items {
		out = append(out, widgets.NewNote(kind, i.Text+" "+i.Why))
	}
	return out
}

// lines returns wrapped lines of the second rank.
func lines(texts []string) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, t := range texts {
		out = append(out, form.Small(t))
	}
	return out
}

// words writes a line of the second rank, if it says something else.
func words(t *widget.RichText, s string) {
	style := widget.RichTextStyle{SizeName: theme.SizeSmall, ColorName: theme.ColorMuted}
	if len(t.Segments) == 1 && t.Segments[0].Textual() == s {
		return
	}
	t.Segments = []widget.RichTextSegment{&widget.TextSegment{Text: s, Style: style}}
	t.Refresh()
}

// fill puts objects in the place of what a container shows; nothing is touched where there was and is nothing.
func fill(c *fyne.Container, objects []fyne.CanvasObject) {
	if len(objects) == 0 && len(c.Objects) == 0 {
		return
	}
	c.Objects = objects
	c.Refresh()
}
