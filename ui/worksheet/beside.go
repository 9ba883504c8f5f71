package worksheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/form"
)

// beside lays a list beside a drawing where there is room for both, and below it where there is not: in a small window, or with
// large text. Beside it the list scrolls and the drawing stays; below it both scroll.
type beside struct {
	box          *fyne.Container
	drawing      fyne.CanvasObject
	list         fyne.CanvasObject
	wide, narrow fyne.CanvasObject // both hold the same two; one of them is shown
}

func newBeside(drawing, list fyne.CanvasObject, width float32) *fyne.Container {
	b := &beside{drawing: drawing}
	b.list = container.New(form.FixedWidth{Width: width}, container.NewVScroll(list))
	b.wide = container.NewBorder(nil, nil, nil, b.list, drawing)
	b.narrow = container.NewVScroll(container.NewVBox(drawing, list))
	b.box = container.New(b, b.wide)
	return b.box
}

// MinSize asks for little: the page gives what there is.
func (b *beside) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSquareSize(1) }

// Layout chooses by the width.
func (b *beside) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	shown := b.wide
	if size.Width < b.drawing.MinSize().Width+b.list.MinSize().Width {
		shown = b.narrow
	}
	shown.Resize(size)
	shown.Move(fyne.NewPos(0, 0))
	if b.box.Objects[0] != shown {
		b.box.Objects = []fyne.CanvasObject{shown}
		shown.Refresh() // the other one has moved what they share
	}
}
