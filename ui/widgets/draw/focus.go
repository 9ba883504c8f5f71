package draw

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/theme"
)

// NewFocusRing returns the outline that marks the focused widget.
func NewFocusRing() *canvas.Rectangle {
	r := canvas.NewRectangle(color.Transparent)
	r.StrokeWidth, r.CornerRadius = 2, 4
	r.Hide()
	return r
}

// ShowFocus shows the ring round a size, or hides it.
func ShowFocus(r *canvas.Rectangle, focused bool, size fyne.Size) {
	r.StrokeColor = theme.Color(theme.ColorAccent)
	const in = 1 // inside: what scrolls or splits cuts off all that stands out
	r.Move(fyne.NewPos(in, in))
	r.Resize(size.SubtractWidthHeight(2*in, 2*in))
	if focused {
		r.Show()
	} else {
		r.Hide()
	}
	r.Refresh()
}

// FocusOn gives the keyboard to a widget that was tapped.
func FocusOn(w fyne.Focusable) {
	if o, ok := w.(fyne.CanvasObject); ok {
		if c := CanvasOf(o); c != nil && c.Focused() != w {
			c.Focus(w)
		}
	}
}

// Leave hands Escape to the window, which hears a key by itself only while nothing has the keyboard. Other keys are left alone.
func Leave(w fyne.Focusable, e *fyne.KeyEvent) {
	o, ok := w.(fyne.CanvasObject)
	if !ok || e.Name != fyne.KeyEscape {
		return
	}
	if c := CanvasOf(o); c != nil && c.OnTypedKey() != nil {
		c.OnTypedKey()(e)
	}
}
