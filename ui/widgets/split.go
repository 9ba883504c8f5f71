package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/theme"
)

// Split parts its room between two objects with a bar to be dragged. Each side may be made as small as leastHigh or leastWide, whatever
// it asks for, so that the bar moves both ways: what lies in it scrolls. Where the bar was left is kept in the settings of the toolkit
// under the
// split's name, from one start to the next.
type Split struct {
	container.Split
	name string
	kept float64
}

// What is left of a side at text scale 1: a heading and a line or two; a search field and its button.
const (
	leastHigh = 80
	leastWide = 200
)

// NewHSplit returns two objects side by side; the first one gets a share of the width until the bar is dragged.
func NewHSplit(name string, leading, trailing fyne.CanvasObject, share float64) *Split {
	return newSplit(name, leading, trailing, share, true)
}

// NewVSplit returns two objects one above the other.
func NewVSplit(name string, top, bottom fyne.CanvasObject, share float64) *Split {
	return newSplit(name, top, bottom, share, false)
}

func newSplit(name string, leading, trailing fyne.CanvasObject, share float64, horizontal bool) *Split {
	s := &Split{name: "split." + name}
	s.Horizontal = horizontal
	s.Leading, s.Trailing = container.New(yields{horizontal}, leading), container.New(yields{horizontal}, trailing)
	s.Offset = fyne.CurrentApp().Preferences().FloatWithFallback(s.name, share)
	s.kept = s.Offset
	s.ExtendBaseWidget(s)
	return s
}

// Parts returns both sides.
func (s *Split) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{s.Leading, s.Trailing} }

// CreateRenderer returns the toolkit's renderer, which also hears when the bar was dragged.
func (s *Split) CreateRenderer() fyne.WidgetRenderer {
	return &splitRenderer{s.Split.CreateRenderer(), s}
}

type splitRenderer struct {
	fyne.WidgetRenderer
	split *Split
}

// Refresh is called on every move of the bar.
func (r *splitRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	if s := r.split; s.Offset != s.kept {
		s.kept = s.Offset
		fyne.CurrentApp().Preferences().SetFloat(s.name, s.kept)
	}
}

// yields lays its one object out in whatever room there is; along the split it asks for little.
type yields struct{ horizontal bool }

func (y yields) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[0].MinSize()
	if y.horizontal {
		return fyne.NewSize(min(least.Width, leastWide*theme.Scale()), least.Height)
	}
	return fyne.NewSize(least.Width, min(least.Height, leastHigh*theme.Scale()))
}

func (y yields) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	objects[0].Move(fyne.NewPos(0, 0))
}

var _ fyne.Widget = (*Split)(nil)
