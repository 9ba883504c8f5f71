package plot

import (
	"math"
	"strconv"

	"fyne.io/fyne/v2"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
	"walkline/valuation/money"
)

// Axis is one axis of a plot: its title and how its values are written.
type Axis struct {
	Title  string
	Format func(float64) string // nil: digits in groups of three
}

func (a Axis) write(x float64) string {
	if a.Format == nil {
		return grouped(x)
	}
	return a.Format(x)
}

// grouped writes a number with commas between thousands.
func grouped(x float64) string {
	const most = 1 << 53
	if x == math.Trunc(x) && math.Abs(x) < most {
		return money.Currency{}.Group(money.Amount(x)) // a currency without minor digits
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// span is the range of one axis.
type span struct{ low, high float64 }

// take widens the span to hold x.
func (s *span) take(x float64) { s.low, s.high = min(s.low, x), max(s.high, x) }

// scale is an axis with its range.
type scale struct {
	span
	Axis
}

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

// newFrame lays a plot out in a size: the y title and a legend of so many lines above, ticks left and below, the x title and a caption
// under them.
func newFrame(size fyne.Size, legend int, x, y scale) frame {
	small := draw.LineHeight(theme.SizeSmall)
	top := float32(max(legend, 1))*small + theme.Space
	bottom := 2*small + tickLength + theme.Half + draw.LineHeight(theme.SizeBody) + theme.Space
	f := frame{pos: fyne.NewPos(0, top)}
	f.size.Height = max(size.Height-top-bottom, plotMinimumSide)
	f.yTicks = niceTicks(y.low, y.high, int(f.size.Height/pointsPerTick))
	widest := float32(0)
	for _, t := range f.yTicks {
		widest = max(widest, draw.TextWidth(y.write(t), theme.SizeSmall, fyne.TextStyle{}))
	}
	f.pos.X = widest + tickLength + theme.Half
	f.size.Width = max(size.Width-f.pos.X-theme.Broad*theme.Scale(), plotMinimumSide)
	f.xTicks = niceTicks(x.low, x.high, int(f.size.Width/(widthPerTick*theme.Scale())))
	f.x = span{f.xTicks[0], f.xTicks[len(f.xTicks)-1]}
	f.y = span{f.yTicks[0], f.yTicks[len(f.yTicks)-1]}
	return f
}

// drawing is a sheet on which a plot is drawn.
type drawing struct{ *draw.Sheet }

// axes draws the grid, the ticks and the titles.
func (d *drawing) axes(f frame, xAxis, yAxis Axis) {
	half := draw.LineHeight(theme.SizeSmall) / 2
	bottom := f.pos.Y + f.size.Height
	for _, t := range f.yTicks {
		at := f.at(f.x.low, t)
		d.Line(at, at.AddXY(f.size.Width, 0), theme.ColorGridLine, 1)
		d.Text(yAxis.write(t), at.SubtractXY(tickLength+theme.Half, half), 1, theme.SizeSmall, theme.ColorMuted)
	}
	for _, t := range f.xTicks {
		at := f.at(t, f.y.low)
		d.Line(at, at.AddXY(0, tickLength), theme.ColorMuted, 1)
		d.Text(xAxis.write(t), fyne.NewPos(at.X, bottom+tickLength), 0.5, theme.SizeSmall, theme.ColorMuted)
	}
	d.Line(fyne.NewPos(f.pos.X, bottom), fyne.NewPos(f.pos.X+f.size.Width, bottom), theme.ColorMuted, 1)
	d.Text(yAxis.Title, fyne.NewPos(0, 0), 0, theme.SizeSmall, theme.ColorMuted)
	d.Text(xAxis.Title, fyne.NewPos(f.pos.X+f.size.Width, bottom+tickLength+2*half), 1, theme.SizeSmall, theme.ColorMuted)
}

// caption draws the line under a plot.
func (d *drawing) caption(words string, size fyne.Size) {
	d.Text(words, fyne.NewPos(0, size.Height-draw.LineHeight(theme.SizeBody)), 0, theme.SizeBody, draw.Foreground)
}

// mark is one entry of a legend: a shape drawn round a place, and its word.
type mark struct {
	draw  func(d *drawing, at fyne.Position)
	words string
}

// width is the room that the mark takes in a legend.
func (m mark) width() float32 {
	return draw.TextWidth(m.words, theme.SizeSmall, fyne.TextStyle{}) + theme.Space + theme.Half + theme.Wide
}

// legendLines breaks marks into lines that fit beside a title of the y axis.
func legendLines(marks []mark, title string, width float32) [][]mark {
	width -= draw.TextWidth(title, theme.SizeSmall, fyne.TextStyle{}) + theme.Wide
	var lines [][]mark
	room := float32(0)
	for _, m := range marks {
		if room < m.width() || len(lines) == 0 {
			lines, room = append(lines, nil), width
		}
		lines[len(lines)-1] = append(lines[len(lines)-1], m)
		room -= m.width()
	}
	return lines
}

// legend draws lines of marks above the plot, from the right.
func (d *drawing) legend(right float32, lines [][]mark) {
	height := draw.LineHeight(theme.SizeSmall)
	for row, marks := range lines {
		x, y := right, float32(row)*height
		for i := len(marks) - 1; i >= 0; i-- {
			x -= draw.TextWidth(marks[i].words, theme.SizeSmall, fyne.TextStyle{})
			d.Text(marks[i].words, fyne.NewPos(x, y), 0, theme.SizeSmall, theme.ColorMuted)
			x -= theme.Space + theme.Half
			marks[i].draw(d, fyne.NewPos(x, y+height/2))
			x -= theme.Wide
		}
	}
}

// rendered returns the renderer of a plot.
func rendered(of fyne.Widget, focused func() bool, paint func(*drawing, fyne.Size)) *draw.Renderer {
	return &draw.Renderer{Of: of, Focused: focused, Draw: func(s *draw.Sheet, size fyne.Size) { paint(&drawing{s}, size) },
		Least: func() fyne.Size { return fyne.NewSize(320*theme.Scale(), 240*theme.Scale()) }}
}
