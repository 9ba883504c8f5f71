package widgets

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets/draw"
)

// wheel lies over an entry of one line and takes the wheel of the mouse, and nothing else: the toolkit's entry would keep it, and
// the page under the pointer would stand still.
type wheel struct {
	widget.BaseWidget
	of fyne.CanvasObject
}

func newWheel(of fyne.CanvasObject) *wheel {
	w := &wheel{of: of}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled scrolls the page.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) { draw.Scroll(w.of, e) }

// CreateRenderer returns a renderer that draws nothing.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewWithoutLayout())
}

// CreateRenderer returns the entry's renderer under what takes the wheel.
func (e *TextEntry) CreateRenderer() fyne.WidgetRenderer {
	if e.MultiLine {
		return e.Entry.CreateRenderer()
	}
	return &wheeled{e.Entry.CreateRenderer(), newWheel(e)}
}

type wheeled struct {
	fyne.WidgetRenderer
	wheel *wheel
}

// Objects returns what is drawn, and what takes the wheel on top.
func (r *wheeled) Objects() []fyne.CanvasObject {
	return append(slices.Clone(r.WidgetRenderer.Objects()), r.wheel)
}

// Layout lays the wheel over all of it.
func (r *wheeled) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.wheel.Resize(size)
}
