package plot

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

var (
	_ fyne.Focusable    = (*Waterfall)(nil)
	_ fyne.Tappable     = (*Waterfall)(nil)
	_ desktop.Hoverable = (*ShareBars)(nil)
)

// barRow is one line of bars: a name, a bar between two values, and a figure.
type barRow struct {
	name, figure string
	from, to     float64
	strong       bool // a total, in the accent
}

// bars is a list of named bars with figures. On the keyboard up and down select a bar, Enter opens it.
type bars struct {
	widget.BaseWidget

	// OnSelected is called when the user goes to a bar; may be nil.
	OnSelected func(i int)
	// OnOpen is called when the user opens a bar by Enter or a tap; may be nil.
	OnOpen func(i int)

	self     fyne.Focusable // the widget that the bars are part of
	rows     []barRow
	facts    []string
	links    bool // the end of a bar is joined to the next one's beginning
	headed   bool // an axis and a legend stand above the rows
	selected int
	hovered  int
	focused  bool
}

const (
	noBars            = "No figures yet."
	leastBars float32 = 300 // at any text scale: names are cut to half
	nameRoom  float32 = 240 // most room for names, at text scale 1
)

func newBars(links bool) bars { return bars{selected: -1, hovered: -1, links: links} }

// Waterfall shows how the resale price comes down to the bid, a bar for each step.
type Waterfall struct{ bars }

// NewWaterfall returns a waterfall without bars.
func NewWaterfall() *Waterfall {
	w := &Waterfall{newBars(true)}
	w.self = w
	w.ExtendBaseWidget(w)
	return w
}

// WaterfallBar is one step from the resale price down to the bid.
type WaterfallBar struct {
	Name   string
	Amount float64 // what it adds; negative when it takes away
	Text   string  // the amount as written, with its currency
}

// SetBars shows the steps: the first stands on zero, each goes on where the one before ended, and the last is the total that
// the others add up to and stands on zero again.
func (w *Waterfall) SetBars(steps []WaterfallBar) {
	rows, facts := make([]barRow, len(steps)), make([]string, len(steps))
	running := 0.0
	for i, s := range steps {
		facts[i] = s.Name + ": " + s.Text
		rows[i] = barRow{name: s.Name, figure: s.Text, from: running, to: running + s.Amount}
		running += s.Amount
		if i == len(steps)-1 {
			rows[i].from, rows[i].to = 0, s.Amount
		}
		rows[i].strong = i == 0 || i == len(steps)-1
	}
	w.set(rows, facts)
}

// Share is a named part of a whole.
type Share struct {
	Name string
	Part float64 // 0..1
}

// ShareBars shows the parts of a whole, such as what moves the profit most, on a scale from zero to the largest.
type ShareBars struct{ bars }

// NewShareBars returns share bars without shares.
func NewShareBars() *ShareBars {
	s := &ShareBars{newBars(false)}
	s.self = s
	s.ExtendBaseWidget(s)
	return s
}

// SetShares shows the shares in the order given.
func (s *ShareBars) SetShares(shares []Share) {
	rows, facts := make([]barRow, len(shares)), make([]string, len(shares))
	for i, share := range shares {
		text := strconv.FormatFloat(100*share.Part, 'f', 0, 64) + " %"
		rows[i] = barRow{name: share.Name, figure: text, to: share.Part}
		facts[i] = share.Name + ": " + text
	}
	s.set(rows, facts)
}

func (b *bars) set(rows []barRow, facts []string) {
	b.rows, b.facts = rows, facts
	b.selected, b.hovered = min(b.selected, len(rows)-1), -1
	b.Refresh()
}

// Facts returns every bar in words.
func (b *bars) Facts() []string {
	if len(b.facts) == 0 {
		return []string{noBars}
	}
	return b.facts
}

// Selected returns the selected bar, -1 for none.
func (b *bars) Selected() int { return b.selected }

func barStep() float32 { return draw.LineHeight(theme.SizeBody) + theme.Space + theme.Half }

// head returns the height of what stands above the rows.
func (b *bars) head() float32 {
	if !b.headed {
		return 0
	}
	return 2*draw.LineHeight(theme.SizeSmall) + tickLength + theme.Space
}

// at returns the bar at a height, -1 for none.
func (b *bars) at(y float32) int {
	y -= b.head()
	if i := int(y / barStep()); y >= 0 && i < len(b.rows) {
		return i
	}
	return -1
}

// Tapped selects the bar and opens it.
func (b *bars) Tapped(e *fyne.PointEvent) {
	draw.FocusOn(b.self)
	if i := b.at(e.Position.Y); i >= 0 {
		b.goTo(i)
		b.open()
	}
}

// goTo selects a bar and tells of it.
func (b *bars) goTo(i int) {
	if i == b.selected {
		return
	}
	b.selected = i
	b.Refresh()
	if b.OnSelected != nil {
		b.OnSelected(i)
	}
}

// Select goes to a bar without calling a handler; -1 for none.
func (b *bars) Select(i int) {
	if i >= -1 && i < len(b.rows) {
		b.selected = i
		b.Refresh()
	}
}

func (b *bars) open() {
	if b.selected >= 0 && b.OnOpen != nil {
		b.OnOpen(b.selected)
	}
}

// TypedKey walks and opens the bars.
func (b *bars) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(b.self, e)
	last := len(b.rows) - 1
	to := b.selected
	switch e.Name {
	case fyne.KeyDown:
		to = min(to+1, last)
	case fyne.KeyUp:
		to = max(to-1, 0)
	case fyne.KeyHome:
		to = 0
	case fyne.KeyEnd:
		to = last
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		b.open()
		return
	}
	if to <= last {
		b.goTo(to)
	}
}

// TypedRune does nothing.
func (b *bars) TypedRune(rune) {}

// FocusGained shows the focus ring.
func (b *bars) FocusGained() { b.focused = true; b.Refresh(); draw.Reveal(b.self.(fyne.CanvasObject)) }

// FocusLost hides the focus ring.
func (b *bars) FocusLost() { b.focused = false; b.Refresh() }

// MouseIn lights the bar under the pointer.
func (b *bars) MouseIn(e *desktop.MouseEvent) { b.MouseMoved(e) }

// MouseMoved lights the bar under the pointer.
func (b *bars) MouseMoved(e *desktop.MouseEvent) { b.hover(b.at(e.Position.Y)) }

// MouseOut lights none.
func (b *bars) MouseOut() { b.hover(-1) }

func (b *bars) hover(i int) {
	if i != b.hovered {
		b.hovered = i
		b.Refresh()
	}
}

// CreateRenderer returns the renderer.
func (b *bars) CreateRenderer() fyne.WidgetRenderer { return b.renderer(b.draw) }

// renderer returns the renderer of rows that are drawn so.
func (b *bars) renderer(paint func(*drawing, fyne.Size)) fyne.WidgetRenderer {
	r := rendered(b.self.(fyne.Widget), func() bool { return b.focused }, paint)
	r.Least = func() fyne.Size {
		return fyne.NewSize(leastBars, b.head()+float32(max(len(b.rows), 1))*barStep())
	}
	return r
}
