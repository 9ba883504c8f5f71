package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets/draw"
)

// Explained is an object whose meaning the window tells while the pointer is on it.
type Explained struct {
	widget.BaseWidget
	content fyne.CanvasObject
	words   string
}

var _ desktop.Hoverable = (*Explained)(nil)

// NewExplained gives an object a meaning.
func NewExplained(content fyne.CanvasObject, words string) *Explained {
	e := &Explained{content: content, words: words}
	e.ExtendBaseWidget(e)
	return e
}

// MouseIn tells the meaning.
func (e *Explained) MouseIn(*desktop.MouseEvent) { draw.Explain(e, e.words) }

// MouseMoved does nothing.
func (e *Explained) MouseMoved(*desktop.MouseEvent) {}

// MouseOut takes it back.
func (e *Explained) MouseOut() { draw.Explain(e, "") }

// CreateRenderer returns the renderer.
func (e *Explained) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(e.content) }
