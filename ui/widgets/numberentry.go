package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// NumberEntry is a field for a number as people type it, with its unit and a line beside it that says what was understood or what
// is wrong.
type NumberEntry struct {
	widget.BaseWidget

	// OnChanged is called when what is typed makes another valid number; and, where that was only the beginning of a text that is none,
	// with the number that stood there before: 84.000 is not to leave 84 behind.
	OnChanged func(Number)
	// OnSubmitted is called on Enter in a valid field; may be nil.
	OnSubmitted func(Number)

	spec    Spec
	figures int
	room    float32 // kept free for the line beside the field, at text scale 1
	value   Number
	began   Number // what the field showed before it was typed in, or over
	was     string // its text before the last letter
	comma   bool   // as the field writes its number
	field   *field
	unit    *draw.Text
	say     say
}

const (
	usualFigures         = 9
	sayRoom      float32 = 176 // at text scale 1
)

// NewNumberEntry returns an empty field.
func NewNumberEntry(spec Spec, onChanged func(Number)) *NumberEntry {
	e := &NumberEntry{spec: spec, OnChanged: onChanged, figures: usualFigures, room: sayRoom, say: newSay()}
	e.field = newField(e.typed, e.left)
	e.field.escape = e.Reset
	e.field.wrong = func() bool { return e.say.wrong }
	e.field.OnSubmitted = func(string) { e.submitted() }
	e.unit = draw.NewText(spec.unitShown(), theme.SizeBody, theme.ColorMuted)
	e.ExtendBaseWidget(e)
	e.say.grown = e.Refresh
	return e
}

// unitShown is the unit behind the field.
func (s Spec) unitShown() string {
	if s.Kind == Percent && s.Unit == "" {
		return "%"
	}
	return s.Unit
}

// plain shows a number without the unit that stands behind the field.
func (s Spec) plain(n Number) string {
	shown := s.Show(n)
	if s.Kind == Percent && n.Known {
		return shown[:len(shown)-len(" %")]
	}
	return shown
}

// SetFigures sets the width of the field, in digits.
func (e *NumberEntry) SetFigures(n int) { e.figures = n; e.Refresh() }

// SetRoom sets how many points are kept free beside the field for its line; 0 where the page has room anyway.
func (e *NumberEntry) SetRoom(points float32) { e.room = points; e.Refresh() }

// SetPlaceHolder shows words while the field is empty.
func (e *NumberEntry) SetPlaceHolder(words string) { e.field.SetPlaceHolder(words) }

// SetSpec changes what is allowed and keeps the value.
func (e *NumberEntry) SetSpec(s Spec) {
	if e.spec == s {
		return
	}
	e.spec = s
	e.unit.Text.Text = s.unitShown()
	e.Reset()
	e.Refresh()
}

// SetValue shows a number and calls no handler. What is being typed stays when it already means that number.
func (e *NumberEntry) SetValue(n Number) {
	if n.Equal(e.value) && e.comma == comma.Load() {
		return
	}
	e.value = n
	e.Reset()
}

// Value returns the last valid number.
func (e *NumberEntry) Value() Number { return e.value }

// Fault returns what is wrong with the text, empty when it is well.
func (e *NumberEntry) Fault() string {
	if _, err := Parse(e.field.Text, e.spec); err != nil && (e.field.Text != "" || e.say.wrong) {
		return err.Error()
	}
	return ""
}

// Facts returns the number in words, or what is wrong.
func (e *NumberEntry) Facts() []string {
	if fault := e.Fault(); fault != "" {
		return []string{fault}
	}
	return []string{e.spec.inWords(e.value)}
}

// inWords shows a number with its unit.
func (s Spec) inWords(n Number) string {
	if !n.Known {
		return "not known"
	}
	if s.Unit == "" || s.Kind == Percent {
		return s.Show(n)
	}
	if s.Kind == Money {
		return s.Unit + " " + s.Show(n)
	}
	return s.Show(n) + " " + s.Unit
}

