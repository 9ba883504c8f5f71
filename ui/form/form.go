package form

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Edit changes a case; the label names the step for undo.
type Edit = EditOf[valuation.Case]

// Form is rows of fields bound to a case.
type Form = Of[valuation.Case]

// New returns a form of a case, without rows.
func New(e Edit) *Form { return NewOf(e, CurrencyOf) }

// EditOf changes a T; the label names the step for undo.
type EditOf[T any] func(label string, change func(*T))

// Of is rows of a label and a field each, bound to a T.
type Of[T any] struct {
	edit     EditOf[T]
	currency func(T) money.Currency
	Rows     *fyne.Container // to be laid out
	shows    []func(T)       // write the T into the fields
	first    fyne.Focusable
	muted    bool // the fields are being written: their handlers keep still
	pane     *Fit // that the rows follow; nil: none
	threes   *int // where in Rows the last three-point field ends; forms that share rows share it
}

// NewOf returns a form without rows; currency says which money its amounts are in.
func NewOf[T any](e EditOf[T], currency func(T) money.Currency) *Of[T] {
	return &Of[T]{edit: e, currency: currency, Rows: container.New(layout.NewFormLayout()), threes: new(int)}
}

// Render writes the case into every field without firing a handler.
func (f *Of[T]) Render(c T) {
	f.muted = true
	for _, show := range f.shows {
		show(c)
	}
	f.muted = false
}

// First returns the first field that takes the keyboard, nil when there is none.
func (f *Of[T]) First() fyne.Focusable { return f.first }

// leads notes a field as the first, unless there is one.
func (f *Of[T]) leads(field fyne.Focusable) {
	if f.first == nil {
		f.first = field
	}
}

// Row adds a labelled field and what writes a case into it.
func (f *Of[T]) Row(label string, field fyne.CanvasObject, show func(T)) {
	l := widget.NewLabel(label)
	l.Alignment = fyne.TextAlignTrailing
	beside := widgets.NewExplained(l, view.Help(label))
	if f.pane != nil {
		f.pane.labels, f.pane.bare[beside] = append(f.pane.labels, l), label == ""
	}
	f.Rows.Add(beside)
	f.Rows.Add(field)
	f.shows = append(f.shows, show)
}

// Within returns a form of a part of what f shows, in its rows.
func Within[T, V any](f *Of[T], at func(*T) *V) *Of[V] {
	var now T
	part := &Of[V]{currency: func(V) money.Currency { return f.currency(now) }, Rows: f.Rows, pane: f.pane, threes: f.threes}
	part.edit = func(label string, change func(*V)) { f.edit(label, func(whole *T) { change(at(whole)) }) }
	f.Also(func(whole T) {
		now = whole
		part.Render(*at(&whole))
	})
	return part
}

// Apart returns a form of the same with rows of its own.
func Apart[T any](f *Of[T]) *Of[T] {
	rows := NewOf(f.edit, f.currency)
	if f.pane != nil {
		rows.Fit(f.pane)
	}
	f.Also(rows.Render)
	return rows
}

// Also has show write the case beside the fields of the form.
func (f *Of[T]) Also(show func(T)) { f.shows = append(f.shows, show) }

// Change hands an edit on, unless the field is only being written.
func (f *Of[T]) Change(label string, change func(*T)) {
	if !f.muted {
		f.edit(label, change)
	}
}

// Text adds a field for words.
func (f *Of[T]) Text(label string, at func(*T) *string) *widgets.TextEntry {
	e := widgets.NewTextEntry()
	e.OnChanged = func(s string) { f.Change(label, func(c *T) { *at(c) = s }) }
	e.SetMeaning(view.Help(label))
	e.Complete(label)
	f.leads(e)
	f.Row(label, bounded(e), func(c T) {
		if words := *at(&c); e.Text != words {
			e.SetText(words)
		}
	})
	return e
}

// wordWidth is the widest that a field for words gets.
const wordWidth = 420

// bounded keeps a field for words from running across the page.
func bounded(o fyne.CanvasObject) fyne.CanvasObject { return container.New(atMost{wordWidth}, o) }

// atMost lays its one object out no wider than a width.
type atMost struct{ width float32 }

func (a atMost) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (a atMost) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(fyne.NewSize(min(size.Width, a.width), size.Height))
	objects[0].Move(fyne.NewPos(0, 0))
}

// Roomy gives a field for a choice the room that its longest word needs.
func Roomy(s fyne.CanvasObject, words []string) fyne.CanvasObject {
	return container.NewHBox(container.New(atLeast{slices.MaxFunc(words, func(a, b string) int { return len(a) - len(b) })}, s))
}

// atLeast lays its one object out wide enough for some words and an arrow.
type atLeast struct{ words string }

