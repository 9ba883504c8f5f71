package widgets

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
)

// completion is what a [TextEntry] offers while words are typed into it.
type completion struct {
	offered
	subject string // what its words are about, as the window knows it
	parted  bool   // the entry holds several, parted by commas: the last of them is completed
}

// Complete has the entry offer the words that its window knows of a subject ([Layer]'s OnComplete) and that fit what is typed. Down and up
// walk the list, Enter or a tap takes the marked word, Escape closes the list; what is typed stays free.
func (e *TextEntry) Complete(subject string) {
	c := &completion{subject: subject}
	c.under = e
	c.list = newSuggestList(&c.offered)
	c.take = e.take
	e.completes = c
}

// CompleteEach is Complete for an entry that holds several words, parted by commas.
func (e *TextEntry) CompleteEach(subject string) {
	e.Complete(subject)
	e.completes.parted = true
}

// Offers returns the words on offer.
func (e *TextEntry) Offers() []string {
	if e.completes == nil || !e.completes.Open() {
		return nil
	}
	var words []string
	for _, c := range e.completes.fitting {
		words = append(words, c.Name)
	}
	return words
}

// split parts the text of the entry into what stays and what is completed.
func (c *completion) split(text string) (stays, begun string) {
	if !c.parted {
		return "", text
	}
	i := strings.LastIndex(text, ",") + 1
	begun = strings.TrimLeft(text[i:], " ")
	return text[:len(text)-len(begun)], begun
}

// complete offers what fits the text; with nothing typed, all of it where it was asked for.
func (e *TextEntry) complete(asked bool) {
	stays, begun := e.completes.split(e.Text)
	choices := knownTo(e, e.completes.subject)
	for _, there := range strings.Split(stays, ",") {
		choices = slices.DeleteFunc(choices, func(c Choice) bool { return c.ID == strings.TrimSpace(there) })
	}
	if strings.TrimSpace(begun) != "" {
		choices = fits(choices, begun)
	} else if !asked {
		choices = nil
	}
	if len(choices) == 1 && choices[0].ID == begun {
		choices = nil // typed out already
	}
	e.completes.offer(choices, noMark)
}

// take puts a word on offer into the entry.
func (e *TextEntry) take(i int) {
	if i < 0 || i >= len(e.completes.fitting) {
		return
	}
	stays, _ := e.completes.split(e.Text)
	word := e.completes.fitting[i].ID
	e.completes.done()
	e.SetText(stays + word)
	e.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
}

// walks takes the keys of the list, and reports whether it did.
func (e *TextEntry) walks(k *fyne.KeyEvent) bool {
	c := e.completes
	switch open := c != nil && c.Open(); {
	case c == nil:
		return false
	case k.Name == fyne.KeyDown && !open:
		e.complete(true)
	case !open:
		return false
	case k.Name == fyne.KeyDown:
		c.mark(c.marked + 1)
	case k.Name == fyne.KeyUp:
		c.mark(c.marked - 1)
	case k.Name == fyne.KeyEscape:
		c.done()
	case (k.Name == fyne.KeyReturn || k.Name == fyne.KeyEnter) && c.marked >= 0:
		e.take(c.marked)
	default:
		return false
	}
	return true
}

// TypedRune types a letter, and offers what fits then.
func (e *TextEntry) TypedRune(r rune) {
	e.Entry.TypedRune(r)
	if e.completes != nil {
		e.complete(false)
	}
}
