package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/theme"
)

// plotRenderer draws a widget anew, all of it, whenever it changes or its size does: plots have few objects.
type plotRenderer struct {
	of      fyne.Widget
	focused func() bool
	draw    func(*drawing, fyne.Size)
	least   func() fyne.Size
	ring    *canvas.Rectangle
	objects []fyne.CanvasObject
	size    fyne.Size
}

func newPlotRenderer(of fyne.Widget, focused func() bool, draw func(*drawing, fyne.Size)) *plotRenderer {
	return &plotRenderer{of: of, focused: focused, draw: draw, ring: newFocusRing(),
		least: func() fyne.Size { return fyne.NewSize(320*theme.Scale(), 240*theme.Scale()) }}
}

func (r *plotRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *plotRenderer) MinSize() fyne.Size           { return r.least() }
func (r *plotRenderer) Destroy()                     {}

func (r *plotRenderer) Layout(size fyne.Size) {
	if size != r.size || r.objects == nil {
		r.redraw(size)
	}
}

func (r *plotRenderer) Refresh() {
	r.redraw(r.of.Size())
	canvas.Refresh(r.of)
}

func (r *plotRenderer) redraw(size fyne.Size) {
	d := &drawing{objects: []fyne.CanvasObject{r.ring}}
	if size.Width > 0 && size.Height > 0 {
		r.draw(d, size)
	}
	r.objects, r.size = d.objects, size
	showFocus(r.ring, r.focused(), size)
}
