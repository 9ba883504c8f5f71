package main

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
)

// inSight reports whether an object stands inside the window, above its foot.
func (s *stage) inSight(o fyne.CanvasObject) bool {
	const foot = 32
	top := fyne.CurrentApp().Driver().AbsolutePositionForObject(o).Y
	return top >= 0 && top+o.Size().Height <= s.screen.Canvas().Size().Height-foot
}

func TestTheFieldWithTheKeyboardIsInSight(t *testing.T) {
	for _, section := range []rune{'1', '5'} { // Facts and Costs are longer than the window is high
		s, _ := worksheet(t, "27", section)
		c := s.screen.Canvas()
		seenFields := map[fyne.Focusable]bool{}
		for range 60 {
			c.FocusNext()
			field := c.Focused()
			o, ok := field.(fyne.CanvasObject)
			if _, button := field.(*widgets.Button); !ok || button || seenFields[field] {
				continue
			}
			seenFields[field] = true
			if !s.inSight(o) {
				t.Errorf("section %c: a %T has the keyboard at %v, out of sight", section, o,
					fyne.CurrentApp().Driver().AbsolutePositionForObject(o))
			}
		}
		if len(seenFields) < 15 {
			t.Errorf("section %c: only %d fields were reached", section, len(seenFields))
		}
	}
}

func TestTheFirstStepOfResaleIsInSight(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.NewLot()
	s.press("4")
	top := fyne.CurrentApp().Driver().AbsolutePositionForObject(seen.All[*table.Table](s.screen.Content())[0]).Y
	for _, b := range seen.All[*widgets.Button](s.screen.Content()) {
		if b.Text == "Import comparables…" {
			if bottom := fyne.CurrentApp().Driver().AbsolutePositionForObject(b).Y + b.Size().Height; bottom > top {
				t.Errorf("the button ends at %v, the table under it begins at %v", bottom, top)
			}
			return
		}
	}
	t.Error("no button to import comparables")
}

func TestWhatIsWrongWithAFigureIsSaidWhole(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.NewLot()
	s.press("4")
	test.Type(s.screen.Canvas().Focused(), "x")
	words := `! low: "x" is not a number`
	if n := strings.Count(strings.Join(seen.Texts(s.screen.Content()), "\n"), words); n != 2 {
		t.Errorf("%q is said %d times: beside the field and at the foot would be two", words, n)
	}
}

func TestTheKeyboardGoesThroughAPageAsItIsRead(t *testing.T) {
	s, _ := worksheet(t, "27", '3')
	c := s.screen.Canvas()
	c.Unfocus()
	place := fyne.CurrentApp().Driver().AbsolutePositionForObject
	list := place(seen.All[*table.Table](s.screen.Content())[0])
	for range 20 {
		c.FocusNext()
		switch c.Focused().(type) {
		case *widgets.Suggest:
			if at := place(c.Focused().(fyne.CanvasObject)); at.Y > list.Y {
				t.Errorf("the second search, at %v, comes before the first", at)
			}
			return
		case *table.Table:
			t.Error("the table of the work comes before the search above it")
			return
		}
	}
	t.Error("neither the search nor the table was reached")
}

func TestADayIsNeverCut(t *testing.T) {
	opened(t, task.Inline{}) // the theme of the window
	need := draw.TextWidth("2028-08-28", theme.SizeBody, fyne.TextStyle{}) + 2*theme.Space
	for name, columns := range map[string][]view.Column{"bills": view.BillColumns, "hours": view.HoursColumns,
		"board": view.BoardColumns, "builds": view.BuildColumns,
		"evidence": view.EvidenceColumns, "history": view.HistoryColumns, "comparables": view.ResaleColumns} {
		days := 0
		for _, c := range columns {
			if c.Title == "Day" || c.Title == "Date" || c.Title == "Bought" || c.Title == "Sale day" {
				days++
				if c.Width < need {
					t.Errorf("%s: %q is %v wide, a day needs %v", name, c.Title, c.Width, need)
				}
			}
		}
		if days == 0 {
			t.Errorf("%s: no column of days", name)
		}
	}
}
