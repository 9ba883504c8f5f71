package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/theme"
)

// NewFacing returns a line with a name on the left and its figure on the right; where they have no room beside each other, the figure goes
// under the name. Room is the width that the line will have.
func NewFacing(name, figure string, room float32) fyne.CanvasObject {
	left, right := NewLine(name), NewLine(figure)
	if left.MinSize().Width+theme.Space+right.MinSize().Width > room {
		right.SetRight(true)
		return container.NewVBox(left, right)
	}
	return container.NewBorder(nil, nil, left, right)
}

// Beside lays its first object out over the whole width but what the second wants, which stands right of it; where that leaves less than
// Least, the second goes under the first. It is to be used for one container.
type Beside struct {
	Least float32 // of the first, at text scale 1
	width float32 // as laid out last
}

func (b *Beside) under(second fyne.CanvasObject) bool {
	return b.width > 0 && b.width-second.MinSize().Width-theme.Half < b.Least*theme.Scale()
}

// MinSize is as high as the objects need in the width that they had last.
func (b *Beside) MinSize(objects []fyne.CanvasObject) fyne.Size {
	first, second := objects[0].MinSize(), objects[1].MinSize()
	if b.under(objects[1]) {
		return fyne.NewSize(max(first.Width, second.Width), first.Height+theme.Half+second.Height)
	}
	return fyne.NewSize(max(first.Width, second.Width), max(first.Height, second.Height))
}

// Layout places the second beside the first or under it.
func (b *Beside) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	b.width = size.Width
	first, second := objects[0], objects[1]
	least := second.MinSize()
	first.Move(fyne.NewPos(0, 0))
	if b.under(second) {
		height := first.MinSize().Height
		first.Resize(fyne.NewSize(size.Width, height))
		second.Move(fyne.NewPos(0, height+theme.Half))
		second.Resize(fyne.NewSize(size.Width, least.Height))
		return
	}
	first.Resize(fyne.NewSize(size.Width-least.Width-theme.Half, size.Height))
	second.Move(fyne.NewPos(size.Width-least.Width, 0))
	second.Resize(fyne.NewSize(least.Width, size.Height))
}
