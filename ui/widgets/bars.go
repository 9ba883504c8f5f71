package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
)

var (
	_ fyne.Focusable    = (*Bars)(nil)
	_ fyne.Tappable     = (*Bars)(nil)
	_ desktop.Hoverable = (*Bars)(nil)
)

// barRow is one line of bars: a name, a bar between two values, and a figure.
type barRow struct {
	name, figure string
	from, to     float64
	strong       bool // a total, in the accent
}

// Bars is a list of named bars with figures; [NewWaterfall] and [NewShareBars] make one. On the keyboard up and down select a bar, Enter opens it.
type Bars struct {
	widget.BaseWidget

	// OnOpen is called when the user opens a bar by Enter or a tap; may be nil.
	OnOpen func(i int)

	rows     []barRow
	facts    []string
	empty    string
	links    bool // the end of a bar is joined to the next one's beginning
	selected int
	hovered  int
	focused  bool
	nameCap  float32 // most room for names, at text scale 1
}

func newBars(empty string) *Bars {
	b := &Bars{selected: -1, hovered: -1, empty: empty, nameCap: 240}
	b.ExtendBaseWidget(b)
	return b
}

// WaterfallBar is one step from the resale price down to the bid.
type WaterfallBar struct {
	Name   string
	Amount float64 // what it adds; negative when it takes away
	Text   string  // the amount as written, with its currency
}

// NewWaterfall returns a waterfall: the first bar stands on zero, each one goes on where the one before ended, and the last is
// the total and stands on zero again.
func NewWaterfall() *Bars {
	b := newBars("No figures yet.")
	b.links = true
	return b
}

// SetWaterfall shows the bars; those before the last add up to the last.
func (b *Bars) SetWaterfall(bars []WaterfallBar) {
	rows, facts := make([]barRow, len(bars)), make([]string, len(bars))
	running := 0.0
	for i, w := range bars {
		facts[i] = w.Name + ": " + w.Text
		rows[i] = barRow{name: w.Name, figure: w.Text, from: running, to: running + w.Amount}
		running += w.Amount
		if i == len(bars)-1 {
			rows[i].from, rows[i].to = 0, w.Amount
		}
		rows[i].strong = i == 0 || i == len(bars)-1
	}
	b.set(rows, facts)
}

// Share is a named part of a whole.
type Share struct {
	Name string
	Part float64 // 0..1
}

// NewShareBars returns bars for shares, each on a scale from zero to the largest.
func NewShareBars() *Bars { return newBars("No figures yet.") }

// SetShares shows the shares in the order given.
func (b *Bars) SetShares(shares []Share) {
	rows, facts := make([]barRow, len(shares)), make([]string, len(shares))
	percent := Spec{Kind: Percent, Digits: 0}
	for i, s := range shares {
		text := percent.Show(Exactly(Known(s.Part).Value.Round(2)))
		rows[i] = barRow{name: s.Name, figure: text, to: s.Part}
		facts[i] = s.Name + ": " + text
	}
	b.set(rows, facts)
}

func (b *Bars) set(rows []barRow, facts []string) {
	b.rows, b.facts = rows, facts
	b.selected, b.hovered = min(b.selected, len(rows)-1), -1
	b.Refresh()
}

// Facts returns every bar in words.
func (b *Bars) Facts() []string {
	if len(b.facts) == 0 {
		return []string{b.empty}
	}
	return b.facts
}

// Selected returns the selected bar, -1 for none.
func (b *Bars) Selected() int { return b.selected }

func barStep() float32 { return lineHeight(theme.SizeBody) + theme.Space + theme.Half }

// at returns the bar at a height, -1 for none.
func (b *Bars) at(y float32) int {
	if i := int(y / barStep()); y >= 0 && i < len(b.rows) {
		return i
	}
	return -1
}

// Tapped selects the bar and opens it.
func (b *Bars) Tapped(e *fyne.PointEvent) {
	focusOn(b)
	if i := b.at(e.Position.Y); i >= 0 {
		b.selected = i
		b.Refresh()
		b.open()
	}
}

func (b *Bars) open() {
	if b.selected >= 0 && b.OnOpen != nil {
		b.OnOpen(b.selected)
	}
}

// TypedKey walks and opens the bars.
func (b *Bars) TypedKey(e *fyne.KeyEvent) {
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
	if to != b.selected && to <= last {
		b.selected = to
		b.Refresh()
	}
}

// TypedRune does nothing.
func (b *Bars) TypedRune(rune) {}

// FocusGained shows the focus ring.
func (b *Bars) FocusGained() { b.focused = true; b.Refresh() }

// FocusLost hides the focus ring.
func (b *Bars) FocusLost() { b.focused = false; b.Refresh() }

// MouseIn lights the bar under the pointer.
func (b *Bars) MouseIn(e *desktop.MouseEvent) { b.MouseMoved(e) }

// MouseMoved lights the bar under the pointer.
func (b *Bars) MouseMoved(e *desktop.MouseEvent) { b.hover(b.at(e.Position.Y)) }

// MouseOut lights none.
func (b *Bars) MouseOut() { b.hover(-1) }

func (b *Bars) hover(i int) {
	if i != b.hovered {
		b.hovered = i
		b.Refresh()
	}
}

// CreateRenderer returns the renderer.
func (b *Bars) CreateRenderer() fyne.WidgetRenderer {
	r := newPlotRenderer(b, func() bool { return b.focused }, b.draw)
	r.least = func() fyne.Size {
		return fyne.NewSize(300*theme.Scale(), float32(max(len(b.rows), 1))*barStep())
	}
	return r
}
