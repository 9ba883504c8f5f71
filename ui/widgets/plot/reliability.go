package plot

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"walkline/ui/theme"
)

var (
	_ fyne.Focusable    = (*Reliability)(nil)
	_ fyne.Tappable     = (*Reliability)(nil)
	_ desktop.Hoverable = (*Reliability)(nil)
)

// ReliabilityBin is some forecasts of like chance: what was said, what came, and the range that so few leave.
type ReliabilityBin struct {
	Said, Came, Low, High float64 // 0..1
	N                     int
	Words                 string // the bin in a sentence
}

// ReliabilityData is what a reliability diagram shows. Bins run with rising Said.
type ReliabilityData struct {
	X, Y  Axis
	Bins  []ReliabilityBin
	Empty string // said when there is no bin
}

// Reliability shows stated chances against what came of them: on the diagonal they are right. The bar through a point is the
// range that its count leaves; its size grows with the count.
type Reliability struct {
	stops
	data ReliabilityData
}

// NewReliability returns an empty diagram.
func NewReliability() *Reliability {
	r := &Reliability{}
	r.stops = newStops(r, func() int { return len(r.data.Bins) }, r.at)
	r.ExtendBaseWidget(r)
	return r
}

// SetData shows the data.
func (r *Reliability) SetData(d ReliabilityData) {
	r.data = d
	r.reset()
}

// Caption returns the line under the plot.
func (r *Reliability) Caption() string {
	switch i := r.on(); {
	case len(r.data.Bins) == 0:
		return r.data.Empty
	case i >= 0:
		return r.data.Bins[i].Words
	}
	return r.data.Bins[0].Words
}

// Facts returns every bin in words.
func (r *Reliability) Facts() []string {
	if len(r.data.Bins) == 0 {
		return []string{r.data.Empty}
	}
	facts := make([]string, len(r.data.Bins))
	for i, b := range r.data.Bins {
		facts[i] = b.Words
	}
	return facts
}

func (r *Reliability) frame() frame {
	return newFrame(r.Size(), 1, scale{span{0, 1}, r.data.X}, scale{span{0, 1}, r.data.Y})
}

// pointReach is how near the pointer must be to a point.
const pointReach = 14

// at returns the bin at a place, -1 for none.
func (r *Reliability) at(pos fyne.Position) int {
	f, best, near := r.frame(), -1, float64(pointReach)
	for i, b := range r.data.Bins {
		p := f.at(b.Said, b.Came)
		if d := math.Hypot(float64(p.X-pos.X), float64(p.Y-pos.Y)); d < near {
			best, near = i, d
		}
	}
	return best
}

// draw draws the plot for its size.
func (r *Reliability) draw(d *drawing, size fyne.Size) {
	f := r.frame()
	d.axes(f, r.data.X, r.data.Y)
	d.dashed(f.at(0, 0), f.at(1, 1), theme.ColorMuted)
	most := 1
	for _, b := range r.data.Bins {
		most = max(most, b.N)
	}
	for i, b := range r.data.Bins {
		d.Line(f.at(b.Said, b.Low), f.at(b.Said, b.High), theme.ColorPoint, 1.5)
		d.point(f.at(b.Said, b.Came), pointRadius(float64(b.N)/float64(most)), ScatterPoint{Used: true})
		if i == r.on() {
			d.halo(f.at(b.Said, b.Came), pointRadius(float64(b.N)/float64(most))+4)
		}
	}
	d.legend(f.pos.X+f.size.Width, [][]mark{{mark{func(d *drawing, at fyne.Position) {
		d.dashed(at.SubtractXY(7, 0), at.AddXY(7, 0), theme.ColorMuted)
	}, "as said"}}})
	d.caption(r.Caption(), size)
}

// dashed draws a dashed line between two places.
func (d *drawing) dashed(from, to fyne.Position, color fyne.ThemeColorName) {
	const dash, gap = 5, 4
	across, down := float64(to.X-from.X), float64(to.Y-from.Y)
	length := math.Hypot(across, down)
	at := func(along float64) fyne.Position {
		share := float32(min(along, length) / max(length, 1))
		return from.AddXY(share*(to.X-from.X), share*(to.Y-from.Y))
	}
	for along := 0.0; along < length; along += dash + gap {
		d.Line(at(along), at(along+dash), color, 1.5)
	}
}

// CreateRenderer returns the renderer.
func (r *Reliability) CreateRenderer() fyne.WidgetRenderer {
	return rendered(r, func() bool { return r.focused }, r.draw)
}
