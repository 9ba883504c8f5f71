package plot

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"walkline/ui/theme"
)

var (
	_ fyne.Focusable    = (*Histogram)(nil)
	_ fyne.Tappable     = (*Histogram)(nil)
	_ desktop.Hoverable = (*Histogram)(nil)
)

// HistogramBin is one bar: a range of values with how many lie in it.
type HistogramBin struct {
	From, To float64
	Count    int
	Words    string // the bin in a sentence
}

// HistogramData is what a histogram shows. Bins lie side by side, rising.
type HistogramData struct {
	X, Y  Axis
	Bins  []HistogramBin
	Even  float64 // the count that each would have if all were alike, drawn as a dashed line; 0: none
	Name  string  // what that line is: "as stated"
	Empty string  // said when nothing is counted
}

// Histogram shows how often values fall into each of several ranges.
type Histogram struct {
	stops
	data HistogramData
}

// NewHistogram returns an empty histogram.
func NewHistogram() *Histogram {
	h := &Histogram{}
	h.stops = newStops(h, func() int { return len(h.data.Bins) }, h.at)
	h.ExtendBaseWidget(h)
	return h
}

// SetData shows the data.
func (h *Histogram) SetData(d HistogramData) {
	h.data = d
	h.reset()
}

// counted returns how many values there are in all.
func (h *Histogram) counted() int {
	all := 0
	for _, b := range h.data.Bins {
		all += b.Count
	}
	return all
}

// Caption returns the line under the plot.
func (h *Histogram) Caption() string {
	switch i := h.on(); {
	case h.counted() == 0:
		return h.data.Empty
	case i >= 0:
		return h.data.Bins[i].Words
	}
	return h.data.Bins[0].Words
}

// Facts returns every bin in words.
func (h *Histogram) Facts() []string {
	if h.counted() == 0 {
		return []string{h.data.Empty}
	}
	facts := make([]string, len(h.data.Bins))
	for i, b := range h.data.Bins {
		facts[i] = b.Words
	}
	return facts
}

func (h *Histogram) frame() frame {
	x, y := span{0, 1}, span{0, max(h.data.Even, 1)}
	for i, b := range h.data.Bins {
		if i == 0 {
			x = span{b.From, b.To}
		}
		x.take(b.From)
		x.take(b.To)
		y.take(float64(b.Count))
	}
	return newFrame(h.Size(), 1, scale{x, h.data.X}, scale{y, h.data.Y})
}

// at returns the bin at a place, -1 for none.
func (h *Histogram) at(pos fyne.Position) int {
	x := h.frame().valueAt(pos.X)
	for i, b := range h.data.Bins {
		if x >= b.From && x < b.To {
			return i
		}
	}
	return -1
}

// draw draws the plot for its size.
func (h *Histogram) draw(d *drawing, size fyne.Size) {
	f := h.frame()
	d.axes(f, h.data.X, h.data.Y)
	for i, b := range h.data.Bins {
		color := theme.ColorPoint
		if i == h.on() {
			color = theme.ColorAccent
		}
		left, right := f.at(b.From, float64(b.Count)), f.at(b.To, 0)
		if b.Count > 0 {
			d.Rect(left.AddXY(2, 0), fyne.NewSize(right.X-left.X-4, right.Y-left.Y), theme.Color(color))
		} else if i == h.on() {
			d.Line(left.AddXY(2, 0), fyne.NewPos(right.X-2, right.Y), theme.ColorAccent, 3)
		}
	}
	if h.data.Even > 0 {
		d.dashed(f.at(f.x.low, h.data.Even), f.at(f.x.high, h.data.Even), theme.ColorAccent)
		d.legend(f.pos.X+f.size.Width, [][]mark{{mark{func(d *drawing, at fyne.Position) {
			d.dashed(at.SubtractXY(7, 0), at.AddXY(7, 0), theme.ColorAccent)
		}, h.data.Name}}})
	}
	d.caption(h.Caption(), size)
}

// CreateRenderer returns the renderer.
func (h *Histogram) CreateRenderer() fyne.WidgetRenderer {
	return rendered(h, func() bool { return h.focused }, h.draw)
}
