package plot

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets/draw"
)

// stops is a plot whose items are walked one by one: with left and right on the keyboard, or by the pointer. A plot embeds it
// and says how many items there are and which lies at a place.
type stops struct {
	widget.BaseWidget
	self     fyne.Focusable
	count    func() int
	near     func(fyne.Position) int
	selected int // -1 for none
	hovered  int // -1 for none
	focused  bool
}

func newStops(self fyne.Focusable, count func() int, near func(fyne.Position) int) stops {
	return stops{self: self, count: count, near: near, selected: -1, hovered: -1}
}

// on returns the item that is read, -1 for none.
func (s *stops) on() int {
	if s.hovered >= 0 && s.hovered < s.count() {
		return s.hovered
	}
	return s.selected
}

// reset keeps the selection within the items.
func (s *stops) reset() {
	s.selected, s.hovered = min(s.selected, s.count()-1), -1
	s.Refresh()
}

// Selected returns the item that the keyboard is on, -1 for none.
func (s *stops) Selected() int { return s.selected }

// Tapped takes the keyboard and selects the item under the pointer.
func (s *stops) Tapped(e *fyne.PointEvent) {
	draw.FocusOn(s.self)
	if i := s.near(e.Position); i >= 0 {
		s.selected = i
		s.Refresh()
	}
}

// walked returns the item that a key leads to from another, the last being known.
func walked(key fyne.KeyName, from, last int) int {
	switch key {
	case fyne.KeyRight, fyne.KeyDown:
		return min(from+1, last)
	case fyne.KeyLeft, fyne.KeyUp:
		return max(from-1, 0)
	case fyne.KeyHome:
		return 0
	case fyne.KeyEnd:
		return last
	}
	return from
}

// TypedKey walks the items.
func (s *stops) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(s.self, e)
	last := s.count() - 1
	to := walked(e.Name, s.selected, last)
	if to != s.selected && to <= last {
		s.selected = to
		s.Refresh()
	}
}

// TypedRune does nothing.
func (s *stops) TypedRune(rune) {}

// FocusGained shows the focus ring.
func (s *stops) FocusGained() { s.focused = true; s.Refresh(); draw.Reveal(s.self.(fyne.CanvasObject)) }

// FocusLost hides the focus ring.
func (s *stops) FocusLost() { s.focused = false; s.Refresh() }

// MouseIn reads the item under the pointer.
func (s *stops) MouseIn(e *desktop.MouseEvent) { s.MouseMoved(e) }

// MouseMoved reads the item under the pointer.
func (s *stops) MouseMoved(e *desktop.MouseEvent) { s.hover(s.near(e.Position)) }

// MouseOut goes back to the selected item.
func (s *stops) MouseOut() { s.hover(-1) }

func (s *stops) hover(i int) {
	if i != s.hovered {
		s.hovered = i
		s.Refresh()
	}
}
