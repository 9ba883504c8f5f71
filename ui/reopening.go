package ui

import (
	"context"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
)

// asShown is the way to leave the line of the headings to the table.
const (
	asShown    = "found"
	noHeadings = "no line"
)

// headingLines is how many first lines may be chosen as that of the headings.
const headingLines = 30

// ofFile adds what is stated of the file itself: how its letters are encoded, which sheet is read, which line names the columns.
func (m *matching) ofFile() {
	s := &m.sheet
	if len(s.Encodings) > 0 {
		var ways []string
		now := 0
		for i, e := range s.Encodings {
			ways = append(ways, e.Name+": "+short(e.Shows, 40))
			if e.Name == s.Encoding {
				now = i
			}
		}
		m.choice("Letters", ways, ways[now], func(at int) { m.reopen(func(o *desk.Opening) { o.Encoding = s.Encodings[at].Name }) })
	}
	if len(s.Tabs) > 1 {
		m.choice("Sheet", s.Tabs, s.Tab, func(at int) { m.reopen(func(o *desk.Opening) { o.Tab, o.Headings = s.Tabs[at], nil }) })
	}
	lines := []string{asShown, noHeadings}
	for i := range headingLines {
		lines = append(lines, lineWords(i+1))
	}
	now := asShown
	switch h := s.Opened.Headings; {
	case h != nil && *h == 0:
		now = noHeadings
	case h != nil:
		now = lineWords(*h)
	case s.Headings > 0:
		lines[0] = asShown + ": " + lineWords(s.Headings)
		now = lines[0]
	}
	m.choice("Headings", lines, now, func(at int) {
		m.reopen(func(o *desk.Opening) {
			if line := at - 1; at == 0 {
				o.Headings = nil
			} else {
				o.Headings = &line
			}
		})
	})
}

func lineWords(line int) string { return "line " + strconv.Itoa(line) }

// choice adds a choice of which the place is told.
func (m *matching) choice(words string, ways []string, now string, chosen func(at int)) {
	f := widgets.NewSelect(ways, nil)
	f.SetSelected(now)
	f.OnChanged = func(way string) {
		m.chose = words
		chosen(slices.Index(ways, way))
	}
	m.row(words, f)
	if m.chose == words { // the one that was chosen from is shown no more
		m.chose = ""
		m.w.focusIn(f)
	}
}

// reopen reads the file again, away from the window, as it is now stated, and shows what it holds then. Where that can't be, the table
// stays as it was and the reason is said.
func (m *matching) reopen(change func(*desk.Opening)) {
	sheet, o := m.sheet, m.sheet.Opened
	o.Watch = nil
	if change(&o); o.Tab != m.sheet.Opened.Tab || !reflect.DeepEqual(o.Headings, m.sheet.Opened.Headings) {
		o.Own, m.own = nil, map[int]string{} // of other columns
	}
	m.found.SetText("Reading it again…")
	task.Start(m.w.runner, task.Order[desk.Sheet]{Key: "reopen",
		Work: func(ctx context.Context) (desk.Sheet, error) {
			o.Watch = func(float64) bool { return ctx.Err() != nil }
			return m.tables.Reopen(sheet, o)
		},
		Show: func(again desk.Sheet, err error) {
			switch {
			case !m.open:
				return
			case err != nil:
				m.build()
				m.found.SetText("! " + strings.TrimSpace(err.Error()))
				return
			}
			m.sheet = again
			m.build()
			m.preview()
		}})
}
