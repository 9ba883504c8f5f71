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
