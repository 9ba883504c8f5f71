package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// field is an entry whose text can be set without telling its handler, and that says when it is left.
type field struct {
	widget.Entry
	self    fyne.CanvasObject // what stands in the window: the field, or the widget that it is a part of
	typed   func(string)
	left    func()
	escape  func()
	wrong   func() bool // its text is none that was taken; nil: never
	muted   bool
	focused bool
	meaning string // told while it has the keyboard
}

func newField(typed func(string), left func()) *field {
	f := &field{typed: typed, left: left}
	f.self = f
	f.ExtendBaseWidget(f)
	f.Wrapping = fyne.TextWrapOff
	f.Scroll = fyne.ScrollNone
	f.OnChanged = func(s string) {
		if !f.muted {
			f.typed(s)
		}
	}
	return f
}

// put sets the text in silence.
func (f *field) put(words string) {
	if f.Text == words {
		return
	}
	f.muted = true
	if f.focused {
		f.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd}) // a selection of the old text would eat the new one
	}
	f.SetText(words)
	f.muted = false
}

// TypedShortcut leaves the window's keys to the window and the rest to the entry. Undo takes back words that were not taken first: they
// are the last thing done, and no step of the window's. Rows of cells that are pasted are a table for the window.
func (f *field) TypedShortcut(s fyne.Shortcut) {
	if _, undo := s.(*fyne.ShortcutUndo); undo && f.wrong != nil && f.wrong() {
		f.escape()
		return
	}
	if paste, ok := s.(*fyne.ShortcutPaste); ok && strings.ContainsAny(strings.TrimSpace(paste.Clipboard.Content()), "\t\n") {
		if c, ok := draw.CanvasOf(f.self).(fyne.Shortcutable); ok {
			c.TypedShortcut(s) // a table, which the window takes in
		}
		return
	}
	if !ofWindow(f.self, s) {
		f.Entry.TypedShortcut(s)
	}
}

// ofWindow hands a key that the window may know to the window of o, and reports whether the entry is to keep still: it would undo
// its own typing, where the window steps through the lot's history.
func ofWindow(o fyne.CanvasObject, s fyne.Shortcut) bool {
	step := false
	switch s := s.(type) {
	case *fyne.ShortcutUndo, *fyne.ShortcutRedo:
		step = true
	case *desktop.CustomShortcut:
		if s.KeyName == fyne.KeyDelete || s.KeyName == fyne.KeyBackspace {
			return false // meant for a word of the text, never for the lot
		}
	default:
		return false
	}
	if c, ok := draw.CanvasOf(o).(fyne.Shortcutable); ok {
		c.TypedShortcut(s)
	}
	return step
}

// TextEntry is an entry for words that leaves undo and redo to the window.
type TextEntry struct {
	widget.Entry

	// OnEscape, when set, is called on Escape. In a dialog Escape goes to the window where it is not set, and leads out.
	OnEscape func()

	meaning   string
	completes *completion // nil: it offers no words
}

// SetMeaning sets what the window tells while the entry has the keyboard.
func (e *TextEntry) SetMeaning(words string) { e.meaning = words }

// FocusGained tells the meaning.
func (e *TextEntry) FocusGained() {
	e.Entry.FocusGained()
	draw.Explain(e, e.meaning)
	draw.Reveal(e)
}

// FocusLost takes it back.
func (e *TextEntry) FocusLost() {
	e.Entry.FocusLost()
	draw.Explain(e, "")
	if e.completes != nil {
		e.completes.leave()
	}
}

// NewTextEntry returns an empty entry for words.
func NewTextEntry() *TextEntry {
	e := &TextEntry{}
	e.ExtendBaseWidget(e)
	return e
}

// TypedShortcut leaves the window's keys to the window and the rest to the entry.
func (e *TextEntry) TypedShortcut(s fyne.Shortcut) {
	if !ofWindow(e, s) {
		e.Entry.TypedShortcut(s)
	}
}

