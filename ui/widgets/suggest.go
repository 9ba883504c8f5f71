package widgets

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// Choice is one suggestion: what it is, and a line of second rank behind it.
type Choice struct {
	ID   string
	Name string
	Note string
}

// Suggest is an entry that lists what fits while one types. Down and up walk the list, Enter takes the marked choice, Escape closes. Its
// list lies on the [Layer] of its window or dialog; without one it stays closed and Enter takes the first that fits.
type Suggest struct {
	field

	// OnChosen is called when the user takes a choice; the entry is empty again then.
	OnChosen func(Choice)
	// OnFree, when set, is called on Enter with words that fit no choice.
	OnFree func(words string)

	choices []Choice
	fitting []Choice
	marked  int
	list    *suggestList
	on      *Layer
}

const mostSuggestions = 8

// NewSuggest returns an empty entry with a hint in it.
func NewSuggest(hint string, onChosen func(Choice)) *Suggest {
	s := &Suggest{OnChosen: onChosen}
	s.self = s
	s.field.typed, s.field.left, s.field.escape = s.typed, s.leave, s.close
	s.list = newSuggestList(s)
	s.ExtendBaseWidget(s)
	s.Wrapping, s.Scroll = fyne.TextWrapOff, fyne.ScrollNone
	s.Entry.OnChanged = func(words string) {
		if !s.muted {
			s.typed(words)
		}
	}
	s.SetPlaceHolder(hint)
	return s
}

// SetChoices gives the list to choose from.
func (s *Suggest) SetChoices(choices []Choice) { s.choices = choices }

// Facts returns the suggestions on show in words.
func (s *Suggest) Facts() []string {
	facts := make([]string, len(s.fitting))
	for i, c := range s.fitting {
		facts[i] = strings.TrimSuffix(fmt.Sprintf("%s, %s", c.Name, c.Note), ", ")
	}
	return facts
}

// Open reports whether the list is on show.
func (s *Suggest) Open() bool { return s.on != nil }

// fits returns the choices that have every typed word in them; those that begin with the first come first.
func fits(choices []Choice, typed string) []Choice {
	wanted := strings.Fields(strings.ToLower(typed))
	if len(wanted) == 0 {
		return nil
	}
	var first, rest []Choice
	for _, c := range choices {
		in := strings.ToLower(c.Name + " " + c.Note)
		if !containsAll(in, wanted) {
			continue
		}
		if strings.HasPrefix(in, wanted[0]) {
			first = append(first, c)
		} else {
			rest = append(rest, c)
		}
	}
	return append(first, rest...)
}

func containsAll(s string, wanted []string) bool {
	for _, w := range wanted {
		if !strings.Contains(s, w) {
			return false
		}
	}
	return true
}

func (s *Suggest) typed(words string) {
	s.fitting = fits(s.choices, words)
	s.fitting = s.fitting[:min(len(s.fitting), mostSuggestions)]
	s.marked = 0
	if len(s.fitting) == 0 {
		s.close()
		return
	}
	s.open()
}

// open lays the list under the entry, or over it when there is no room.
func (s *Suggest) open() {
	l := layerOf(s)
	if l == nil {
		return
	}
	s.on = l
	s.list.Refresh()
	size := fyne.NewSize(max(s.Size().Width, s.list.MinSize().Width), s.list.MinSize().Height)
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(s)
	top := fyne.CurrentApp().Driver().AbsolutePositionForObject(l).Y
	below := at.AddXY(0, s.Size().Height+2)
	if below.Y+size.Height > top+l.Size().Height && at.Y-top > size.Height {
		below = at.SubtractXY(0, size.Height+2)
	}
	l.put(s.list, below, size)
}

func (s *Suggest) close() {
	if s.on != nil {
		s.on.drop(s.list)
		s.on = nil
	}
}

// leave closes the list, unless the pointer is on it: the tap comes after the entry lost the keyboard.
func (s *Suggest) leave() {
	if s.list.hovered < 0 {
		s.close()
	}
}

// take hands a choice over.
func (s *Suggest) take(i int) {
	if i < 0 || i >= len(s.fitting) {
		return
	}
	c := s.fitting[i]
	s.fitting = nil
	s.list.hovered = -1
	s.close()
	s.put("")
	if s.OnChosen != nil {
		s.OnChosen(c)
	}
}

// TypedKey walks the list.
func (s *Suggest) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyDown:
		s.mark(s.marked + 1)
	case fyne.KeyUp:
		s.mark(s.marked - 1)
	case fyne.KeyReturn, fyne.KeyEnter:
		s.enter()
	default:
		s.field.TypedKey(e)
	}
}

func (s *Suggest) mark(i int) {
	if len(s.fitting) > 0 {
		s.marked = min(max(i, 0), len(s.fitting)-1)
		s.list.Refresh()
	}
}

func (s *Suggest) enter() {
	words := strings.TrimSpace(s.Text)
	switch {
	case len(s.fitting) > 0:
		s.take(s.marked)
	case words != "" && s.OnFree != nil:
		s.put("")
		s.OnFree(words)
	}
}

// suggestList is the list on the sheet.
type suggestList struct {
	widget.BaseWidget
	of      *Suggest
	hovered int
}

func newSuggestList(of *Suggest) *suggestList {
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
	draw.FocusOn(l.of)
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
