package widgets

import (
	"errors"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
	"walkline/valuation/prob"
)

// ThreeEntry is a row of three small fields for a low, a likely and a high value, with a line beside them. The likely one
// alone means a certain value.
type ThreeEntry struct {
	widget.BaseWidget

	// OnChanged is called when what is typed makes another valid judgement; and, where that was only the beginning of one that is none, with
	// the judgement that stood there before.
	OnChanged func(prob.Three)

	spec    Spec
	figures int
	room    float32
	value   prob.Three
	began   prob.Three // what the fields showed before they were typed in, or over
	was     [3]string  // their texts before the last letter
	blank   bool       // nothing at all is known while the fields are empty; the judgement is zero then
	comma   bool       // as the fields write their numbers
	fields  [3]*field
	unit    *draw.Text
	say     say
}

var threeNames = [3]string{"low", "likely", "high"}

const (
	threeFigures         = 6
	threeRoom    float32 = 212 // the reason begins with the name of the field
)

// NewThreeEntry returns three fields that say zero.
func NewThreeEntry(spec Spec, onChanged func(prob.Three)) *ThreeEntry {
	spec.Optional = true
	e := &ThreeEntry{spec: spec, OnChanged: onChanged, figures: threeFigures, room: threeRoom, say: newSay()}
	for i := range e.fields {
		e.fields[i] = newField(func(string) { e.typed() }, e.left)
		e.fields[i].escape = e.Reset
		e.fields[i].wrong = func() bool { return e.say.wrong }
		e.fields[i].SetPlaceHolder(threeNames[i])
	}
	e.unit = draw.NewText(spec.unitShown(), theme.SizeBody, theme.ColorMuted)
	e.ExtendBaseWidget(e)
	e.say.grown = e.Refresh
	e.Reset()
	return e
}

// SetBlank has the fields stand empty, rather than say zero, while the judgement is zero: nothing is known.
func (e *ThreeEntry) SetBlank() {
	if !e.blank {
		e.blank = true
		e.Reset()
	}
}

// SetFigures sets the width of each field, in digits.
func (e *ThreeEntry) SetFigures(n int) { e.figures = n; e.Refresh() }

// SetRoom sets how many points are kept free beside the fields for their line.
func (e *ThreeEntry) SetRoom(points float32) { e.room = points; e.Refresh() }

// SetValue shows a judgement and calls no handler. What is being typed stays when it already means it.
func (e *ThreeEntry) SetValue(v prob.Three) {
	if v == e.value && e.comma == comma.Load() {
		return
	}
	e.value = v
	e.Reset()
}

// Value returns the last valid judgement.
func (e *ThreeEntry) Value() prob.Three { return e.value }

// SetMeaning sets what the window tells while one of the fields has the keyboard.
func (e *ThreeEntry) SetMeaning(words string) {
	for _, f := range e.fields {
		f.meaning = words
	}
}

// Focus returns the first field, which takes the keyboard.
func (e *ThreeEntry) Focus() fyne.Focusable { return e.fields[0] }

// Reset shows the judgement that is kept.
func (e *ThreeEntry) Reset() {
	e.comma, e.began = comma.Load(), e.value
	e.was = e.shown(e.value)
	for i, words := range e.was {
		e.fields[i].put(words)
	}
	e.say.understood("")
}

// Disable makes the fields unchangeable.
func (e *ThreeEntry) Disable() {
	for _, f := range e.fields {
		f.Disable()
	}
}

// Enable makes them changeable again.
func (e *ThreeEntry) Enable() {
	for _, f := range e.fields {
		f.Enable()
	}
}

// Fault returns what is wrong, empty when all is well.
func (e *ThreeEntry) Fault() string {
	if _, err := e.read(); err != nil {
		return err.Error()
	}
	return ""
}

// Facts returns the judgement in words, or what is wrong.
func (e *ThreeEntry) Facts() []string {
	if fault := e.Fault(); fault != "" {
		return []string{fault}
	}
	return []string{e.words(e.value)}
}

func (e *ThreeEntry) words(v prob.Three) string {
	if e.blank && v.Zero() {
		return "not known"
	}
	if v.Sure() {
		return e.spec.inWords(Known(v.Likely)) + ", certain"
	}
	return fmt.Sprintf("low %s, likely %s, high %s", e.spec.inWords(Known(v.Low)), e.spec.inWords(Known(v.Likely)),
		e.spec.inWords(Known(v.High)))
}

// read parses the three fields together.
func (e *ThreeEntry) read() (prob.Three, error) {
	var n [3]Number
	for i, f := range e.fields {
		var err error
		if n[i], err = Parse(f.Text, e.spec); err != nil {
			return prob.Three{}, fmt.Errorf("%s: %w", threeNames[i], err)
		}
	}
	switch {
	case e.blank && !n[0].Known && !n[1].Known && !n[2].Known:
		return prob.Three{}, nil
	case !n[1].Known:
		return prob.Three{}, errors.New("likely: a number is needed")
	case !n[0].Known && !n[2].Known:
		return prob.Certain(n[1].Float()), nil
	case !n[0].Known:
		return prob.Three{}, errors.New("low: a number is needed")
	case !n[2].Known:
		return prob.Three{}, errors.New("high: a number is needed")
	}
	v := prob.Three{Low: n[0].Float(), Likely: n[1].Float(), High: n[2].Float()}
	switch {
	case v.Low > v.Likely:
		return v, errors.New("low is above likely")
	case v.Likely > v.High:
		return v, errors.New("high is below likely")
	}
	return v, nil
}

