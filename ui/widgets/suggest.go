package widgets

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
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
	offered
}

// NewSuggest returns an empty entry with a hint in it.
func NewSuggest(hint string, onChosen func(Choice)) *Suggest {
	s := &Suggest{OnChosen: onChosen}
	s.self = s
	s.field.typed, s.field.left, s.field.escape = s.typed, s.leave, s.close
	s.offered.under, s.offered.take = s, s.chosen
	s.list = newSuggestList(&s.offered)
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

func (s *Suggest) typed(words string) { s.offer(fits(s.choices, words), 0) }

// take hands a choice over.
func (s *Suggest) chosen(i int) {
	if i < 0 || i >= len(s.fitting) {
		return
	}
	c := s.fitting[i]
	s.done()
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

func (s *Suggest) enter() {
	words := strings.TrimSpace(s.Text)
	switch {
	case len(s.fitting) > 0:
		s.chosen(s.marked)
	case words != "" && s.OnFree != nil:
		s.put("")
		s.OnFree(words)
	}
}
