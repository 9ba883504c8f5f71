package plot

import (
	"math"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

var (
	_ fyne.Focusable    = (*Chances)(nil)
	_ fyne.Tappable     = (*Chances)(nil)
	_ desktop.Hoverable = (*Chances)(nil)
)

// ChanceLine is a chance, 0..1, along the values of the x axis.
type ChanceLine struct {
	Name   string
	Points []CurvePoint
	Warns  bool // drawn whole in the warning's tone; else dashed
}

// Post is a value of the x axis with a name.
type Post struct {
	At     float64
	Name   string
	Strong bool
}

// ChancesData is what a plot of chances shows. Points and steps run with rising values.
type ChancesData struct {
	X     Axis
	Lines []ChanceLine
	Posts []Post    // limits, standing on the axis
	Steps []float64 // where the walker may go next, drawn on the first line
	At    float64   // where the walker stands
	Name  string    // what it is: "bid 1,300"
	Words string    // said under the plot
	Empty string    // said when there is no line
}

// Chances shows chances along bids, with a walker on the first line that goes by the sale's own steps: on the keyboard left and right by
// one, page up and down by ten, home and end to the ends, a tap to the place under the pointer. It moves nothing itself: it tells, and is
// given new data.
type Chances struct {
	widget.BaseWidget

	// OnPick is called with the value that is tapped.
	OnPick func(value float64)
	// OnStep is called with how many steps the keyboard moves the walker, to the right when positive.
	OnStep func(steps int)
	// OnEnd is called when the keyboard moves it to the lowest step (-1) or to the limit (+1).
	OnEnd func(way int)

	data    ChancesData
	hovered float64 // a value, NaN for none
	focused bool
}

// NewChances returns an empty plot.
func NewChances() *Chances {
	c := &Chances{hovered: math.NaN()}
	c.ExtendBaseWidget(c)
	return c
}

// SetData shows the data.
func (c *Chances) SetData(d ChancesData) {
	c.data = d
	c.Refresh()
}

// Caption returns the line under the plot.
func (c *Chances) Caption() string {
	switch {
	case len(c.data.Lines) == 0:
		return c.data.Empty
	case !math.IsNaN(c.hovered):
		return c.words(roundTo(c.hovered, 3))
	}
	return c.data.Words
}

// words says every chance at a value.
func (c *Chances) words(x float64) string {
	out := c.data.X.write(x)
	for i, l := range c.data.Lines {
		out += map[bool]string{true: ": ", false: ", "}[i == 0] + l.Name + " " + percent(valueOf(l.Points, x))
	}
	return out
}

// valueOf returns the height of a line at x, that of its end beyond it.
func valueOf(points []CurvePoint, x float64) float64 {
	before := points[0]
	for _, p := range points {
		if p.X >= x {
			if p.X == before.X {
				return p.Y
			}
			return before.Y + (p.Y-before.Y)*max(x-before.X, 0)/(p.X-before.X)
		}
		before = p
	}
	return before.Y
}

// roundTo rounds to so many figures, as a place under the pointer is no more exact.
func roundTo(x float64, figures int) float64 {
	if x == 0 {
		return 0
	}
	unit := math.Pow(10, math.Floor(math.Log10(math.Abs(x)))-float64(figures-1))
	return math.Round(x/max(unit, 1)) * max(unit, 1)
}

// percent writes a share with one decimal below a tenth.
func percent(x float64) string {
	digits := 0
	if x < 0.0995 {
		digits = 1
	}
	return strconv.FormatFloat(100*x, 'f', digits, 64) + " %"
}

// Facts returns where the walker stands, the limits, and where the chances reach a tenth, a half and nine tenths, in words.
func (c *Chances) Facts() []string {
	if len(c.data.Lines) == 0 {
		return []string{c.data.Empty}
	}
	facts := []string{c.data.Name + ": " + c.words(c.data.At), c.data.Words}
	for _, p := range c.data.Posts {
		facts = append(facts, p.Name+" at "+c.data.X.write(p.At))
	}
	for _, l := range c.data.Lines {
		for _, share := range []float64{0.1, 0.5, 0.9} {
			for _, p := range l.Points {
				if p.Y >= share {
					facts = append(facts, l.Name+" "+percent(share)+" from "+c.data.X.write(p.X))
					break
				}
			}
		}
	}
	return facts
}

// Tapped goes to the place under the pointer and takes the keyboard.
func (c *Chances) Tapped(e *fyne.PointEvent) {
	draw.FocusOn(c)
	if len(c.data.Lines) > 0 && c.OnPick != nil {
		f := c.frame()
		c.OnPick(min(max(f.valueAt(e.Position.X), f.x.low), f.x.high))
	}
}

// TypedKey walks.
func (c *Chances) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(c, e)
	const many = 10
	steps := map[fyne.KeyName]int{fyne.KeyRight: 1, fyne.KeyUp: 1, fyne.KeyLeft: -1, fyne.KeyDown: -1, fyne.KeyPageUp: many,
		fyne.KeyPageDown: -many}
	ends := map[fyne.KeyName]int{fyne.KeyHome: -1, fyne.KeyEnd: 1}
	if n, ok := steps[e.Name]; ok && c.OnStep != nil {
		c.OnStep(n)
	}
	if way, ok := ends[e.Name]; ok && c.OnEnd != nil {
		c.OnEnd(way)
	}
}

// TypedRune does nothing.
func (c *Chances) TypedRune(rune) {}

// FocusGained shows the focus ring.
func (c *Chances) FocusGained() { c.focused = true; c.Refresh(); draw.Reveal(c) }

// FocusLost hides the focus ring.
func (c *Chances) FocusLost() { c.focused = false; c.Refresh() }

// MouseIn reads the plot under the pointer.
func (c *Chances) MouseIn(e *desktop.MouseEvent) { c.MouseMoved(e) }

// MouseMoved reads the plot under the pointer.
func (c *Chances) MouseMoved(e *desktop.MouseEvent) {
	f := c.frame()
	c.hovered = math.NaN()
	if x := f.valueAt(e.Position.X); x >= f.x.low && x <= f.x.high {
		c.hovered = x
	}
	c.Refresh()
}

// MouseOut goes back to the words of the walker.
func (c *Chances) MouseOut() { c.hovered = math.NaN(); c.Refresh() }

// CreateRenderer returns the renderer.
func (c *Chances) CreateRenderer() fyne.WidgetRenderer {
	r := rendered(c, func() bool { return c.focused }, c.draw)
	r.Least = func() fyne.Size { return fyne.NewSize(320*theme.Scale(), 150*theme.Scale()) }
	return r
}
