package form

import (
	"fyne.io/fyne/v2"

	"walkline/ui/theme"
)

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
