package widgets

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/widgets/draw"
	"walkline/ui/widgets/seen"
)

// The wheel over any kind of field scrolls the page, and a page that gets shorter never stands below its end.
func TestTheWheelOverAFieldScrollsThePage(t *testing.T) {
	words := NewTextEntry()
	more := tall(900)
	page := container.NewVScroll(container.NewVBox(words, NewNumberEntry(Spec{}, nil), more))
	w := seen.Open(t, fyne.NewSize(300, 200), page)
	var last fyne.Scrollable // the topmost, which is what the window asks
	seen.Walk(words, func(o fyne.CanvasObject) {
		if s, ok := o.(fyne.Scrollable); ok {
			last = s
		}
	})
	last.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -120)})
	if page.Offset.Y != 120 {
		t.Errorf("the page stands at %v", page.Offset.Y)
	}
	more.Hide()
	draw.Clamp(w.Content())
	if page.Offset.Y != 0 {
		t.Errorf("the page has no more than its window shows, and stands at %v", page.Offset.Y)
	}
}
