package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// field is an entry whose text can be set without telling its handler, and that says when it is left.
type field struct {
	widget.Entry
	typed  func(string)
	left   func()
	escape func()
	muted  bool
}

func newField(typed func(string), left func()) *field {
	f := &field{typed: typed, left: left}
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
	f.SetText(words)
	f.muted = false
}

// FocusLost tells that the field was left.
func (f *field) FocusLost() {
	f.Entry.FocusLost()
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
}

func newSay() say { return say{words: draw.NewText("", theme.SizeSmall, theme.ColorMuted)} }

const wrongMark = "! "

func (s *say) understood(words string) { s.set(words, theme.ColorMuted, false) }

func (s *say) fault(reason string) { s.set(wrongMark+reason, theme.ColorWarning, true) }

func (s *say) set(words string, color fyne.ThemeColorName, wrong bool) {
	s.words.Text.Text, s.words.Tone, s.wrong = words, color, wrong
	s.words.Dress()
	s.words.Resize(s.words.MinSize())
	s.words.Refresh()
}