// TypedKey takes the keys of the list of words on offer, and Escape where it means something, and leaves the rest to the entry.
func (e *TextEntry) TypedKey(k *fyne.KeyEvent) {
	if e.walks(k) {
		return
	}
	if k.Name == fyne.KeyEscape && e.OnEscape != nil {
		e.OnEscape()
		return
	}
	if c := draw.CanvasOf(e); c != nil && c.Overlays().Top() != nil {
		draw.Leave(e, k)
	}
	before := e.Text
	e.Entry.TypedKey(k)
	if e.completes != nil && e.Text != before {
		e.complete(false)
	}
}

// FocusGained selects the whole text, so that what is typed replaces it.
func (f *field) FocusGained() {
	f.focused = true
	f.Entry.FocusGained()
	f.Entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	draw.Explain(f.self, f.meaning)
	draw.Reveal(f.self)
}

// tell has the window say what is wrong with the text in hand, whole, for there may be no room for it beside the field; nothing
// wrong: what the field means.
func (f *field) tell(fault string) {
	switch {
	case !f.focused:
	case fault != "":
		draw.Explain(f.self, wrongMark+fault)
	default:
		draw.Explain(f.self, f.meaning)
	}
}

// FocusLost tells that the field was left.
func (f *field) FocusLost() {
	f.focused = false
	f.Entry.FocusLost()
	draw.Explain(f.self, "")
	f.left()
}

// TypedKey takes Escape for itself and leaves the rest to the entry.
func (f *field) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape && f.escape != nil {
		f.escape()
		return
	}
	f.Entry.TypedKey(e)
}

// fieldWidth is the width of a field for a number of so many figures.
func fieldWidth(figures int) float32 {
	return float32(figures)*draw.TextWidth("0", theme.SizeBody, fyne.TextStyle{}) + 2*theme.Space + theme.Half
}

// say is the line beside a field: what was understood, or what is wrong, the latter with a mark and in words.
type say struct {
	words *draw.Text
	wrong bool
	under *widget.RichText // what is wrong, whole, under the field; nil: nothing was yet
	grown func()           // called when what stands under the field comes, changes or goes
}

func newSay() say { return say{words: draw.NewText("", theme.SizeSmall, theme.ColorMuted)} }

const wrongMark = "! "

func (s *say) understood(words string) { s.set(words, theme.ColorMuted, false) }

func (s *say) fault(reason string) {
	if s.under == nil {
		s.under = widget.NewRichText(&widget.TextSegment{Style: widget.RichTextStyle{SizeName: theme.SizeSmall, ColorName: theme.ColorWarning}})
		s.under.Wrapping = fyne.TextWrapWord
	}
	s.under.Segments[0].(*widget.TextSegment).Text = wrongMark + reason
	s.under.Refresh()
	s.set("", theme.ColorWarning, true)
}

// objects are what stands beside and under the field.
func (s *say) objects() []fyne.CanvasObject {
	if !s.wrong {
		return []fyne.CanvasObject{s.words.Text}
	}
	return []fyne.CanvasObject{s.words.Text, s.under}
}

// height is the room that what is wrong takes under the field, in a width.
func (s *say) height(width float32) float32 {
	if !s.wrong {
		return 0
	}
	s.under.Resize(fyne.NewSize(width+2*theme.Space, s.under.Size().Height))
	return s.under.MinSize().Height - 2*theme.Space
}

// place lays the words out beside a field that ends at a place, or what is wrong under it.
func (s *say) place(x, fieldHeight, width float32) {
	s.words.Place(fyne.NewPos(x, (fieldHeight-draw.LineHeight(theme.SizeSmall))/2), 0)
	if s.wrong {
		s.under.Resize(fyne.NewSize(width+2*theme.Space, s.height(width)+2*theme.Space))
		s.under.Move(fyne.NewPos(-theme.Space, fieldHeight-theme.Space))
	}
}

func (s *say) set(words string, color fyne.ThemeColorName, wrong bool) {
	changed := wrong || s.wrong
	s.words.Text.Text, s.words.Tone, s.wrong = words, color, wrong
	s.words.Dress()
	s.words.Resize(s.words.MinSize())
	s.words.Refresh()
	if changed {
		s.grown()
	}
}
