package listing

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// text is the listing's text with what was read from it.
type text struct {
	entry *widgets.Passage
	found *fyne.Container
	body  fyne.CanvasObject
	shown *desk.Listed
}

func newText(do func(desk.Action)) *text {
	t := &text{found: container.NewVBox()}
	t.entry = widgets.NewPassage(view.Help("Listing"), func(words string) { do(desk.WantRead(words)) })
	t.entry.SetPlaceHolder("2017 Ostrane Pell S, 61,200 miles, salvage title, front end damage, runs and drives, no keys")
	t.entry.SetMinRowsVisible(5)
	read := widgets.NewButton("Read it (Enter)", func() { do(desk.WantRead(t.entry.Text)) })
	head := container.NewVBox(form.Heading("Listing", "Paste the text of the listing, or type it. It fills in what is not known yet; Ctrl+Z "+
		"takes it back."), t.entry, container.NewHBox(read))
	t.body = form.Under(head, container.NewVScroll(t.found), nil)
	return t
}

// render shows what the text gave, fact by fact, and what is left.
func (t *text) render(o desk.Open) {
	if o.Listed == t.shown {
		return
	}
	t.shown, t.found.Objects = o.Listed, nil
	if l := o.Listed; l != nil {
		t.rows("Understood", l.Facts)
		var left [][2]string
		for _, words := range l.Left {
			left = append(left, [2]string{"", words})
		}
		t.rows("Left, not filled in", left)
	}
	t.found.Refresh()
}

// rows adds a list of labels and words under a title.
func (t *text) rows(title string, rows [][2]string) {
	if len(rows) == 0 {
		return
	}
	var lines []string
	for _, r := range rows {
		lines = append(lines, strings.TrimPrefix(strings.TrimSuffix(r[0], "?")+": "+r[1], ": "))
	}
	words := widget.NewLabel(strings.Join(lines, "\n"))
	words.Wrapping = fyne.TextWrapWord
	t.found.Add(form.Label(title))
	t.found.Add(words)
}
