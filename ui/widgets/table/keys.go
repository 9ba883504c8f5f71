package table

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

const pageRows = 10

// TypedKey walks, opens and ticks rows, and marks headers.
func (t *Table) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(t, e)
	last := t.count - 1
	switch e.Name {
	case fyne.KeyDown:
		t.goTo(min(t.selected+1, last))
	case fyne.KeyUp:
		t.goTo(max(t.selected-1, 0))
	case fyne.KeyPageDown:
		t.goTo(min(t.selected+pageRows, last))
	case fyne.KeyPageUp:
		t.goTo(max(t.selected-pageRows, 0))
	case fyne.KeyHome:
		t.goTo(0)
	case fyne.KeyEnd:
		t.goTo(last)
	case fyne.KeyReturn, fyne.KeyEnter:
		t.open()
	case fyne.KeySpace:
		t.tick()
	case fyne.KeyDelete:
		if t.OnDelete != nil && t.selected >= 0 {
			t.OnDelete(t.selected)
		}
	case desktop.KeyMenu:
		t.showMenu(fyne.CurrentApp().Driver().AbsolutePositionForObject(t).AddXY(theme.Broad, headHeight()))
	case fyne.KeyLeft, fyne.KeyRight:
		t.markHeader(e.Name == fyne.KeyRight)
	}
}

// markHeader goes to the next header and brings its column into sight.
func (t *Table) markHeader(right bool) {
	if right {
		t.marked = min(t.marked+1, len(t.columns)-1)
	} else {
		t.marked = max(t.marked-1, 0)
	}
	t.ScrollTo(widget.TableCellID{Row: max(t.selected, 0), Col: t.marked + t.lead()})
	draw.Explain(t, t.columns[t.marked].Meaning)
	t.Table.Refresh()
}

// TypedRune sorts by the marked header.
func (t *Table) TypedRune(r rune) {
	if r == 's' || r == 'S' {
		t.sortBy(t.marked)
	}
}

// FocusGained shows the focus ring and marks a header.
func (t *Table) FocusGained() {
	t.focused = true
	t.Table.Refresh()
}

// FocusLost takes the marks back.
func (t *Table) FocusLost() {
	t.focused = false
	draw.Explain(t, "")
	t.Table.Refresh()
}

// MouseDown notes which keys are held: with Shift a tap ticks all rows from the last one, with Ctrl one more.
func (t *Table) MouseDown(e *desktop.MouseEvent) {
	t.held = e.Modifier
	t.Table.MouseDown(e)
}

// TappedSecondary goes to the row under the pointer and shows what may be done with it.
func (t *Table) TappedSecondary(e *fyne.PointEvent) {
	if t.hovered < 0 || t.hovered >= t.count {
		return
	}
	t.takeKeyboard()
	t.goTo(t.hovered)
	t.showMenu(e.AbsolutePosition)
}

// showMenu shows what may be done with the selected row.
func (t *Table) showMenu(at fyne.Position) {
	c := draw.CanvasOf(t)
	if c == nil || t.Menu == nil || t.selected < 0 {
		return
	}
	if items := t.Menu(t.selected); len(items) > 0 {
		widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", items...), c, at)
	}
}

// MouseIn lights nothing: the cells light their row.
func (t *Table) MouseIn(*desktop.MouseEvent) {}

// MouseMoved looks for the edge of a column to drag.
func (t *Table) MouseMoved(e *desktop.MouseEvent) {
	t.Table.MouseMoved(e)
	t.Table.MouseOut() // it would light a cell
}

func (t *Table) hover(row int) {
	if row != t.hovered {
		t.hovered = row
		t.Table.Refresh()
	}
}
