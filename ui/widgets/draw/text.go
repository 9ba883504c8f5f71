package draw

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"walkline/ui/theme"
)

// Fyne's colour names that widgets use, under short names.
const (
	Background = fynetheme.ColorNameBackground
	Foreground = fynetheme.ColorNameForeground
	Menu       = fynetheme.ColorNameMenuBackground
	Separator  = fynetheme.ColorNameSeparator
)

// NRGBA returns a colour of the theme of the moment, for pens.
func NRGBA(name fyne.ThemeColorName) color.NRGBA {
	return color.NRGBAModel.Convert(theme.Color(name)).(color.NRGBA)
}

// Text is a canvas.Text that knows its size and colour by name, so that a refresh brings it up to the theme of the
// moment.
type Text struct {
	*canvas.Text
	Role fyne.ThemeSizeName
	Tone fyne.ThemeColorName
}

// NewText returns words in a size and a colour of the theme.
func NewText(words string, size fyne.ThemeSizeName, color fyne.ThemeColorName) *Text {
	t := &Text{canvas.NewText(words, theme.Color(color)), size, color}
	t.TextSize = theme.Size(size)
	return t
}

// Dress takes size and colour from the theme.
func (t *Text) Dress() {
	t.TextSize, t.Color = theme.Size(t.Role), theme.Color(t.Tone)
}

// Place moves the text and gives it its own size; along is 0 for left of at, 0.5 for centred, 1 for right.
func (t *Text) Place(at fyne.Position, along float32) {
	size := t.MinSize()
	t.Move(at.SubtractXY(size.Width*along, 0))
	t.Resize(size)
}

// LineHeight is the height of one line of a text size.
func LineHeight(size fyne.ThemeSizeName) float32 {
	return fyne.MeasureText("0", theme.Size(size), fyne.TextStyle{}).Height
}

// TextWidth is the width of words in a text size and style.
func TextWidth(words string, size fyne.ThemeSizeName, style fyne.TextStyle) float32 {
	return fyne.MeasureText(words, theme.Size(size), style).Width
}

// Shortened cuts words with an ellipsis to a width.
func Shortened(words string, width float32, size fyne.ThemeSizeName, style fyne.TextStyle) string {
	if width <= 0 || TextWidth(words, size, style) <= width {
		return words
	}
	runes := []rune(words)
	low, high := 0, len(runes)
	for low < high {
		middle := (low + high + 1) / 2
		if TextWidth(string(runes[:middle])+"…", size, style) <= width {
			low = middle
		} else {
			high = middle - 1
		}
	}
	return string(runes[:low]) + "…"
}
