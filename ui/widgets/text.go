package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"walkline/ui/theme"
)

// Fyne's colour names that widgets use, under short names.
const (
	colorBackground = fynetheme.ColorNameBackground
	colorForeground = fynetheme.ColorNameForeground
	colorMenu       = fynetheme.ColorNameMenuBackground
	colorSeparator  = fynetheme.ColorNameSeparator
)

// nrgba returns a colour of the theme of the moment, for pens.
func nrgba(name fyne.ThemeColorName) color.NRGBA {
	return color.NRGBAModel.Convert(theme.Color(name)).(color.NRGBA)
}

// text is a canvas.Text that knows its size and colour by name, so that a refresh brings it up to the theme of the
// moment.
type text struct {
	*canvas.Text
	size  fyne.ThemeSizeName
	color fyne.ThemeColorName
}

func newText(words string, size fyne.ThemeSizeName, color fyne.ThemeColorName) *text {
	t := &text{canvas.NewText(words, theme.Color(color)), size, color}
	t.TextSize = theme.Size(size)
	return t
}

// dress takes size and colour from the theme.
func (t *text) dress() {
	t.TextSize, t.Color = theme.Size(t.size), theme.Color(t.color)
}

// place moves the text and gives it its own size; along is 0 for left of at, 0.5 for centred, 1 for right.
func (t *text) place(at fyne.Position, along float32) {
	size := t.MinSize()
	t.Move(at.SubtractXY(size.Width*along, 0))
	t.Resize(size)
}

// lineHeight is the height of one line of a text size.
func lineHeight(size fyne.ThemeSizeName) float32 {
	return fyne.MeasureText("0", theme.Size(size), fyne.TextStyle{}).Height
}

func textWidth(words string, size fyne.ThemeSizeName, style fyne.TextStyle) float32 {
	return fyne.MeasureText(words, theme.Size(size), style).Width
}

// newFocusRing returns the outline that marks the focused widget.
func newFocusRing() *canvas.Rectangle {
	r := canvas.NewRectangle(color.Transparent)
	r.StrokeWidth, r.CornerRadius = 2, 4
	r.Hide()
	return r
}

// showFocus shows the ring round a size, or hides it.
func showFocus(r *canvas.Rectangle, focused bool, size fyne.Size) {
	r.StrokeColor = theme.Color(theme.ColorAccent)
	const out = 3
	r.Move(fyne.NewPos(-out, -out))
	r.Resize(size.AddWidthHeight(2*out, 2*out))
	if focused {
		r.Show()
	} else {
		r.Hide()
	}
	r.Refresh()
}

// focusOn gives the keyboard to a widget that was tapped.
func focusOn(w fyne.Focusable) {
	if o, ok := w.(fyne.CanvasObject); ok {
		if c := fyne.CurrentApp().Driver().CanvasForObject(o); c != nil && c.Focused() != w {
			c.Focus(w)
		}
	}
}
