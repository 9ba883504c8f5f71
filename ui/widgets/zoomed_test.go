package widgets

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/widgets/seen"
)

// The arithmetic is plain geometry: 400 x 200 pixels in a square of 200 points stand 200 x 100 points large when whole, and a zoom of z
// shows 1/z of them each way, once they fill the room.
func TestZoomedShowsWhatIsUnderThePointer(t *testing.T) {
	z := NewZoomed()
	seen.Open(t, fyne.NewSize(200, 200), z)
	z.Resize(fyne.NewSize(200, 200))
	z.SetPicture(image.NewRGBA(image.Rect(0, 0, 400, 200)))
	if got := z.picture.Size(); got != fyne.NewSize(200, 100) || z.picture.Position() != fyne.NewPos(0, 50) {
		t.Errorf("whole: %v at %v", got, z.picture.Position())
	}
	for range 4 { // 1.25 to the 4th: 2.44
		z.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(0, 100)}, Scrolled: fyne.NewDelta(0, 10)})
	}
	b := z.picture.Image.Bounds()
	if b.Min.X != 0 || b.Dx() < 162 || b.Dx() > 166 || z.picture.Size().Height != 200 {
		t.Errorf("zoomed at the left edge: %v, %v", b, z.picture.Size())
	}
	z.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(-100, 0)})
	if moved := z.picture.Image.Bounds().Min.X; moved < 80 || moved > 84 {
		t.Errorf("half a width of drag moved it by %d pixels", moved)
	}
	z.Pan(9, 9)
	if end := z.picture.Image.Bounds().Max; end.X > 400 || end.X < 399 || end.Y > 200 {
		t.Errorf("dragged out of the picture: %v", end)
	}
	z.In(99)
	if z.Zoom() != mostZoom {
		t.Errorf("zoom %v", z.Zoom())
	}
	z.DoubleTapped(nil)
	if z.Zoom() != 1 || z.picture.Image.Bounds() != image.Rect(0, 0, 400, 200) {
		t.Errorf("a double click shows %v", z.picture.Image.Bounds())
	}
	z.SetPicture(nil)
	z.In(1)
}
