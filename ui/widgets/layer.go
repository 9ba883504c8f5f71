package widgets

import (
	"walkline/ui/widgets/draw"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/task"
)

// Layer is a window's content with a sheet over it, on which tips and suggestions lie without taking the keyboard. Give it to
// the window as its content, or to a dialog that has entries with suggestions.
type Layer struct {
	widget.BaseWidget
	content fyne.CanvasObject
	sheet   *fyne.Container
	runner  task.Runner

	// OnExplain is called with what the field in hand, or the word under the pointer, means; empty when neither has a meaning to tell.
	OnExplain func(words string)
	// OnComplete returns the words that are known of a subject, the likeliest first; nil: none are.
	OnComplete func(subject string) []Choice
}

// NewLayer lays a sheet over content; the runner times the tips.
func NewLayer(content fyne.CanvasObject, runner task.Runner) *Layer {
	l := &Layer{content: content, sheet: container.NewWithoutLayout(), runner: runner}
	l.ExtendBaseWidget(l)
	return l
}

// SetContent changes what lies under the sheet.
func (l *Layer) SetContent(content fyne.CanvasObject) {
	l.content = content
	l.Refresh()
}

// Explain tells what something on the layer means.
func (l *Layer) Explain(words string) {
	if l.OnExplain != nil {
		l.OnExplain(words)
	}
}

// Parts returns what lies under the sheet.
func (l *Layer) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{l.content} }

// CreateRenderer returns the renderer.
func (l *Layer) CreateRenderer() fyne.WidgetRenderer { return &layerRenderer{l} }

type layerRenderer struct{ l *Layer }

func (r *layerRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.l.content, r.l.sheet}
}
func (r *layerRenderer) MinSize() fyne.Size { return r.l.content.MinSize() }
func (r *layerRenderer) Destroy()           {}
func (r *layerRenderer) Layout(size fyne.Size) {
	r.l.content.Resize(size)
	r.l.sheet.Resize(size)
}
func (r *layerRenderer) Refresh() {
	r.Layout(r.l.Size())
	canvas.Refresh(r.l)
}

// layerOf returns the layer over an object: the topmost dialog's, else the window's; nil when there is none.
func layerOf(o fyne.CanvasObject) *Layer {
	c := draw.CanvasOf(o)
	if c == nil {
		return nil
	}
	if l := layerIn(c.Overlays().Top()); l != nil {
		return l
	}
	return layerIn(c.Content())
}

// knownTo returns the words that the window of an object knows of a subject: they are those of the window's content, for its dialogs too.
func knownTo(o fyne.CanvasObject, subject string) []Choice {
	c := draw.CanvasOf(o)
	if c == nil {
		return nil
	}
	if l := layerIn(c.Content()); l != nil && l.OnComplete != nil {
		return l.OnComplete(subject)
	}
	return nil
}

func layerIn(o fyne.CanvasObject) *Layer {
	switch x := o.(type) {
	case *Layer:
		return x
	case *widget.PopUp:
		return layerIn(x.Content)
	case *fyne.Container:
		for _, child := range x.Objects {
			if l := layerIn(child); l != nil {
				return l
			}
		}
	}
	return nil
}

// put shows an object on the sheet near a place of the window, moved so that it stays inside; take it off with drop.
func (l *Layer) put(o fyne.CanvasObject, at fyne.Position, size fyne.Size) {
	origin := fyne.CurrentApp().Driver().AbsolutePositionForObject(l)
	at = at.Subtract(origin)
	room := l.Size()
	at.X = max(min(at.X, room.Width-size.Width), 0)
	at.Y = max(min(at.Y, room.Height-size.Height), 0)
	o.Move(at)
	o.Resize(size)
	l.drop(o)
	l.sheet.Add(o)
	l.sheet.Refresh() // Add alone paints nothing in a window at rest
}

func (l *Layer) drop(o fyne.CanvasObject) {
	l.sheet.Remove(o)
	l.sheet.Refresh()
}
