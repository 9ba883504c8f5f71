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
	_ fyne.Focusable     = (*BreakEven)(nil)
	_ fyne.Tappable      = (*BreakEven)(nil)
	_ fyne.Draggable     = (*BreakEven)(nil)
	_ desktop.Hoverable  = (*BreakEven)(nil)
	_ desktop.Cursorable = (*BreakEven)(nil)
)

// Slice is a range of values with the chance that the value lies in it.
type Slice struct{ From, To, Chance float64 }

// Line is an upright line of a chart.
type Line struct {
	At   float64
	Name string
}

// BreakEvenData is what a break-even chart shows. Slices lie side by side with rising values.
type BreakEvenData struct {
	X      Axis
	Slices []Slice
	Bid    Line   // what is to be paid; left of it lies the loss
	Limit  *Line  // a second line that stays; nil: none
	Loss   string // what lies left of the line, in words: "loss 12 %"
	Gain   string
	Words  string                            // said under the chart
	Hover  func(value, below float64) string // said of a value under the pointer, with the chance below it; nil: that alone
	Empty  string                            // said when there is no slice
}

// BreakEven shows how much a lot can bear, as chances over money, with the line of a bid: what lies left of it loses. The line is
// dragged; on the keyboard left and right walk it by a step, page up and down by ten, home and end to the ends. The chart moves
// nothing itself: it tells, and is given new data.
type BreakEven struct {
	widget.BaseWidget

	// OnDrag is called with the value under the pointer while the line is dragged, and on a tap.
	OnDrag func(value float64)
	// OnStep is called with how many steps the keyboard moves the line, to the right when positive.
	OnStep func(steps int)
	// OnEnd is called when the keyboard moves the line to the lowest step (-1) or to the limit (+1).
	OnEnd func(way int)

	data    BreakEvenData
	hovered float64 // a value, NaN for none
	focused bool
}

// NewBreakEven returns an empty chart.
func NewBreakEven() *BreakEven {
	b := &BreakEven{hovered: math.NaN()}
	b.ExtendBaseWidget(b)
	return b
}

// SetData shows the data.
func (b *BreakEven) SetData(d BreakEvenData) {
	b.data = d
	b.Refresh()
}

// Below returns the chance that the value lies below x, of what the slices hold.
func (b *BreakEven) Below(x float64) float64 {
	sum := 0.0
	for _, s := range b.data.Slices {
		sum += s.Chance * share(s, x)
	}
	return sum
}

// share returns how much of a slice lies below x, 0..1.
func share(s Slice, x float64) float64 {
	return min(max((x-s.From)/(s.To-s.From), 0), 1)
}

// Caption returns the line under the chart.
func (b *BreakEven) Caption() string {
	switch {
	case len(b.data.Slices) == 0:
		return b.data.Empty
	case !math.IsNaN(b.hovered):
		return b.words(b.hovered)
	}
	return b.data.Words
}

func (b *BreakEven) words(x float64) string {
	const figures = 3
	x = roundTo(x, figures)
	if b.data.Hover != nil {
		return b.data.Hover(x, b.Below(x))
	}
	return percent(b.Below(x)) + " lie below " + b.data.X.write(x)
}

// roundTo rounds to so many figures, as a place under the pointer is no more exact.
func roundTo(x float64, figures int) float64 {
	if x == 0 {
		return 0
	}
	unit := math.Pow(10, math.Floor(math.Log10(math.Abs(x)))-float64(figures-1))
	return math.Round(x/max(unit, 1)) * max(unit, 1)
}

// Facts returns the line, what lies on its sides, and the tenths of the chances in words.
func (b *BreakEven) Facts() []string {
	if len(b.data.Slices) == 0 {
		return []string{b.data.Empty}
	}
	facts := []string{b.data.Bid.Name + ": " + b.data.Loss + ", " + b.data.Gain, b.data.Words}
	if l := b.data.Limit; l != nil {
		facts = append(facts, l.Name+" at "+b.data.X.write(l.At))
	}
	for _, tenth := range []float64{0.1, 0.5, 0.9} {
		facts = append(facts, percent(tenth)+" lie below "+b.data.X.write(math.Round(b.at(tenth))))
	}
	return facts
}

// at returns the value below which a share of the chances lies.
func (b *BreakEven) at(want float64) float64 {
	sum := 0.0
	for _, s := range b.data.Slices {
		if s.Chance > 0 && sum+s.Chance >= want {
			return s.From + (want-sum)/s.Chance*(s.To-s.From)
		}
		sum += s.Chance
	}
	return b.data.Slices[len(b.data.Slices)-1].To
}

// Tapped moves the line under the pointer and takes the keyboard.
func (b *BreakEven) Tapped(e *fyne.PointEvent) {
	draw.FocusOn(b)
	b.drag(e.Position.X)
}

// Dragged moves the line with the pointer.
func (b *BreakEven) Dragged(e *fyne.DragEvent) { b.drag(e.Position.X) }

// DragEnd leaves the line where it is.
func (b *BreakEven) DragEnd() {}

func (b *BreakEven) drag(px float32) {
	if len(b.data.Slices) > 0 && b.OnDrag != nil {
		f := b.frame()
		b.OnDrag(min(max(f.valueAt(px), f.x.low), f.x.high))
	}
}

// TypedKey walks the line.
func (b *BreakEven) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(b, e)
	const many = 10
	steps := map[fyne.KeyName]int{fyne.KeyRight: 1, fyne.KeyUp: 1, fyne.KeyLeft: -1, fyne.KeyDown: -1, fyne.KeyPageUp: many,
		fyne.KeyPageDown: -many}
	ends := map[fyne.KeyName]int{fyne.KeyHome: -1, fyne.KeyEnd: 1}
	if n, ok := steps[e.Name]; ok && b.OnStep != nil {
		b.OnStep(n)
	}
	if way, ok := ends[e.Name]; ok && b.OnEnd != nil {
		b.OnEnd(way)
	}
}

// TypedRune does nothing.
func (b *BreakEven) TypedRune(rune) {}

// FocusGained shows the focus ring.
func (b *BreakEven) FocusGained() { b.focused = true; b.Refresh() }

// FocusLost hides the focus ring.
func (b *BreakEven) FocusLost() { b.focused = false; b.Refresh() }

// MouseIn reads the chart under the pointer.
func (b *BreakEven) MouseIn(e *desktop.MouseEvent) { b.MouseMoved(e) }

// MouseMoved reads the chart under the pointer.
func (b *BreakEven) MouseMoved(e *desktop.MouseEvent) {
	f := b.frame()
	b.hovered = math.NaN()
	if x := f.valueAt(e.Position.X); x >= f.x.low && x <= f.x.high {
		b.hovered = x
	}
	b.Refresh()
}

// MouseOut goes back to the words of the line.
func (b *BreakEven) MouseOut() { b.hovered = math.NaN(); b.Refresh() }

// Cursor says that the line moves sideways.
func (b *BreakEven) Cursor() desktop.Cursor { return desktop.HResizeCursor }

// CreateRenderer returns the renderer.
func (b *BreakEven) CreateRenderer() fyne.WidgetRenderer {
	r := rendered(b, func() bool { return b.focused }, b.draw)
	r.Least = func() fyne.Size { return fyne.NewSize(320*theme.Scale(), 150*theme.Scale()) }
	return r
}
