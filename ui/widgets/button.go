package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets/draw"
)

// Button is a button that Enter presses as the space bar does, that shows a ring on all sides while it has the keyboard, comes into
// sight when it takes it, and leaves Escape to the window. The toolkit's own takes the space bar alone.
type Button struct {
	widget.Button
	focused bool
}

// NewButton returns a button that calls tapped; nil is set later, as OnTapped.
func NewButton(words string, tapped func()) *Button { return NewButtonWithIcon(words, nil, tapped) }

// NewButtonWithIcon is NewButton with a picture before the words; nil is none.
func NewButtonWithIcon(words string, icon fyne.Resource, tapped func()) *Button {
	b := &Button{}
	b.Text, b.Icon, b.OnTapped = words, icon, tapped
	b.ExtendBaseWidget(b)
	return b
}

// FocusGained shows the ring, and the button.
func (b *Button) FocusGained() {
	b.focused = true
	b.Button.FocusGained()
	draw.Reveal(b)
}

// FocusLost hides the ring.
func (b *Button) FocusLost() {
	b.focused = false
	b.Button.FocusLost()
}

// TypedKey presses the button at Return and at the keypad's Enter, hands Escape on and leaves the rest to the toolkit.
func (b *Button) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		b.Tapped(nil)
	default:
		draw.Leave(b, e)
		b.Button.TypedKey(e)
	}
}

// CreateRenderer returns the toolkit's renderer under the ring.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	return newRinged(b.Button.CreateRenderer(), &b.focused, b)
}
