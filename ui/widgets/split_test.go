package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
)

// tall is an object that asks for more than it needs.
func tall(height float32) fyne.CanvasObject {
	r := canvas.NewRectangle(nil)
	r.SetMinSize(fyne.NewSize(40, height))
	return r
}

// bar returns the bar of a split, which can be dragged.
func bar(s *container.Split) fyne.Draggable {
	for _, o := range test.WidgetRenderer(s).Objects() {
		if d, ok := o.(fyne.Draggable); ok {
			return d
		}
	}
	return nil
}

func drag(s *container.Split, by float32) {
	d := bar(s)
	d.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(2, 2+by)}, Dragged: fyne.NewDelta(0, by)})
	d.DragEnd()
}

// Two sides that together ask for more than there is can still be moved against each other, up and down, and stay where they
// were left when the page is made again.
func TestASplitMovesBothWaysAndKeepsItsPlace(t *testing.T) {
	make := func() *container.Split { return NewVSplit("test", tall(400), tall(400), 0.5) }
	s := make()
	seen.Open(t, fyne.NewSize(300, 500), s)
	s = make() // within the app of the window
	w := test.NewTempWindow(t, s)
	w.Resize(fyne.NewSize(300, 500))
	top := func(s *container.Split) float32 { return s.Leading.Size().Height }
	middle := top(s)
	drag(s, 100)
	low := top(s)
	drag(s, -200)
	if high := top(s); low < middle+90 || high > middle-90 {
		t.Errorf("from %v the bar went down to %v and up to %v", middle, low, high)
	}
	drag(s, -1000)
	if top(s) < leastHigh {
		t.Errorf("%v are left of the upper side", top(s))
	}
	kept := top(s)
	again := make()
	w.SetContent(again)
	if got := top(again); got < kept-1 || got > kept+1 {
		t.Errorf("left at %v, found at %v", kept, got)
	}
}