func (e *ThreeEntry) typed() {
	for i, f := range e.fields {
		if typedOver(e.was[i], f.Text) {
			e.began = e.value
		}
		e.was[i] = f.Text
	}
	v, err := e.read()
	if err != nil {
		e.say.fault(err.Error())
		e.tell(err.Error())
		e.change(e.began)
		return
	}
	e.tell("")
	e.say.understood("")
	if !e.asShown(v) {
		e.say.understood("= " + e.words(v))
	}
	e.change(v)
}

// change takes another judgement and tells of it.
func (e *ThreeEntry) change(v prob.Three) {
	if v == e.value {
		return
	}
	e.value = v
	if e.OnChanged != nil {
		e.OnChanged(v)
	}
}

// tell has the field in hand tell what is wrong.
func (e *ThreeEntry) tell(fault string) {
	for _, f := range e.fields {
		f.tell(fault)
	}
}

// asShown reports whether the texts are already what the fields would write for v.
func (e *ThreeEntry) asShown(v prob.Three) bool {
	for i, words := range e.shown(v) {
		if e.fields[i].Text != words {
			return false
		}
	}
	return true
}

// shown are the texts that the fields write for v.
func (e *ThreeEntry) shown(v prob.Three) (texts [3]string) {
	if e.blank && v.Zero() {
		return texts
	}
	for i, x := range [3]float64{v.Low, v.Likely, v.High} {
		texts[i] = e.spec.plain(Known(x))
	}
	return texts
}

func (e *ThreeEntry) left() {
	if !e.say.wrong {
		e.Reset()
	}
}

// Parts returns the three fields.
func (e *ThreeEntry) Parts() []fyne.CanvasObject {
	return []fyne.CanvasObject{e.fields[0], e.fields[1], e.fields[2]}
}

// Heads returns a line of words to stand above the fields: low, likely, high, each over its field.
func (e *ThreeEntry) Heads() fyne.CanvasObject {
	heads := container.New(headsOf{e})
	for _, name := range threeNames {
		heads.Add(NewCaption(name))
	}
	return heads
}

// headsOf lays three words out over the fields of an entry.
type headsOf struct{ e *ThreeEntry }

func (h headsOf) MinSize(heads []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(0, heads[0].MinSize().Height)
}

func (h headsOf) Layout(heads []fyne.CanvasObject, size fyne.Size) {
	step := fieldWidth(h.e.figures) + theme.Half
	for i, o := range heads {
		o.Resize(fyne.NewSize(step, size.Height))
		o.Move(fyne.NewPos(float32(i)*step+theme.Space, 0))
	}
}

// CreateRenderer returns the renderer.
func (e *ThreeEntry) CreateRenderer() fyne.WidgetRenderer { return &threeRenderer{e} }

type threeRenderer struct{ e *ThreeEntry }

func (r *threeRenderer) Objects() []fyne.CanvasObject {
	return append([]fyne.CanvasObject{r.e.fields[0], r.e.fields[1], r.e.fields[2], r.e.unit.Text}, r.e.say.objects()...)
}

func (r *threeRenderer) MinSize() fyne.Size {
	width := 3*fieldWidth(r.e.figures) + 2*theme.Half + r.e.room*theme.Scale()
	if r.e.unit.Text.Text != "" {
		width += theme.Space + r.e.unit.MinSize().Width
	}
	return fyne.NewSize(width, r.e.fields[0].MinSize().Height+r.e.say.height(max(width, r.e.Size().Width)))
}

func (r *threeRenderer) Layout(size fyne.Size) {
	width, height := fieldWidth(r.e.figures), r.e.fields[0].MinSize().Height
	x := float32(0)
	for _, f := range r.e.fields {
		f.Move(fyne.NewPos(x, 0))
		f.Resize(fyne.NewSize(width, f.MinSize().Height))
		x += width + theme.Half
	}
	x += theme.Half
	r.e.unit.Place(fyne.NewPos(x, (height-r.e.unit.MinSize().Height)/2), 0)
	if r.e.unit.Text.Text != "" {
		x += r.e.unit.MinSize().Width + theme.Space
	}
	r.e.say.place(x, height, size.Width)
}

func (r *threeRenderer) Refresh() {
	r.e.unit.Dress()
	r.e.unit.Refresh()
	r.e.say.words.Dress()
	r.e.say.words.Refresh()
	for _, f := range r.e.fields {
		f.Refresh()
	}
	r.Layout(r.e.Size())
	canvas.Refresh(r.e)
}

func (r *threeRenderer) Destroy() {}