func (a atLeast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	least := objects[0].MinSize()
	text := fyne.MeasureText(a.words, theme.Size(theme.SizeBody), fyne.TextStyle{})
	least.Width = max(least.Width, text.Width+6*theme.Space*theme.Scale())
	return least
}

func (a atLeast) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	objects[0].Move(fyne.NewPos(0, 0))
}

// Choice adds a field for one of several codes, shown as words, and returns what takes the keyboard in it.
func (f *Of[T]) Choice(label string, codes []string, at func(*T) *string) fyne.Focusable {
	return f.Pick(label, codes, view.AllWords(codes), at)
}

// Pick adds a field for one of several codes, each shown as its words.
func (f *Of[T]) Pick(label string, codes, words []string, at func(*T) *string) fyne.Focusable {
	return f.picked(label, codes, words, func(c T) string { return *at(&c) }, func(c *T, code string) { *at(c) = code })
}

func (f *Of[T]) picked(label string, codes, words []string, get func(T) string, set func(*T, string)) fyne.Focusable {
	s, show := f.selection(label, codes, words, get, set)
	f.Row(label, Roomy(s, words), show)
	return s
}

// selection returns a field for one of several codes, and what writes a T into it.
func (f *Of[T]) selection(label string, codes, words []string, get func(T) string, set func(*T, string)) (*widgets.Select, func(T)) {
	s := widgets.NewSelect(words, nil)
	s.SetMeaning(view.Help(label))
	s.OnChanged = func(word string) {
		f.Change(label, func(c *T) { set(c, codes[slices.Index(words, word)]) })
	}
	return s, func(c T) {
		if i := slices.Index(codes, get(c)); i >= 0 {
			s.SetSelectedIndex(i)
		} else {
			s.ClearSelected()
		}
	}
}

// YesNo adds a field for what is true, false or not known.
func (f *Of[T]) YesNo(label string, at func(*T) **bool) {
	codes := []string{"yes", "no", "unknown"}
	f.picked(label, codes, view.AllWords(codes), func(c T) string {
		switch has := *at(&c); {
		case has == nil:
			return "unknown"
		case *has:
			return "yes"
		}
		return "no"
	}, func(c *T, code string) {
		has := code == "yes"
		if *at(c) = &has; code == "unknown" {
			*at(c) = nil
		}
	})
}

// perRow is how many ticks of a group stand in a row.
const perRow = 4

// Several adds a field for any of several codes: a tick each.
func (f *Of[T]) Several(label string, codes []string, at func(*T) *[]string) {
	f.Row(label, f.ticks(label, codes, view.AllWords(codes), perRow, at), func(T) {})
}

// ticks returns a grid of a tick for each of several codes, written with the form.
func (f *Of[T]) ticks(label string, codes, words []string, columns int, at func(*T) *[]string) fyne.CanvasObject {
	grid := container.New(byScale{columns, f.pane})
	ticks := make([]*widgets.Check, len(codes))
	for i := range codes {
		ticks[i] = widgets.NewCheck(words[i], func(bool) {
			f.Change(label, func(c *T) { *at(c) = chosen(codes, ticks) })
		})
		grid.Add(ticks[i])
	}
	f.Also(func(c T) {
		for i, t := range ticks {
			t.SetChecked(slices.Contains(*at(&c), codes[i]))
		}
	})
	return grid
}

// chosen returns the codes whose ticks are set.
func chosen(codes []string, ticks []*widgets.Check) []string {
	var out []string
	for i, t := range ticks {
		if t.Checked {
			out = append(out, codes[i])
		}
	}
	return out
}

// Tick adds a yes-or-no field.
func (f *Of[T]) Tick(label, words string, at func(*T) *bool) {
	f.tick(label, words, func(c T) bool { return *at(&c) }, func(c *T, on bool) { *at(c) = on })
}

func (f *Of[T]) tick(label, words string, get func(T) bool, set func(*T, bool)) {
	t := widgets.NewCheck(words, nil)
	t.SetMeaning(view.Help(label))
	t.OnChanged = func(on bool) { f.Change(label, func(c *T) { set(c, on) }) }
	f.Row(label, t, func(c T) { t.SetChecked(get(c)) })
}

// sayRoom is kept free beside a field for what was understood or is wrong, at text scale 1: the row goes on to the edge of the
// page, and more would push what stands at that edge out of sight at large text.
const sayRoom = 88

// Number adds a field for one number. What at points to is an int, a float64, a decimal or an amount of money, or a pointer to one,
// which is nil while it is not known.
func (f *Of[T]) Number(label string, spec widgets.Spec, at func(*T) any) *widgets.NumberEntry {
	return f.number(label, spec, func(c T) widgets.Number { return read(at(&c), spec, f.currency(c)) },
		func(c *T, n widgets.Number) { write(at(c), n, f.currency(*c)) })
}

