package builds

import (
	"slices"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// lineField is a field for the line of work or hidden risk that an entry is for.
type lineField struct {
	pick  *widgets.Select
	ids   []string
	muted bool
}

// noLine is what the field says for an entry that is for no line.
const noLine = "no line of work"

// addLines adds the field to a form.
func addLines[T any](p *Page, f *form.Of[T], line func(*T) *string) *lineField {
	l := &lineField{ids: []string{""}}
	l.pick = widgets.NewSelect([]string{noLine}, nil)
	l.pick.OnChanged = func(string) {
		if at := l.pick.SelectedIndex(); at >= 0 && !l.muted {
			f.Change("line of work", func(x *T) { *line(x) = l.ids[at] })
		}
	}
	f.Row("Line of work", l.pick, func(x T) {
		l.muted = true
		l.pick.SetSelectedIndex(max(slices.Index(l.ids, *line(&x)), 0))
		l.muted = false
	})
	return l
}

// render offers the lines of a build.
func (l *lineField) render(o desk.OpenBuild) {
	ids, names := view.Works(o)
	l.ids = append([]string{""}, ids...)
	words := []string{noLine}
	for _, id := range ids {
		words = append(words, view.Distinct(words, names[id]))
	}
	l.muted = true
	l.pick.SetOptions(words)
	l.muted = false
}
