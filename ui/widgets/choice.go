package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets/draw"
)

// Select is a field for one of several words that comes into sight when it takes the keyboard, and leaves Escape to the window.
type Select struct {
	widget.Select
	meaning string // told while it has the keyboard
}

// NewSelect returns a field in which nothing is chosen.
func NewSelect(words []string, changed func(string)) *Select {
	s := &Select{}
	s.Options, s.OnChanged = words, changed
	s.ExtendBaseWidget(s)
	return s
}

// FocusGained shows the focus, and the field.
func (s *Select) FocusGained() {
	s.Select.FocusGained()
	draw.Explain(s, s.meaning)
	draw.Reveal(s)
}

// FocusLost takes the meaning back.
func (s *Select) FocusLost() {
	s.Select.FocusLost()
	draw.Explain(s, "")
}

// SetMeaning sets what the window tells while the field has the keyboard.
func (s *Select) SetMeaning(words string) { s.meaning = words }

// Tapped opens the list of words, which the toolkit can't for what it forgot the canvas of.
func (s *Select) Tapped(e *fyne.PointEvent) { draw.OnCanvas(s, func() { s.Select.Tapped(e) }) }

// TypedKey hands Escape on and leaves the rest to the toolkit.
func (s *Select) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(s, e)
	draw.OnCanvas(s, func() { s.Select.TypedKey(e) })
}

// Check is a tick that shows a ring on all sides while it has the keyboard, comes into sight when it takes the keyboard, and leaves Escape
// to the window.
type Check struct {
	widget.Check
	meaning string
	focused bool
}

// NewCheck returns a tick that is not set.
func NewCheck(words string, changed func(bool)) *Check {
	c := &Check{}
	c.Text, c.OnChanged = words, changed
	c.ExtendBaseWidget(c)
	return c
}

// CreateRenderer returns the toolkit's renderer under the ring.
func (c *Check) CreateRenderer() fyne.WidgetRenderer {
	return newRinged(c.Check.CreateRenderer(), &c.focused, c)
}

// FocusGained shows the focus, and the tick.
func (c *Check) FocusGained() {
	c.focused = !c.Disabled()
	c.Check.FocusGained()
	draw.Explain(c, c.meaning)
	draw.Reveal(c)
}

// FocusLost takes the meaning back.
func (c *Check) FocusLost() {
	c.focused = false
	c.Check.FocusLost()
	draw.Explain(c, "")
}

// SetMeaning sets what the window tells while the field has the keyboard.
func (c *Check) SetMeaning(words string) { c.meaning = words }

// TypedKey hands Escape on and leaves the rest to the toolkit.
func (c *Check) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(c, e)
	c.Check.TypedKey(e)
}
