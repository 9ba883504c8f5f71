package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/theme"
)

// What is left of a side at text scale 1: a heading and a line or two; a search field and its button.
const (
	leastHigh = 80
	leastWide = 200
)

// NewHSplit returns two objects side by side; the first one gets a share of the width until the bar between them is dragged. Each side may
// be made as small as leastHigh or leastWide, whatever it asks for, so that the bar moves both ways: what lies in it scrolls. Where the bar
// was left is kept in the settings of the toolkit under the split's name, from one start to the next.
func NewHSplit(name string, leading, trailing fyne.CanvasObject, share float64) *container.Split {
	return newSplit(name, leading, trailing, share, true)
}

// NewVSplit is NewHSplit with one object above the other.
func NewVSplit(name string, top, bottom fyne.CanvasObject, share float64) *container.Split {
	return newSplit(name, top, bottom, share, false)
}

func newSplit(name string, leading, trailing fyne.CanvasObject, share float64, horizontal bool) *container.Split {
	k := &keeper{name: "split." + name}
	side := func(o fyne.CanvasObject) fyne.CanvasObject { return container.New(yields{horizontal, k}, o) }
	k.split = container.NewVSplit(side(leading), side(trailing))
	k.split.Horizontal = horizontal
	k.kept = fyne.CurrentApp().Preferences().FloatWithFallback(k.name, share)
	k.split.SetOffset(k.kept)
	return k.split
}

// keeper remembers where the bar of a split was left.
type keeper struct {
	split *container.Split
	name  string
	kept  float64
}

// keep is called on every move of the bar.
func (k *keeper) keep() {
	if k.split.Offset != k.kept {
		k.kept = k.split.Offset
		fyne.CurrentApp().Preferences().SetFloat(k.name, k.kept)
	}
}

// yields lays its one object out in whatever room there is; along the split it asks for little.
type yields struct {
	horizontal bool
	keeper     *keeper
}

// MinSize returns the least size of the object, little along the split.
func (y yields) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[0].MinSize()
	if y.horizontal {
		return fyne.NewSize(min(least.Width, leastWide*theme.Scale()), least.Height)
	}
	return fyne.NewSize(least.Width, min(least.Height, leastHigh*theme.Scale()))
}

// Layout gives the object the whole room.
func (y yields) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	objects[0].Move(fyne.NewPos(0, 0))
	y.keeper.keep()
}
