package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/widgets"
)

// ask shows what the table leaves open, and what each word of its titles is taken for. Both are said and changed there.
func (m *matching) ask(p desk.Preview) {
	m.asked.RemoveAll()
	m.titles.RemoveAll()
	m.doubt()
	m.rivals()
	for _, d := range p.Open {
		m.asked.Add(widgets.NewNote(widgets.Care, d.Text))
		if d.Word != "" {
			m.asked.Add(m.meaning(desk.TitleWord{Word: d.Word, Ways: d.Ways}, ""))
		}
	}
	if len(p.Titles) == 0 {
		return
	}
	m.titles.Add(widgets.NewCaption("Words of the titles, and what they mean"))
	grid := container.New(layout.NewFormLayout())
	for _, t := range p.Titles {
		means := t.Means
		if means == "" {
			means = unknownTitle
		}
		t.Ways = slices.Clone(t.Ways)
		if !slices.Contains(t.Ways, means) {
			t.Ways = append(t.Ways, means)
		}
		if t.Said != "" {
			t.Ways = append(t.Ways, forgetTitle)
		}
		grid.Add(widget.NewLabel(fmt.Sprintf("%s (%d)", short(t.Word, 22), t.Rows)))
		grid.Add(m.meaning(t, means))
	}
	m.titles.Add(grid)
}

// doubt shows how the table was read where it could be read otherwise, as long as nobody stated it.
func (m *matching) doubt() {
	m.doubts.RemoveAll()
	for _, d := range m.sheet.Doubts {
		if now := m.sheet.Stated.Notation(d.Option); now == nil || d.Took == *now {
			m.doubts.Add(widgets.NewNote(widgets.Care, d.Text))
		}
	}
}

// Answers for a word of a title beside the brands.
const (
	unknownTitle = "unknown"
	forgetTitle  = "(forget what I said)"
)

// meaning is the choice of what a word of a title means. The rows are read anew with the answer, and the keyboard stays with the word.
func (m *matching) meaning(t desk.TitleWord, now string) fyne.CanvasObject {
	s := m.means[t.Word]
	if s == nil {
		s = widgets.NewSelect(nil, nil)
		m.means[t.Word] = s
	}
	s.OnChanged, s.Options, s.Selected = nil, t.Ways, now
	s.Refresh()
	s.OnChanged = func(means string) {
		st := &m.sheet.Stated
		if st.Titles == nil {
			st.Titles = map[string]string{}
		}
		if delete(st.Titles, t.Said); means != forgetTitle {
			st.Titles[t.Word] = means
		}
		m.word = t.Word
		m.preview()
	}
	if m.word == t.Word {
		m.word = ""
		m.w.focusIn(s)
	}
	return s
}

// untitled adds the choice of what comparables are whose title nobody says.
func (m *matching) untitled() {
	const asClear = "taken as clear"
	st := &m.sheet.Stated
	now := st.Title
	if now == "" {
		now = asClear
	}
	s := widgets.NewSelect([]string{asClear, "clear", "rebuilt", "salvage"}, nil)
	s.SetSelected(now)
	s.OnChanged = func(way string) {
		if st.Title = way; way == asClear {
			st.Title = ""
		}
		m.preview()
	}
	m.row("No title is", s)
}

// cut is a text that ends in dots where it has no room.
func cut(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Truncation = fyne.TextTruncateEllipsis
	return l
}
