package form

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// Fit is a pane that scrolls down only: where it is too narrow for labels beside their fields, as with large text, the labels of its forms
// stand above them.
type Fit struct {
	Pane    *fyne.Container // to be laid out
	scroll  *container.Scroll
	labels  []*widget.Label
	bare    map[fyne.CanvasObject]bool // labels without words
	heads   map[fyne.CanvasObject]bool // of the boxes in the row after
	stacked bool
	width   float32 // that it was fitted to; 0: not yet
}

// NewFit returns a pane around a body, whose forms are to be told of it by [Of.Fit].
func NewFit(body fyne.CanvasObject) *Fit {
	f := &Fit{scroll: container.NewVScroll(body)}
	f.Clear()
	f.Pane = container.New(f, f.scroll)
	return f
}

// Clear forgets the forms of the pane: its body is about to be built anew.
func (f *Fit) Clear() {
	f.labels, f.bare, f.heads, f.width = nil, map[fyne.CanvasObject]bool{}, map[fyne.CanvasObject]bool{}, 0
}

// Refresh fits what was built.
func (f *Fit) Refresh() { f.Pane.Refresh() }

// MinSize asks for little: the page gives what there is.
func (f *Fit) MinSize([]fyne.CanvasObject) fyne.Size { return f.scroll.MinSize() }

// Layout fits the body to the width, once for each width and each body.
func (f *Fit) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	if size.Width != f.width {
		f.width = size.Width
		f.stack(false)
		if f.scroll.Content.MinSize().Width > size.Width {
			f.stack(true)
			f.scroll.Content.Resize(fyne.NewSize(size.Width, 1)) // labels that wrap know their height only by their width
		}
	}
	f.scroll.Resize(size)
	f.scroll.Refresh()
}

// stack puts the labels above the fields, or beside them.
func (f *Fit) stack(above bool) {
	f.stacked = above
	for _, l := range f.labels {
		l.Alignment, l.Wrapping = fyne.TextAlignTrailing, fyne.TextWrapOff
		if above {
			l.Alignment, l.Wrapping = fyne.TextAlignLeading, fyne.TextWrapWord
		}
		l.Refresh()
	}
}

// blank reports whether an object of the rows takes no room where they are stacked.
func (f *Fit) blank(o fyne.CanvasObject) bool { return !o.Visible() || f.bare[o] }

// down returns the objects of the rows as they stand under each other: the heads of boxes right above them, under the label.
func (f *Fit) down(objects []fyne.CanvasObject) []fyne.CanvasObject {
	down := slices.Clone(objects)
	for i, o := range objects[:max(0, len(objects)-1)] {
		if f.heads[o] {
			down[i], down[i+1] = objects[i+1], o
		}
	}
	return down
}

// Fit has the rows of the form follow a pane; it is called before any is added.
func (f *Of[T]) Fit(pane *Fit) {
	f.pane, f.Rows.Layout = pane, rows{pane}
}

// rows lays out pairs of a label and a field: side by side, or where their pane is narrow under each other.
type rows struct{ pane *Fit }

func (r rows) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if !r.pane.stacked {
		return layout.NewFormLayout().MinSize(objects)
	}
	var size fyne.Size
	for _, o := range objects {
		if least := o.MinSize(); !r.pane.blank(o) {
			size.Width, size.Height = max(size.Width, least.Width), size.Height+least.Height
		}
	}
	return size
}

func (r rows) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	if !r.pane.stacked {
		layout.NewFormLayout().Layout(objects, size)
		return
	}
	y := float32(0)
	for _, o := range r.pane.down(objects) {
		if r.pane.blank(o) {
			o.Resize(fyne.Size{})
			continue
		}
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, o.MinSize().Height))
		o.Resize(fyne.NewSize(size.Width, o.MinSize().Height)) // again: the words may have wrapped
		y += o.MinSize().Height
	}
}
