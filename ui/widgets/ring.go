package widgets

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/widgets/draw"
)

// ringed draws a widget of the toolkit, and on top a ring on all four sides while it has the keyboard.
type ringed struct {
	fyne.WidgetRenderer
	ring    *canvas.Rectangle
	focused *bool
	of      fyne.CanvasObject
}

func newRinged(toolkit fyne.WidgetRenderer, focused *bool, of fyne.CanvasObject) *ringed {
	return &ringed{WidgetRenderer: toolkit, ring: draw.NewFocusRing(), focused: focused, of: of}
}

// Objects returns what is drawn without the toolkit's own mark of the keyboard, a circle.
func (r *ringed) Objects() []fyne.CanvasObject {
	all := slices.DeleteFunc(slices.Clone(r.WidgetRenderer.Objects()), func(o fyne.CanvasObject) bool {
		_, round := o.(*canvas.Circle)
		return round
	})
	return append(all, r.ring)
}

func (r *ringed) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.show(size)
}

func (r *ringed) Refresh() {
	r.show(r.of.Size())
	r.WidgetRenderer.Refresh()
}

func (r *ringed) show(size fyne.Size) { draw.ShowFocus(r.ring, *r.focused, size) }
