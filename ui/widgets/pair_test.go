package widgets_test

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
)

// TestAPairIsStackedWhereItHasNoRoom makes the window narrow and wide again.
func TestAPairIsStackedWhereItHasNoRoom(t *testing.T) {
	first, second := canvas.NewRectangle(color.Black), canvas.NewRectangle(color.Black)
	first.SetMinSize(fyne.NewSize(300, 500))
	second.SetMinSize(fyne.NewSize(200, 100))
	p := widgets.NewPair(first, second, 0.5)
	w := seen.Open(t, fyne.NewSize(700, 320), p)
	if second.Position().X < 300 || second.Size().Height < 300 {
		t.Errorf("beside: at %v, size %v", second.Position(), second.Size())
	}
	w.Resize(fyne.NewSize(400, 320))
	if second.Position().X != 0 || second.Position().Y < 500 || second.Size().Width < 390 {
		t.Errorf("under: at %v, size %v", second.Position(), second.Size())
	}
	w.Resize(fyne.NewSize(700, 320))
	if second.Position().X < 300 || second.Position().Y != 0 {
		t.Errorf("beside again: at %v", second.Position())
	}
}
