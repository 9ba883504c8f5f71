package plot

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

var (
	_ fyne.Focusable    = (*Curve)(nil)
	_ fyne.Tappable     = (*Curve)(nil)
	_ desktop.Hoverable = (*Curve)(nil)
)

// CurvePoint is one value of a curve.
type CurvePoint struct{ X, Y float64 }

// CurveData is what a curve shows. Points run with rising X.
type CurveData struct {
	X, Y   Axis
	Points []CurvePoint
	Steps  bool     // flat from each point to the next, as fees are; else straight lines between points
	Mark   *float64 // an x to point out; nil: none
	Name   string   // what the mark is: "walk-away bid"
	Empty  string   // said when there is no point
}

// Curve shows one value against another, such as the fee against the hammer price. The pointer reads any place; on the keyboard left
// and right walk the points.
type Curve struct {
	widget.BaseWidget

	data     CurveData
	selected int     // a point, -1 for none
	hovered  float64 // an x, NaN for none
	focused  bool
}

// NewCurve returns an empty plot.
func NewCurve() *Curve {
	c := &Curve{selected: -1, hovered: math.NaN()}
	c.ExtendBaseWidget(c)
	return c
}

// SetData shows the data.
func (c *Curve) SetData(d CurveData) {
	c.data = d
	c.selected = min(c.selected, len(d.Points)-1)
	c.Refresh()
}

// At returns the curve's value at x, and whether x lies on the curve.
func (c *Curve) At(x float64) (float64, bool) {
	p := c.data.Points
	if len(p) == 0 || !(x >= p[0].X && x <= p[len(p)-1].X) { // NaN lies nowhere
		return 0, false
	}
	i := 0
	for i+1 < len(p) && p[i+1].X <= x {
		i++
	}
	if c.data.Steps || i+1 == len(p) {
		return p[i].Y, true
	}
	share := (x - p[i].X) / (p[i+1].X - p[i].X)
	return p[i].Y + share*(p[i+1].Y-p[i].Y), true
}

func (c *Curve) words(x float64) string {
	y, ok := c.At(x)
	if !ok {
		return ""
	}
	return c.data.X.Title + " " + c.data.X.write(x) + ": " + c.data.Y.Title + " " + c.data.Y.write(y)
}

// Caption returns the line under the plot.
func (c *Curve) Caption() string {
	switch {
	case len(c.data.Points) == 0:
		return c.data.Empty
	case !math.IsNaN(c.hovered):
		return c.words(c.hovered)
	case c.selected >= 0:
		return c.words(c.data.Points[c.selected].X)
	case c.data.Mark != nil && c.data.Name != "":
		return c.data.Name + ", " + c.words(*c.data.Mark)
	case c.data.Mark != nil:
		return c.words(*c.data.Mark)
	}
	return c.words(c.data.Points[0].X)
}

// Facts returns every point in words.
func (c *Curve) Facts() []string {
	if len(c.data.Points) == 0 {
		return []string{c.data.Empty}
	}
	var facts []string
	for _, p := range c.data.Points {
		facts = append(facts, c.words(p.X))
	}
	return facts
}

func (c *Curve) frame() frame {
	x, y := span{math.Inf(1), math.Inf(-1)}, span{0, 0}
	for _, p := range c.data.Points {
		x.take(p.X)
		y.take(p.Y)
	}
	if len(c.data.Points) == 0 {
		x = span{0, 1}
	}
	return newFrame(c.Size(), 1, scale{x, c.data.X}, scale{y, c.data.Y})
}

// Tapped takes the keyboard.
func (c *Curve) Tapped(*fyne.PointEvent) { draw.FocusOn(c) }

// TypedKey walks the points.
func (c *Curve) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(c, e)
	last := len(c.data.Points) - 1
	to := walked(e.Name, c.selected, last)
	if to != c.selected && to <= last {
		c.selected = to
		c.Refresh()
	}
}

// TypedRune does nothing.
func (c *Curve) TypedRune(rune) {}

// FocusGained shows the focus ring, in sight.
func (c *Curve) FocusGained() { c.focused = true; c.Refresh(); draw.Reveal(c) }

// FocusLost hides the focus ring.
func (c *Curve) FocusLost() { c.focused = false; c.Refresh() }

// MouseIn reads the curve under the pointer.
func (c *Curve) MouseIn(e *desktop.MouseEvent) { c.MouseMoved(e) }

// MouseMoved reads the curve under the pointer.
func (c *Curve) MouseMoved(e *desktop.MouseEvent) {
	x := c.frame().valueAt(e.Position.X)
	if _, ok := c.At(x); !ok {
		x = math.NaN()
	}
	c.hovered = x
	c.Refresh()
}

// MouseOut goes back to the selected point.
func (c *Curve) MouseOut() { c.hovered = math.NaN(); c.Refresh() }

// draw draws the plot for its size.
func (c *Curve) draw(d *drawing, size fyne.Size) {
	f := c.frame()
	d.axes(f, c.data.X, c.data.Y)
	for i := 1; i < len(c.data.Points); i++ {
		a, b := c.data.Points[i-1], c.data.Points[i]
		if !c.data.Steps {
			d.Line(f.at(a.X, a.Y), f.at(b.X, b.Y), theme.ColorPoint, 2)
			continue
		}
		d.Line(f.at(a.X, a.Y), f.at(b.X, a.Y), theme.ColorPoint, 2)
		d.Line(f.at(b.X, a.Y), f.at(b.X, b.Y), theme.ColorPoint, 2)
	}
	if c.data.Mark != nil {
		c.mark(d, f, *c.data.Mark)
	}
	c.cursor(d, f)
	d.caption(c.Caption(), size)
}

// mark draws a line at an x with its name above.
func (c *Curve) mark(d *drawing, f frame, x float64) {
	if _, ok := c.At(x); !ok {
		return
	}
	top := f.at(x, f.y.high)
	d.Line(top, f.at(x, f.y.low), theme.ColorAccent, 1.5)
	at := fyne.NewPos(top.X, 0)
	along := float32(0.5)
	if half := draw.TextWidth(c.data.Name, theme.SizeSmall, fyne.TextStyle{}) / 2; at.X+half > f.pos.X+f.size.Width {
		along = 1
	}
	d.Text(c.data.Name, at, along, theme.SizeSmall, theme.ColorAccent)
}

// cursor marks the place that is read.
func (c *Curve) cursor(d *drawing, f frame) {
	x := c.hovered
	if math.IsNaN(x) && c.selected >= 0 {
		x = c.data.Points[c.selected].X
	}
	if y, ok := c.At(x); ok {
		d.halo(f.at(x, y), 5)
	}
}

// CreateRenderer returns the renderer.
func (c *Curve) CreateRenderer() fyne.WidgetRenderer {
	return rendered(c, func() bool { return c.focused }, c.draw)
}
