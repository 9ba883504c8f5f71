package plot

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets/draw"
)

var (
	_ fyne.Focusable    = (*Scatter)(nil)
	_ fyne.Tappable     = (*Scatter)(nil)
	_ desktop.Hoverable = (*Scatter)(nil)
)

// ScatterPoint is one comparable.
type ScatterPoint struct {
	X, Y    float64
	Weight  float64 // 0..1, the size of the point
	Used    bool    // filled when used, hollow when left out
	Branded bool    // a square for a branded title, else a circle
}

// BandPoint is the fitted price at one x: its 10th, 50th and 90th percentiles.
type BandPoint struct{ X, Low, Middle, High float64 }

// Subject is the vehicle that is valued, with the interval of its price.
type Subject struct {
	BandPoint
	Words string
}

// ScatterData is what a scatter shows. Band runs with rising X.
type ScatterData struct {
	X, Y    Axis
	Points  []ScatterPoint
	Words   func(i int) string // a point in words; nil: none
	Band    []BandPoint
	Subject *Subject // nil: not placed
	Empty   string   // said when there is no point
	Fit     string   // what the band is, in words; empty: the fit of the price
	Thing   string   // what a point is; empty: a comparable
}

// Scatter shows prices against mileage or year. The pointer shows the nearest point in words; on the keyboard left and right walk the
// points by x, Enter opens one.
type Scatter struct {
	widget.BaseWidget

	// OnSelected is called when the user goes to a point, by its index in Points.
	OnSelected func(i int)
	// OnOpen is called on Enter or a second tap on a point.
	OnOpen func(i int)

	data     ScatterData
	order    []int // indices of points by x
	selected int   // index of a point, -1 for none
	hovered  int
	focused  bool
}

// NewScatter returns an empty plot.
func NewScatter() *Scatter {
	s := &Scatter{selected: -1, hovered: -1}
	s.ExtendBaseWidget(s)
	return s
}

