package ui

import (
	"maps"
	"slices"

	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
)

// rivals asks which column is a field that several headings name, first of all that is asked.
func (m *matching) rivals() {
	for _, r := range m.sheet.Rivals {
		m.asked.Add(widgets.NewNote(widgets.Care, r.Text))
		s := widgets.NewSelect(r.Ways, nil)
		s.OnChanged = func(way string) { m.settle(r.At[slices.Index(r.Ways, way)], r.Field) }
		m.asked.Add(s)
	}
}

// goOn gives the keyboard, after an answer, to the next question, else to the button that takes the rows in.
func (m *matching) goOn() {
	if !m.said {
		return
	}
	m.said = false
	if len(m.sheet.Rivals) == 0 {
		m.w.focusIn(m.agree)
	}
	m.onRival()
}

// onRival gives the keyboard to the first field that several headings name: nothing can be taken before it is said.
func (m *matching) onRival() {
	for _, o := range m.asked.Objects {
		if s, ok := o.(*widgets.Select); ok && len(m.sheet.Rivals) > 0 {
			m.w.focusIn(s)
			return
		}
	}
}

// settle makes a column the field that the user says, and reads the table anew: the heading of a price may say its currency, and whether
// it was asked or paid.
func (m *matching) settle(column int, field string) {
	for at, said := range m.own {
		if said == field {
			delete(m.own, at)
		}
	}
	m.own[column], m.said = field, true
	m.reopen(func(o *desk.Opening) { o.Own = maps.Clone(m.own) })
}

// become makes a column what was chosen for it by hand.
func (m *matching) become(column int, field string, why *widget.Label) {
	before := m.sheet.Stated.Match[column]
	if slices.ContainsFunc(m.sheet.Rivals, func(r desk.Rival) bool { return r.Field == field || r.Field == before }) {
		m.settle(column, field)
		return
	}
	m.own[column] = field
	m.sheet.Stated.Match[column] = field
	why.SetText("you said so")
	m.preview()
}

// close closes the way to take the rows in, or opens it.
func (m *matching) close(closed bool) {
	if closed {
		m.agree.Disable()
		return
	}
	m.agree.Enable()
}

// dayOr returns a cell of the first rows as it is shown: a day in the system's manner, anything else as it stands.
func dayOr(name, text string) string {
	if slices.Contains([]string{"date", "sale_date", "bought", "sold"}, name) && text != "" {
		return form.DayShown(lot.Date(text))
	}
	return text
}