// Reset shows the number that is kept.
func (e *NumberEntry) Reset() {
	e.comma, e.began = comma.Load(), e.value
	e.was = e.spec.plain(e.value)
	e.field.put(e.was)
	e.say.understood("")
}

// Disable makes the field unchangeable.
func (e *NumberEntry) Disable() { e.field.Disable() }

// Enable makes it changeable again.
func (e *NumberEntry) Enable() { e.field.Enable() }

// SetMeaning sets what the window tells while the entry has the keyboard.
func (e *NumberEntry) SetMeaning(words string) { e.field.meaning = words }

// Focus returns what takes the keyboard.
func (e *NumberEntry) Focus() fyne.Focusable { return e.field }

// typedOver reports whether a text takes the place of another: more than one letter went at once.
func typedOver(was, words string) bool { return len(was) > len(words)+1 }

func (e *NumberEntry) typed(words string) {
	if typedOver(e.was, words) {
		e.began = e.value
	}
	e.was = words
	n, err := Parse(words, e.spec)
	if err != nil {
		e.say.fault(err.Error())
		e.field.tell(err.Error())
		if n, err = Parse(strings.TrimRight(words, ".,"), e.spec); err != nil || !n.Equal(e.value) { // a mark may be on its way to decimals
			e.change(e.began)
		}
		return
	}
	e.field.tell("")
	e.say.understood("")
	if shown := e.spec.plain(n); shown != words && n.Known {
		e.say.understood("= " + e.spec.inWords(n))
	}
	e.change(n)
}

// change takes another number and tells of it.
func (e *NumberEntry) change(n Number) {
	if n.Equal(e.value) {
		return
	}
	e.value = n
	if e.OnChanged != nil {
		e.OnChanged(n)
	}
}

// left tidies a valid text; a wrong one stays, with its reason.
func (e *NumberEntry) left() {
	if !e.say.wrong {
		e.Reset()
	}
}

func (e *NumberEntry) submitted() {
	if e.say.wrong {
		return
	}
	e.Reset()
	if e.OnSubmitted != nil {
		e.OnSubmitted(e.value)
	}
}

// Parts returns the field.
func (e *NumberEntry) Parts() []fyne.CanvasObject { return []fyne.CanvasObject{e.field} }

// CreateRenderer returns the renderer.
func (e *NumberEntry) CreateRenderer() fyne.WidgetRenderer { return &numberRenderer{e} }

type numberRenderer struct{ e *NumberEntry }

func (r *numberRenderer) Objects() []fyne.CanvasObject {
	return append([]fyne.CanvasObject{r.e.field, r.e.unit.Text}, r.e.say.objects()...)
}

func (r *numberRenderer) MinSize() fyne.Size {
	width := fieldWidth(r.e.figures) + r.e.room*theme.Scale()
	if r.e.unit.Text.Text != "" {
		width += theme.Space + r.e.unit.MinSize().Width
	}
	return fyne.NewSize(width, r.e.field.MinSize().Height+r.e.say.height(max(width, r.e.Size().Width)))
}

func (r *numberRenderer) Layout(size fyne.Size) {
	width := fieldWidth(r.e.figures)
	height := r.e.field.MinSize().Height
	r.e.field.Resize(fyne.NewSize(width, height))
	x := width + theme.Space
	r.e.unit.Place(fyne.NewPos(x, (height-r.e.unit.MinSize().Height)/2), 0)
	if r.e.unit.Text.Text != "" {
		x += r.e.unit.MinSize().Width + theme.Space
	}
	r.e.say.place(x, height, size.Width)
}

func (r *numberRenderer) Refresh() {
	r.e.unit.Dress()
	r.e.unit.Refresh()
	r.e.say.words.Dress()
	r.e.say.words.Refresh()
	r.e.field.Refresh()
	r.Layout(r.e.Size())
	canvas.Refresh(r.e)
}

func (r *numberRenderer) Destroy() {}