// SetData shows the data. The selected point stays when there is still one of its index.
func (s *Scatter) SetData(d ScatterData) {
	s.data = d
	s.order = make([]int, len(d.Points))
	for i := range s.order {
		s.order[i] = i
	}
	slices.SortStableFunc(s.order, func(a, b int) int {
		switch x, y := d.Points[a].X, d.Points[b].X; {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	if s.selected >= len(d.Points) {
		s.selected = -1
	}
	s.hovered = -1
	s.Refresh()
}

// Select goes to a point without calling a handler; -1 for none.
func (s *Scatter) Select(i int) {
	if i >= -1 && i < len(s.data.Points) {
		s.selected = i
		s.Refresh()
	}
}

// Selected returns the index of the selected point, -1 for none.
func (s *Scatter) Selected() int { return s.selected }

// Facts returns the subject and every point in words.
func (s *Scatter) Facts() []string {
	var facts []string
	if s.data.Subject != nil {
		facts = append(facts, s.data.Subject.Words)
	}
	for _, i := range s.order {
		facts = append(facts, s.pointWords(i))
	}
	if facts == nil {
		facts = []string{s.data.Empty}
	}
	return facts
}

func (s *Scatter) pointWords(i int) string {
	p := s.data.Points[i]
	words := s.data.Y.write(p.Y) + " at " + s.data.X.write(p.X)
	if s.data.Words != nil {
		words = s.data.Words(i)
	}
	if !p.Used {
		words += ", left out"
	}
	if p.Branded {
		words += ", branded title"
	}
	return words
}

// Caption returns the line under the plot.
func (s *Scatter) Caption() string {
	switch {
	case s.hovered >= 0:
		return s.pointWords(s.hovered)
	case s.selected >= 0:
		return s.pointWords(s.selected)
	case len(s.data.Points) == 0:
		return s.data.Empty
	case s.data.Subject != nil && s.data.Subject.Words != "":
		return s.data.Subject.Words
	}
	used := 0
	for _, p := range s.data.Points {
		if p.Used {
			used++
		}
	}
	return fmt.Sprintf("%d of %d %ss used", used, len(s.data.Points), cmp.Or(s.data.Thing, "comparable"))
}

// spans returns the ranges that hold everything.
func (s *Scatter) spans() (x, y span) {
	x, y = span{math.Inf(1), math.Inf(-1)}, span{math.Inf(1), math.Inf(-1)}
	for _, p := range s.data.Points {
		x.take(p.X)
		y.take(p.Y)
	}
	band := s.data.Band
	if s.data.Subject != nil {
		band = append(band[:len(band):len(band)], s.data.Subject.BandPoint)
	}
	for _, b := range band {
		x.take(b.X)
		y.take(b.Low)
		y.take(b.High)
	}
	if x.low > x.high {
		return span{0, 1}, span{0, 1}
	}
	return x, y
}

func (s *Scatter) frame() frame {
	x, y := s.spans()
	return newFrame(s.Size(), len(s.legend()), scale{x, s.data.X}, scale{y, s.data.Y})
}

const reach = 18 // points round the pointer in which a point is found

// near returns the index of the point nearest to a place, -1 when none is in reach.
func (s *Scatter) near(at fyne.Position) int {
	f := s.frame()
	best, nearest := -1, float64(reach)
	for i, p := range s.data.Points {
		q := f.at(p.X, p.Y)
		if d := math.Hypot(float64(q.X-at.X), float64(q.Y-at.Y)); d < nearest {
			best, nearest = i, d
		}
	}
	return best
}

// Tapped selects the nearest point; a tap on the selected one opens it.
func (s *Scatter) Tapped(e *fyne.PointEvent) {
	draw.FocusOn(s)
	i := s.near(e.Position)
	switch {
	case i < 0:
	case i == s.selected:
		s.open()
	default:
		s.goTo(i)
	}
}

func (s *Scatter) open() {
	if s.selected >= 0 && s.OnOpen != nil {
		s.OnOpen(s.selected)
	}
}

func (s *Scatter) goTo(i int) {
	if i == s.selected {
		return
	}
	s.selected = i
	s.Refresh()
	if s.OnSelected != nil {
		s.OnSelected(i)
	}
}

// TypedKey walks the points.
func (s *Scatter) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(s, e)
	if len(s.order) == 0 {
		return
	}
	place, last := slices.Index(s.order, s.selected), len(s.order)-1
	switch e.Name {
	case fyne.KeyRight, fyne.KeyDown:
		s.goTo(s.order[min(place+1, last)])
	case fyne.KeyLeft, fyne.KeyUp:
		if place < 0 {
			place = last + 1
		}
		s.goTo(s.order[max(place-1, 0)])
	case fyne.KeyHome:
		s.goTo(s.order[0])
	case fyne.KeyEnd:
		s.goTo(s.order[last])
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		s.open()
	}
}

// TypedRune does nothing.
func (s *Scatter) TypedRune(rune) {}

// FocusGained shows the focus ring.
func (s *Scatter) FocusGained() { s.focused = true; s.Refresh(); draw.Reveal(s) }

// FocusLost hides the focus ring.
func (s *Scatter) FocusLost() { s.focused = false; s.Refresh() }

// MouseIn shows the point under the pointer in words.
func (s *Scatter) MouseIn(e *desktop.MouseEvent) { s.MouseMoved(e) }

// MouseMoved shows the point under the pointer in words.
func (s *Scatter) MouseMoved(e *desktop.MouseEvent) { s.hover(s.near(e.Position)) }

// MouseOut goes back to the selected point.
func (s *Scatter) MouseOut() { s.hover(-1) }

func (s *Scatter) hover(i int) {
	if i != s.hovered {
		s.hovered = i
		s.Refresh()
	}
}

// CreateRenderer returns the renderer.
func (s *Scatter) CreateRenderer() fyne.WidgetRenderer {
	return rendered(s, func() bool { return s.focused }, s.draw)
}
