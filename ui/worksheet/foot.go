package worksheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/form"
	"walkline/ui/theme"
)

// foot lays words out on the left and buttons right of them; at large text the words go over the buttons, which break into rows.
type foot struct{ wraps fyne.Layout }

func newFoot(words fyne.CanvasObject, buttons ...fyne.CanvasObject) *fyne.Container {
	return container.New(foot{layout.NewRowWrapLayout()}, append([]fyne.CanvasObject{words}, buttons...)...)
}

// row returns the layout of the buttons, and whether it goes under the words.
func (f foot) row() (row fyne.Layout, under bool) {
	if theme.Scale() > form.LargeText {
		return f.wraps, true
	}
	return layout.NewHBoxLayout(), false
}

func (f foot) MinSize(objects []fyne.CanvasObject) fyne.Size {
	row, under := f.row()
	words, buttons := objects[0].MinSize(), row.MinSize(objects[1:])
	if under {
		return fyne.NewSize(max(words.Width, buttons.Width), words.Height+buttons.Height)
	}
	return fyne.NewSize(words.Width+buttons.Width, max(words.Height, buttons.Height))
}

func (f foot) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	row, under := f.row()
	at, room := fyne.NewPos(0, objects[0].MinSize().Height), fyne.NewSize(size.Width, row.MinSize(objects[1:]).Height)
	words := fyne.NewSize(size.Width, at.Y)
	if !under {
		room.Width = row.MinSize(objects[1:]).Width
		at, words = fyne.NewPos(size.Width-room.Width, 0), fyne.NewSize(size.Width-room.Width, size.Height)
	}
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(words)
	row.Layout(objects[1:], room)
	for _, o := range objects[1:] {
		o.Move(o.Position().Add(at))
	}
}
