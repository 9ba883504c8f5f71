package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/theme"
)

// Axis is one axis of a plot: its title and how its values are written.
type Axis struct {
	Title  string
	Format func(float64) string
}

func (a Axis) write(x float64) string {
	if a.Format == nil {
		return Grouped(rounded(Known(x).Value, 2))
	}
	return a.Format(x)
}

// span is the range of one axis.
type span struct{ low, high float64 }

// take widens the span to hold x.
func (s *span) take(x float64) { s.low, s.high = min(s.low, x), max(s.high, x) }

// frame maps values to places inside the plot's area.
type frame struct {
	pos            fyne.Position
	size           fyne.Size
	x, y           span
	xTicks, yTicks []float64
}

func (f frame) at(x, y float64) fyne.Position {
	return f.pos.AddXY(f.size.Width*float32((x-f.x.low)/(f.x.high-f.x.low)), f.size.Height*float32(1-(y-f.y.low)/(f.y.high-f.y.low)))
}

// valueAt returns the x value under a place.
func (f frame) valueAt(px float32) float64 {
	return f.x.low + float64((px-f.pos.X)/f.size.Width)*(f.x.high-f.x.low)
}

const (
	tickLength      float32 = 4
	pointsPerTick   float32 = 56 // vertical room that a y tick wants
	widthPerTick    float32 = 110
	plotMinimumSide float32 = 120
)

// newFrame lays a plot out in a size: the y title and a legend above, ticks left and below, the x title and a caption under them.
func newFrame(size fyne.Size, x, y span, xAxis, yAxis Axis) frame {
	small := lineHeight(theme.SizeSmall)
	top := small + theme.Space
	bottom := 2*small + tickLength + theme.Half + lineHeight(theme.SizeBody) + theme.Space
	f := frame{pos: fyne.NewPos(0, top)}
	f.size.Height = max(size.Height-top-bottom, plotMinimumSide)
	f.yTicks = niceTicks(y.low, y.high, int(f.size.Height/pointsPerTick))
	widest := float32(0)
	for _, t := range f.yTicks {
		widest = max(widest, textWidth(yAxis.write(t), theme.SizeSmall, fyne.TextStyle{}))
	}
	f.pos.X = widest + tickLength + theme.Half
	f.size.Width = max(size.Width-f.pos.X-theme.Broad*theme.Scale(), plotMinimumSide)
	f.xTicks = niceTicks(x.low, x.high, int(f.size.Width/(widthPerTick*theme.Scale())))
	f.x = span{f.xTicks[0], f.xTicks[len(f.xTicks)-1]}
	f.y = span{f.yTicks[0], f.yTicks[len(f.yTicks)-1]}
	return f
}

// drawing collects the objects of a plot.
type drawing struct {
	objects []fyne.CanvasObject
}

func (d *drawing) add(o fyne.CanvasObject) { d.objects = append(d.objects, o) }

func (d *drawing) line(from, to fyne.Position, name fyne.ThemeColorName, width float32) {
	l := canvas.NewLine(theme.Color(name))
	l.StrokeWidth = width
	l.Position1, l.Position2 = from, to
	d.add(l)
}

func (d *drawing) text(words string, at fyne.Position, along float32, size fyne.ThemeSizeName, name fyne.ThemeColorName) *text {
	t := newText(words, size, name)
	t.place(at, along)
	d.add(t.Text)
	return t
}

func (d *drawing) rect(pos fyne.Position, size fyne.Size, fill color.Color) *canvas.Rectangle {
	r := canvas.NewRectangle(fill)
	r.Move(pos)
	r.Resize(size)
	d.add(r)
	return r
}

// axes draws the grid, the ticks and the titles.
func (d *drawing) axes(f frame, xAxis, yAxis Axis) {
	half := lineHeight(theme.SizeSmall) / 2
	bottom := f.pos.Y + f.size.Height
	for _, t := range f.yTicks {
		at := f.at(f.x.low, t)
		d.line(at, at.AddXY(f.size.Width, 0), theme.ColorGridLine, 1)
		d.text(yAxis.write(t), at.SubtractXY(tickLength+theme.Half, half), 1, theme.SizeSmall, theme.ColorMuted)
	}
	for _, t := range f.xTicks {
		at := f.at(t, f.y.low)
		d.line(at, at.AddXY(0, tickLength), theme.ColorMuted, 1)
		d.text(xAxis.write(t), fyne.NewPos(at.X, bottom+tickLength), 0.5, theme.SizeSmall, theme.ColorMuted)
	}
	d.line(fyne.NewPos(f.pos.X, bottom), fyne.NewPos(f.pos.X+f.size.Width, bottom), theme.ColorMuted, 1)
	d.text(yAxis.Title, fyne.NewPos(0, 0), 0, theme.SizeSmall, theme.ColorMuted)
	d.text(xAxis.Title, fyne.NewPos(f.pos.X+f.size.Width, bottom+tickLength+2*half), 1, theme.SizeSmall, theme.ColorMuted)
}

// caption draws the line under a plot.
func (d *drawing) caption(words string, size fyne.Size) {
	d.text(words, fyne.NewPos(0, size.Height-lineHeight(theme.SizeBody)), 0, theme.SizeBody, colorForeground)
}

// mark is one entry of a legend: a shape drawn round a place, and its word.
type mark struct {
	draw  func(d *drawing, at fyne.Position)
	words string
}

// legend draws marks in the line above the plot, from the right.
func (d *drawing) legend(right float32, marks ...mark) {
	half := lineHeight(theme.SizeSmall) / 2
	x := right
	for i := len(marks) - 1; i >= 0; i-- {
		x -= textWidth(marks[i].words, theme.SizeSmall, fyne.TextStyle{})
		d.text(marks[i].words, fyne.NewPos(x, 0), 0, theme.SizeSmall, theme.ColorMuted)
		x -= theme.Space + theme.Half
		marks[i].draw(d, fyne.NewPos(x, half))
		x -= theme.Wide
	}
}
