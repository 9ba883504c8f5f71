package widgets

import (
	"image/color"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/theme"
	"walkline/ui/widgets/seen"
)

func TestEnterPressesTheButton(t *testing.T) {
	pressed, escaped := 0, 0
	b := NewButton("Add", func() { pressed++ })
	w := seen.Open(t, fyne.NewSize(200, 80), b)
	w.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			escaped++
		}
	})
	w.Canvas().FocusNext()
	if w.Canvas().Focused() != fyne.Focusable(b) {
		t.Fatalf("%T has the keyboard", w.Canvas().Focused())
	}
	keys := []fyne.KeyName{fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace, fyne.KeyEscape, fyne.KeyDown}
	if seen.Press(w.Canvas().Focused(), keys...); pressed != 3 || escaped != 1 {
		t.Errorf("pressed %d times of 3, Escape came through %d times of 1", pressed, escaped)
	}
	b.Disable()
	if seen.Press(b, keys...); pressed != 3 {
		t.Error("a button that is greyed was pressed")
	}
}

// TestTheRing looks for the ring's color just inside each of the four sides of a button and of a tick, in every look.
func TestTheRing(t *testing.T) {
	for look, options := range seen.Looks {
		for what, of := range map[string]func() fyne.CanvasObject{
			"button": func() fyne.CanvasObject { return NewButton("Add", nil) },
			"tick":   func() fyne.CanvasObject { return NewCheck("It runs", nil) }} {
			test.NewTempApp(t).Settings().SetTheme(theme.New(options))
			o := of()
			w := test.NewTempWindow(t, o)
			w.SetPadded(false)
			w.Resize(fyne.NewSize(160, 60))
			if slices.Contains(sides(w), true) {
				t.Errorf("%s, %s: a ring without the keyboard", what, look)
			}
			w.Canvas().Focus(o.(fyne.Focusable))
			if slices.Contains(sides(w), false) {
				t.Errorf("%s, %s: the ring is on %v (top, right, bottom, left)", what, look, sides(w))
			}
			w.Canvas().Unfocus()
			if slices.Contains(sides(w), true) {
				t.Errorf("%s, %s: the ring stays", what, look)
			}
		}
	}
}

// sides reports whether the accent is drawn at the middle of the top, right, bottom and left side of a window.
func sides(w fyne.Window) []bool {
	img := w.Canvas().Capture()
	right, bottom := img.Bounds().Dx()-1, img.Bounds().Dy()-1
	accent := color.NRGBAModel.Convert(theme.Color(theme.ColorAccent))
	var found []bool
	for _, at := range [][2]int{{right / 2, 1}, {right - 1, bottom / 2}, {right / 2, bottom - 1}, {1, bottom / 2}} {
		found = append(found, color.NRGBAModel.Convert(img.At(at[0], at[1])) == accent)
	}
	return found
}
