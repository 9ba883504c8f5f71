package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// offered is the list of what fits what stands in an entry: which of it is marked, and the layer that it is on.
type offered struct {
	under   listing
	fitting []Choice
	marked  int // noMark: none
	list    *suggestList
	on      *Layer
	take    func(i int) // hands the choice at a place over
}

// listing is an entry with a list under it.
type listing interface {
	fyne.CanvasObject
	fyne.Focusable
}

const (
	mostSuggestions = 8
	noMark          = -1
)

// Open reports whether the list is on show.
func (o *offered) Open() bool { return o.on != nil }

// offer shows choices, the first of them, with one marked; no choices: no list.
func (o *offered) offer(choices []Choice, marked int) {
	o.fitting, o.marked = choices[:min(len(choices), mostSuggestions)], marked
	if len(o.fitting) == 0 {
		o.close()
		return
	}
	o.open()
}

// open lays the list under the entry, or over it when there is no room.
func (o *offered) open() {
	l := layerOf(o.under)
	if l == nil {
		return
	}
	o.on = l
	o.list.Refresh()
	entry := o.under.Size()
	size := fyne.NewSize(max(entry.Width, o.list.MinSize().Width), o.list.MinSize().Height)
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(o.under)
	top := fyne.CurrentApp().Driver().AbsolutePositionForObject(l).Y
	below := at.AddXY(0, entry.Height+2)
	if below.Y+size.Height > top+l.Size().Height && at.Y-top > size.Height {
		below = at.SubtractXY(0, size.Height+2)
	}
	l.put(o.list, below, size)
}

func (o *offered) close() {
	if o.on != nil {
		o.on.drop(o.list)
		o.on = nil
	}
}

// leave closes the list, unless the pointer is on it: the tap comes after the entry lost the keyboard.
func (o *offered) leave() {
	if o.list.hovered < 0 {
		o.close()
	}
}

// done forgets what was offered.
func (o *offered) done() {
	o.fitting = nil
	o.list.hovered = noMark
	o.close()
}

func (o *offered) mark(i int) {
	if len(o.fitting) > 0 {
		o.marked = min(max(i, 0), len(o.fitting)-1)
		o.list.Refresh()
	}
}

// suggestList is the list on the sheet.
type suggestList struct {
	widget.BaseWidget
	of      *offered
	hovered int
}

func newSuggestList(of *offered) *suggestList {
	l := &suggestList{of: of, hovered: -1}
	l.ExtendBaseWidget(l)
	return l
}

func (l *suggestList) at(y float32) int {
	if i := int((y - theme.Half) / suggestStep()); y >= theme.Half && i < len(l.of.fitting) {
		return i
	}
	return -1
}

// Tapped takes the choice under the pointer.
func (l *suggestList) Tapped(e *fyne.PointEvent) {
	i := l.at(e.Position.Y)
	draw.FocusOn(l.of.under)
	l.of.take(i)
}

// MouseIn lights the choice under the pointer.
func (l *suggestList) MouseIn(e *desktop.MouseEvent) { l.MouseMoved(e) }

// MouseMoved lights the choice under the pointer.
func (l *suggestList) MouseMoved(e *desktop.MouseEvent) {
	l.hovered = max(l.at(e.Position.Y), 0)
	l.Refresh()
}

// MouseOut lights none.
func (l *suggestList) MouseOut() {
	l.hovered = -1
	l.Refresh()
}

// draw draws the choices for a size.
func (l *suggestList) draw(d *draw.Sheet, size fyne.Size) {
	ground := d.Rect(fyne.Position{}, size, theme.Color(draw.Menu))
	ground.StrokeColor, ground.StrokeWidth, ground.CornerRadius = theme.Color(draw.Separator), 1, theme.Half
	step := suggestStep()
	for i, c := range l.of.fitting {
		top := theme.Half + float32(i)*step
		d.Row(fyne.NewPos(1, top), fyne.NewSize(size.Width-2, step), i == l.of.marked, i == l.hovered)
		y := top + (step-draw.LineHeight(theme.SizeBody))/2
		name := d.Text(c.Name, fyne.NewPos(theme.Space+theme.Half, y), 0, theme.SizeBody, draw.Foreground)
		drop := (draw.LineHeight(theme.SizeBody) - draw.LineHeight(theme.SizeSmall)) / 2
		d.Text(c.Note, fyne.NewPos(theme.Wide+theme.Space+name.MinSize().Width, y+drop), 0, theme.SizeSmall, theme.ColorMuted)
	}
}

// CreateRenderer returns the renderer.
func (l *suggestList) CreateRenderer() fyne.WidgetRenderer {
	return &draw.Renderer{Of: l, Draw: l.draw, Least: func() fyne.Size {
		width := float32(0)
		for _, c := range l.of.fitting {
			width = max(width, draw.TextWidth(c.Name, theme.SizeBody, fyne.TextStyle{})+draw.TextWidth(c.Note, theme.SizeSmall, fyne.TextStyle{}))
		}
		return fyne.NewSize(width+theme.Broad+theme.Wide, float32(len(l.of.fitting))*suggestStep()+2*theme.Half)
	}}
}

func suggestStep() float32 { return draw.LineHeight(theme.SizeBody) + theme.Space + theme.Half }
