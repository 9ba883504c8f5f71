package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets/draw"
)

// List is a list whose row on which the keyboard is Enter selects as the space bar does, and that leaves Escape to the window: the
// toolkit's own keeps it, and a dialog around it would not close.
type List struct{ widget.List }

// NewList returns a list of as many rows as length says, made by create and filled by update.
func NewList(length func() int, create func() fyne.CanvasObject, update func(widget.ListItemID, fyne.CanvasObject)) *List {
	l := &List{}
	l.Length, l.CreateItem, l.UpdateItem = length, create, update
	l.ExtendBaseWidget(l)
	return l
}

// TypedKey selects at Return and at the keypad's Enter, hands Escape on and leaves the rest to the toolkit.
func (l *List) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		l.List.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	default:
		draw.Leave(l, e)
		l.List.TypedKey(e)
	}
}
