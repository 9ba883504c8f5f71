package widgets

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets/seen"
)

func TestAThumbnailOpensByMouseAndKeyboard(t *testing.T) {
	opened := 0
	n := NewThumbnail("before", func() { opened++ })
	w := seen.Open(t, fyne.NewSize(200, 160), n)
	test.Tap(n)
	if w.Canvas().Focused() != n {
		t.Error("a tap does not give it the keyboard")
	}
	seen.Press(n, fyne.KeyReturn, fyne.KeySpace, fyne.KeyTab)
	if opened != 3 {
		t.Errorf("opened %d times", opened)
	}
	n.SetImage(image.NewRGBA(image.Rect(0, 0, 4, 3)))
	if !seen.Says(n, "before") {
		t.Errorf("it says %q", seen.Texts(n))
	}
	n.SetTrouble()
	if !seen.Says(n, "! not readable") {
		t.Errorf("it says %q", seen.Texts(n))
	}
}
