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
	c := container.New(settled{layout.NewBorderLayout(head, foot, nil, nil)})
	for _, o := range []fyne.CanvasObject{head, body, foot} {
		if o != nil {
			c.Add(o)
		}
	}
	return c
}

// settled lays its objects out again where they ask for more or less room once they have their width: what breaks into lines knows its
// height only then.
type settled struct{ in fyne.Layout }

func (s settled) MinSize(objects []fyne.CanvasObject) fyne.Size { return s.in.MinSize(objects) }

func (s settled) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	asked := s.MinSize(objects)
	if s.in.Layout(objects, size); s.MinSize(objects) != asked {
		s.in.Layout(objects, size)
	}
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

// byScale is a grid of so many columns, and of one fewer where the text is large; of two or one where its pane is narrow.
type byScale struct {
	columns int
	pane    *Fit // nil: none
}

// LargeText is the text scale above which a grid has one column fewer. Starter value: looked at in the pictures at 1280 points.
const LargeText = 1.15

func (b byScale) grid(objects []fyne.CanvasObject) fyne.Layout {
	if b.pane != nil && b.pane.stacked {
		columns := min(b.columns, stackedTicks)
		if layout.NewGridLayoutWithColumns(columns).MinSize(objects).Width > b.pane.width {
			columns = 1
		}
		return layout.NewGridLayoutWithColumns(columns)
	}
	if theme.Scale() > LargeText && b.columns > 1 {
		return layout.NewGridLayoutWithColumns(b.columns - 1)
	}
	return layout.NewGridLayoutWithColumns(b.columns)
}

// stackedTicks are the most columns of ticks in a narrow pane.
const stackedTicks = 2

func (b byScale) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return b.grid(objects).MinSize(objects)
}

func (b byScale) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	b.grid(objects).Layout(objects, size)
}

// The right side of a page: its width at text scale 1, and the most that it grows to, so that what stands beside it keeps room.
const (
	sideWidth = 320
	sideMost  = 408
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
