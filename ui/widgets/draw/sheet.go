package draw

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/theme"
)

// Sheet collects the objects of a drawing, the lowest first.
type Sheet struct {
	objects []fyne.CanvasObject
}

// Add lays an object on top.
func (d *Sheet) Add(o fyne.CanvasObject) { d.objects = append(d.objects, o) }

// Line draws a line in a colour of the theme.
func (d *Sheet) Line(from, to fyne.Position, name fyne.ThemeColorName, width float32) {
	l := canvas.NewLine(theme.Color(name))
	l.StrokeWidth = width
	l.Position1, l.Position2 = from, to
	d.Add(l)
}

// Text writes words; along is 0 when they begin at a place, 0.5 when they stand across it, 1 when they end there.
func (d *Sheet) Text(words string, at fyne.Position, along float32, size fyne.ThemeSizeName, name fyne.ThemeColorName) *Text {
	t := NewText(words, size, name)
	t.Place(at, along)
	d.Add(t.Text)
	return t
}

// Rect fills a rectangle and returns it, for a stroke or round corners.
func (d *Sheet) Rect(pos fyne.Position, size fyne.Size, fill color.Color) *canvas.Rectangle {
	r := canvas.NewRectangle(fill)
	r.Move(pos)
	r.Resize(size)
	d.Add(r)
	return r
}

// Circle draws a circle round a place.
func (d *Sheet) Circle(at fyne.Position, radius float32, fill color.Color, stroke fyne.ThemeColorName, width float32) {
	c := canvas.NewCircle(fill)
	c.StrokeColor, c.StrokeWidth = theme.Color(stroke), width
	c.Move(at.SubtractXY(radius, radius))
	c.Resize(fyne.NewSquareSize(2 * radius))
	d.Add(c)
}

// Row draws the ground of a selected or a lit row, with a bar at the edge of the selected one.
func (d *Sheet) Row(pos fyne.Position, size fyne.Size, selected, lit bool) {
	switch {
	case selected:
		d.Rect(pos, size, theme.Color(theme.ColorRowSelected))
		d.Rect(pos, fyne.NewSize(3, size.Height), theme.Color(theme.ColorAccent))
	case lit:
		d.Rect(pos, size, theme.Color(theme.ColorRowHover))
	}
}
