package draw

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Renderer draws a widget anew, all of it, whenever it changes or its size does: for drawings of few objects.
type Renderer struct {
	Of      fyne.Widget
	Focused func() bool // nil: the widget never has the keyboard
	Draw    func(*Sheet, fyne.Size)
	Least   func() fyne.Size

	ring    *canvas.Rectangle
	objects []fyne.CanvasObject
	size    fyne.Size
}

// Objects returns the ring of the keyboard and the drawing.
func (r *Renderer) Objects() []fyne.CanvasObject { return r.objects }

// MinSize returns what Least says.
func (r *Renderer) MinSize() fyne.Size { return r.Least() }

// Destroy has nothing to let go.
func (r *Renderer) Destroy() {}

// Layout draws for a new size.
func (r *Renderer) Layout(size fyne.Size) {
	if size != r.size || r.objects == nil {
		r.redraw(size)
	}
}

// Refresh draws again.
func (r *Renderer) Refresh() {
	r.redraw(r.Of.Size())
	canvas.Refresh(r.Of)
}

func (r *Renderer) redraw(size fyne.Size) {
	d := &Sheet{}
	if r.Focused != nil {
		if r.ring == nil {
			r.ring = NewFocusRing()
		}
		ShowFocus(r.ring, r.Focused(), size)
	}
	if size.Width > 0 && size.Height > 0 {
		r.Draw(d, size)
	}
	if r.ring != nil {
		d.Add(r.ring) // on top: a drawing that fills its room would hide it
	}
	r.objects, r.size = d.objects, size
}
