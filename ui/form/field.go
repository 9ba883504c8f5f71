package form

import (
	"strings"

	"walkline/ui/view"
	"walkline/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Ungrouped is the spec of a number that is never grouped, such as a year.
func Ungrouped(s widgets.Spec) widgets.Spec {
	s.Ungrouped = true
	return s
}

// Words adds a field for a list of words, parted by commas.
func (f *Of[T]) Words(label, example string, at func(*T) *[]string) {
	e := widgets.NewTextEntry()
	e.SetPlaceHolder(example)
	e.CompleteEach(label)
	e.OnChanged = func(s string) { f.Change(label, func(c *T) { *at(c) = parted(s) }) }
	f.Row(label, bounded(e), func(c T) {
		if now := strings.Join(*at(&c), ", "); strings.Join(parted(e.Text), ", ") != now {
			e.SetText(now)
		}
	})
}

// Keyed adds a choice for what a map says under a key.
func (f *Of[T]) Keyed(label string, codes []string, at func(*T) map[string]string, key string) {
	f.picked(label, codes, view.AllWords(codes), func(c T) string { return at(&c)[key] }, func(c *T, code string) {
		if m := at(c); m != nil {
			m[key] = code
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

// withFault shows what is wrong with an entry's text under it, whole and in words.
func withFault(e *widgets.TextEntry) fyne.CanvasObject {
	says := widgets.NewCaption("")
	says.SetWarning(true)
	says.Hide()
	check := e.OnChanged
	e.OnChanged = func(s string) {
		err := e.Validator(s)
		if says.Hidden = err == nil; err != nil {
			says.SetText("! " + err.Error())
		}
		e.Refresh()
		check(s)
	}
	return container.NewVBox(e, says)
}