func (f *Of[T]) number(label string, spec widgets.Spec, get func(T) widgets.Number, set func(*T, widgets.Number)) *widgets.NumberEntry {
	e := widgets.NewNumberEntry(spec, nil)
	e.SetRoom(sayRoom)
	e.OnChanged = func(n widgets.Number) { f.Change(label, func(c *T) { set(c, n) }) }
	e.SetMeaning(view.Help(label))
	f.leads(e.Focus())
	f.Row(label, e, func(c T) {
		e.SetSpec(inCurrency(spec, f.currency(c)))
		e.SetValue(get(c))
	})
	return e
}

// inCurrency returns a spec of money with the decimals of a currency.
func inCurrency(s widgets.Spec, cur money.Currency) widgets.Spec {
	if s.Kind == widgets.Money {
		s.Digits = cur.Digits
	}
	return s
}

// Three adds a field for the three-point judgement that at points to: a prob.Three, or a pointer to one, which is nil while there is none;
// its fields stand empty then.
func (f *Of[T]) Three(label string, spec widgets.Spec, at func(*T) any) *widgets.ThreeEntry {
	e := f.three(label, spec, func(c T) prob.Three { return judged(at(&c)) }, func(c *T, t prob.Three) { judge(at(c), t) })
	f.Also(func(c T) {
		if _, may := at(&c).(**prob.Three); may {
			e.SetBlank()
		}
	})
	return e
}

func (f *Of[T]) three(label string, spec widgets.Spec, get func(T) prob.Three, set func(*T, prob.Three)) *widgets.ThreeEntry {
	e := widgets.NewThreeEntry(spec, nil)
	e.SetRoom(sayRoom)
	e.OnChanged = func(t prob.Three) { f.Change(label, func(c *T) { set(c, t) }) }
	e.SetMeaning(view.Help(label))
	f.leads(e.Focus())
	f.headed(e)
	f.Row(label, e, func(c T) { e.SetValue(get(c)) })
	*f.threes = len(f.Rows.Objects)
	return e
}

// headed adds a row that names the boxes of a three-point field, unless one of the two rows before has such boxes.
func (f *Of[T]) headed(e *widgets.ThreeEntry) {
	const two = 2 * 2 // a label and a field each
	if *f.threes == 0 || len(f.Rows.Objects)-*f.threes > two {
		none, heads := widgets.NewCaption(""), e.Heads()
		if f.pane != nil {
			f.pane.bare[none], f.pane.heads[heads] = true, true
		}
		f.Rows.Add(none)
		f.Rows.Add(heads)
	}
}

// Heading returns the title of a group of fields with a line of help under it.
func Heading(title, help string) fyne.CanvasObject {
	t := largeWords(title)
	if help == "" {
		return t
	}
	return container.New(Tight{}, t, Small(help))
}

// LongHeading is Heading for a title of any length: it is broken into lines instead of asking for room.
func LongHeading(title, help string) fyne.CanvasObject {
	t := largeWords(title)
	t.Wrapping = fyne.TextWrapWord
	if help == "" {
		return t
	}
	return container.New(Tight{}, t, Small(help))
}

func largeWords(words string) *widget.RichText {
	return widget.NewRichText(&widget.TextSegment{Text: words, Style: widget.RichTextStyle{SizeName: theme.SizeHeading,
		ColorName: "foreground", TextStyle: fyne.TextStyle{Bold: true}}})
}

// Small returns a wrapped line of the second rank.
func Small(words string) *widget.RichText {
	t := widget.NewRichText(&widget.TextSegment{Text: words, Style: widget.RichTextStyle{SizeName: theme.SizeSmall,
		ColorName: theme.ColorMuted}})
	t.Wrapping = fyne.TextWrapWord
	return t
}

// Tight stacks objects without the theme's padding between them.
type Tight struct{}

// tuck is how far a line of help moves up under its title.
const tuck = 10

func (Tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for i, o := range objects {
		m := o.MinSize()
		s.Width, s.Height = max(s.Width, m.Width), s.Height+m.Height
		if i > 0 {
			s.Height -= tuck
		}
	}
	return s
}

func (Tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range objects {
		h := o.MinSize().Height
		o.Resize(fyne.NewSize(size.Width, h))
		o.Move(fyne.NewPos(0, y))
		y += h - tuck
	}
}

// Label returns a plain line of the second rank.
func Label(words string) *widget.RichText {
	return widget.NewRichText(&widget.TextSegment{Text: words, Style: widget.RichTextStyle{SizeName: theme.SizeSmall,
		ColorName: theme.ColorMuted}})
}
