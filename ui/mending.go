package ui

import (
	"fmt"
	"maps"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/widgets"
)

// mending is the dialog in which refused rows of a table are put right, cell by cell, and tried again. What was put right is taken with the
// rest; the file itself stays as it is.
type mending struct {
	m       *matching
	refused []desk.Refusal
	line    int // of the row on show
	list    *widgets.List
	why     *widget.Label
	cells   []*widgets.TextEntry
	texts   []string // what the cells hold whole: a long one is cut in its field
	fields  *fyne.Container
	body    fyne.CanvasObject
}

// mend opens the dialog for the rows that are refused now.
func (m *matching) mend() {
	r := &mending{m: m, refused: mendable(m.shown), why: widget.NewLabel(""), fields: container.New(layout.NewFormLayout())}
	r.why.Wrapping = fyne.TextWrapWord
	r.list = widgets.NewList(func() int { return len(r.refused) }, func() fyne.CanvasObject {
		l := widget.NewLabel("")
		l.Truncation = fyne.TextTruncateEllipsis
		return l
	}, func(i widget.ListItemID, o fyne.CanvasObject) {
		o.(*widget.Label).SetText(brief(fmt.Sprintf("line %d: %s", r.refused[i].Line, r.refused[i].Reason), mostShown/10))
	})
	r.list.OnSelected = func(i widget.ListItemID) { r.show(r.refused[i]) }
	try := widgets.NewButton("Try again", m.w.handler(r.try))
	try.Importance = widget.HighImportance
	side := container.NewBorder(r.why, container.NewHBox(try), nil, nil, container.NewVScroll(r.fields))
	split := container.NewHSplit(r.list, side)
	split.Offset = 0.4
	r.body = split
	d := m.w.telling("Put rows right", "Back to the table", r.body)
	d.Resize(fyne.NewSize(980, 560))
	m.again = r.arrived
	m.w.open(d)
	d.SetOnClosed(func() {
		m.again = nil
		if m.w.forget(d); len(r.refused) == 0 {
			m.w.focusIn(m.agree) // all is right: Enter takes the rows in
		}
	})
	r.first()
}

// mendable are the rows of a table that can be put right: those that are refused, and those that serve for nothing as they stand.
func mendable(p desk.Preview) []desk.Refusal { return slices.Concat(p.Refused, p.Odd) }

// first goes to the first row that is refused; none left is said.
func (r *mending) first() {
	if len(r.refused) == 0 {
		r.line, r.cells = 0, nil
		r.fields.RemoveAll()
		r.why.SetText("No row is refused any more.")
		return
	}
	r.list.Select(0)
	r.show(r.refused[0])
}

// show writes the cells of a row into fields, each under the name of its column.
func (r *mending) show(row desk.Refusal) {
	if r.line == row.Line && len(r.cells) > 0 {
		r.why.SetText(brief(fmt.Sprintf("Line %d: %s", row.Line, row.Reason), mostShown))
		return
	}
	r.line, r.cells, r.texts = row.Line, nil, nil
	r.fields.RemoveAll()
	for i := range max(len(r.m.sheet.Header), len(row.Cells)) {
		name, text := fmt.Sprintf("cell %d", i+1), ""
		if i < len(r.m.sheet.Header) {
			name = r.m.sheet.Header[i]
		}
		if i < len(row.Cells) {
			text = row.Cells[i]
		}
		e := widgets.NewTextEntry()
		e.SetText(brief(text, mostShown))
		e.OnSubmitted = func(string) { r.try() }
		r.cells, r.texts = append(r.cells, e), append(r.texts, text)
		r.fields.Add(widget.NewLabel(short(name, 28)))
		r.fields.Add(e)
		if name == row.Column && r.m.w.modal() {
			r.m.w.focusIn(e)
			r.m.w.runner.After(breath, func() { e.TypedShortcut(&fyne.ShortcutSelectAll{}) }) // it is to be put right: typing replaces it
		}
	}
	r.why.SetText(brief(fmt.Sprintf("Line %d: %s", row.Line, row.Reason), mostShown))
}

// try reads the table again with the cells as they now are.
func (r *mending) try() {
	if r.line == 0 {
		return
	}
	cells := make([]string, len(r.cells))
	for i, e := range r.cells {
		if cells[i] = e.Text; e.Text == brief(r.texts[i], mostShown) {
			cells[i] = r.texts[i]
		}
	}
	for len(cells) > len(r.m.sheet.Header) && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	put := maps.Clone(r.m.sheet.Stated.Mended)
	if put == nil {
		put = map[int][]string{}
	}
	put[r.line] = cells
	r.m.sheet.Stated.Mended = put
	r.m.preview()
}

// arrived shows what became of the rows: one that is still refused keeps its cells and says why.
func (r *mending) arrived(p desk.Preview) {
	r.refused = mendable(p)
	r.list.Refresh()
	at := slices.IndexFunc(r.refused, func(x desk.Refusal) bool { return x.Line == r.line })
	if at < 0 {
		r.list.UnselectAll()
		r.line = 0
		r.first()
		return
	}
	r.show(r.refused[at])
}
