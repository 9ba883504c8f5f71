package form

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/widgets"
	"walkline/valuation/lot"
)

// Ungrouped is the spec of a number that is never grouped, such as a year.
func Ungrouped(s widgets.Spec) widgets.Spec {
	s.Ungrouped = true
	return s
}

// Date adds a field for a calendar day; text that is no day says so and changes nothing.
func (f *Of[T]) Date(label string, at func(*T) *lot.Date) {
	e := widgets.NewTextEntry()
	e.SetPlaceHolder("YYYY-MM-DD")
	e.Validator = func(s string) error {
		if _, err := lot.ParseDate(s); s != "" && err != nil {
			return errors.New("no day of the calendar: write YYYY-MM-DD")
		}
		return nil
	}
	e.OnChanged = func(s string) {
		if d, err := lot.ParseDate(s); s == "" || err == nil {
			f.Change(label, func(c *T) { *at(c) = d })
		}
	}
	f.leads(e)
	f.Row(label, bounded(withFault(e)), func(c T) {
		if d, err := lot.ParseDate(e.Text); (err == nil || e.Text == "") && d != *at(&c) {
			e.SetText(string(*at(&c)))
		}
	})
}

// Words adds a field for a list of words, parted by commas.
func (f *Of[T]) Words(label, example string, at func(*T) *[]string) {
	e := widgets.NewTextEntry()
	e.SetPlaceHolder(example)
	e.OnChanged = func(s string) { f.Change(label, func(c *T) { *at(c) = parted(s) }) }
	f.Row(label, bounded(e), func(c T) {
		if now := strings.Join(*at(&c), ", "); strings.Join(parted(e.Text), ", ") != now {
			e.SetText(now)
		}
	})
}

func parted(s string) []string {
	var out []string
	for _, w := range strings.Split(s, ",") {
		if w = strings.TrimSpace(w); w != "" {
			out = append(out, w)
		}
	}
	return out
}

// withFault shows what is wrong with an entry's text beside it, in words.
func withFault(e *widgets.TextEntry) fyne.CanvasObject {
	says := widgets.NewCaption("")
	check := e.OnChanged
	e.OnChanged = func(s string) {
		words := ""
		if err := e.Validator(s); err != nil {
			words = "! " + err.Error()
		}
		says.SetText(words)
		check(s)
	}
	return container.NewBorder(nil, nil, nil, says, e)
}
