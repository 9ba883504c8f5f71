package draw

import (
	"time"

	"fyne.io/fyne/v2"
)

// CanvasOf returns the canvas that an object is on; nil: on none. The toolkit (v2.7.1, internal/cache) forgets the canvas of what stood
// still for a minute until it paints again: where there is one window alone, that is its canvas.
func CanvasOf(o fyne.CanvasObject) fyne.Canvas {
	d := fyne.CurrentApp().Driver()
	if c := d.CanvasForObject(o); c != nil {
		return c
	}
	if all := d.AllWindows(); len(all) == 1 {
		return all[0].Canvas()
	}
	return nil
}

// OnCanvas does what needs the toolkit to know the canvas of an object: at once, or once the window is painted anew where it has
// forgotten. An object that is on no canvas then is left alone.
func OnCanvas(o fyne.CanvasObject, do func()) {
	d := fyne.CurrentApp().Driver()
	if d.CanvasForObject(o) != nil {
		do()
		return
	}
	for _, w := range d.AllWindows() {
		w.Canvas().Refresh(w.Content())
	}
	const frames = 100 * time.Millisecond
	fyne.NewAnimation(frames, func(done float32) {
		if done == 1 && d.CanvasForObject(o) != nil {
			do()
		}
	}).Start()
}
