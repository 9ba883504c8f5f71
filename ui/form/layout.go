package form

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/theme"
)

// Under lays a body out under a head and above a foot (nil: none). The keyboard goes through them as they are read; through the
// toolkit's own border it would go to the body first.
func Under(head, body, foot fyne.CanvasObject) *fyne.Container {
	c := container.New(layout.NewBorderLayout(head, foot, nil, nil))
	for _, o := range []fyne.CanvasObject{head, body, foot} {
		if o != nil {
			c.Add(o)
		}
	}
	return c
}

// FixedWidth lays its one object out at a width, as high as there is room.
type FixedWidth struct{ Width float32 } // at text scale 1

func (f FixedWidth) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(f.Width*theme.Scale(), objects[0].MinSize().Height)
}

func (f FixedWidth) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	objects[0].Move(fyne.NewPos(0, 0))
}

// LeastHeight keeps a height free for its one object, at text scale 1, so that larger text scrolls a page rather than squeeze a
// table out of it.
type LeastHeight struct{ Height float32 }

func (l LeastHeight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[0].MinSize().Width, l.Height*theme.Scale())
}

func (l LeastHeight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	objects[0].Move(fyne.NewPos(0, 0))
}

// Room gives its one object whatever room there is and asks for little, so that the window never outgrows the screen.
type Room struct{ Width, Height float32 } // the least, at any text scale

func (r Room) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(r.Width, r.Height) }

func (r Room) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	objects[0].Move(fyne.NewPos(0, 0))
}

// byScale is a grid of so many columns, and of one fewer where the text is large.
type byScale struct{ columns int }

// LargeText is the text scale above which a grid has one column fewer. Starter value: looked at in the pictures at 1280 points.
const LargeText = 1.15

func (b byScale) grid() fyne.Layout {
	if theme.Scale() > LargeText && b.columns > 1 {
		return layout.NewGridLayoutWithColumns(b.columns - 1)
	}
	return layout.NewGridLayoutWithColumns(b.columns)
}

func (b byScale) MinSize(objects []fyne.CanvasObject) fyne.Size { return b.grid().MinSize(objects) }

func (b byScale) Layout(objects []fyne.CanvasObject, size fyne.Size) { b.grid().Layout(objects, size) }

// The right side of a page: its width at text scale 1, and the most that it grows to, so that what stands beside it keeps room.
const (
	sideWidth = 320
	sideMost  = 400
)

// SideWidth is the width of the right side of a page at the text scale of the moment.
func SideWidth() float32 { return min(sideWidth*theme.Scale(), sideMost) }

// SideLine is the width of a line of figures there: its ground and its lines are padded.
func SideLine() float32 { return SideWidth() - 3*theme.Space }

// Side lays its one object out at the width of the right side.
type Side struct{}

func (Side) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(SideWidth(), objects[0].MinSize().Height)
}

func (Side) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

// stacked is two columns of labels and fields as the toolkit's form has them; where they have no room beside each other, each label goes
// over its field. It is to be used for one container.
type stacked struct{ width float32 } // as laid out last

// columns returns the least widths of the labels and of the fields.
func (s *stacked) columns(objects []fyne.CanvasObject) (labels, fields float32) {
	for i, o := range objects {
		if !o.Visible() {
			continue
		}
		if width := o.MinSize().Width; i%2 == 0 {
			labels = max(labels, width)
		} else {
			fields = max(fields, width)
		}
	}
	return labels, fields
}

func (s *stacked) narrow(objects []fyne.CanvasObject) bool {
	labels, fields := s.columns(objects)
	return s.width > 0 && s.width < labels+fields+theme.Half
}

// MinSize asks for the width of the fields, and for the height that the width of the moment gives.
func (s *stacked) MinSize(objects []fyne.CanvasObject) fyne.Size {
	labels, fields := s.columns(objects)
	size := layout.NewFormLayout().MinSize(objects)
	if s.narrow(objects) {
		size.Height = 0
		for _, o := range objects {
			if o.Visible() {
				size.Height += o.MinSize().Height
			}
		}
	}
	return fyne.NewSize(max(labels, fields), size.Height)
}

// Layout places the labels beside the fields or over them.
func (s *stacked) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	s.width = size.Width
	if !s.narrow(objects) {
		layout.NewFormLayout().Layout(objects, size)
		return
	}
	y := float32(0)
	for i, o := range objects {
		if !o.Visible() {
			continue
		}
		least := o.MinSize()
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, least.Height))
		if i%2 == 0 {
			o.Resize(least) // a label is aligned to its end
		}
		y += least.Height
	}
}

// Stacks has the labels of the form go over its fields where they have no room beside each other.
func (f *Of[T]) Stacks() *Of[T] {
	f.Rows.Layout = &stacked{}
	return f
}
