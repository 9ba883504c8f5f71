package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets/draw"
)

// Passage is an entry for a text of several lines that is handed over whole: when it is pasted, and on Enter. Tab leaves it.
type Passage struct {
	widget.Entry
	OnRead func(text string)

	meaning string
}

// NewPassage returns an empty passage; meaning is told while it has the keyboard.
func NewPassage(meaning string, read func(text string)) *Passage {
	p := &Passage{OnRead: read, meaning: meaning}
	p.MultiLine, p.Wrapping = true, fyne.TextWrapWord
	p.ExtendBaseWidget(p)
	return p
}

// AcceptsTab leaves the tab to the window, which goes to the next field.
func (p *Passage) AcceptsTab() bool { return false }

// FocusGained tells the meaning.
func (p *Passage) FocusGained() {
	p.Entry.FocusGained()
	draw.Explain(p, p.meaning)
	draw.Reveal(p)
}

// FocusLost takes it back.
func (p *Passage) FocusLost() {
	p.Entry.FocusLost()
	draw.Explain(p, "")
}

// TypedShortcut leaves the window's keys to the window; what is pasted is handed over.
func (p *Passage) TypedShortcut(s fyne.Shortcut) {
	if ofWindow(p, s) {
		return
	}
	p.Entry.TypedShortcut(s)
	if _, pasted := s.(*fyne.ShortcutPaste); pasted {
		p.OnRead(p.Text)
	}
}

// TypedKey hands the text over on Enter, hands Escape on, and leaves the rest to the entry.
func (p *Passage) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		p.OnRead(p.Text)
	case fyne.KeyEscape:
		draw.Leave(p, e)
	default:
		p.Entry.TypedKey(e)
	}
}
