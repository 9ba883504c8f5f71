// Package seen reads what a window shows, for tests: its texts as a person would read them, its widgets by type, and
// pictures of it in light, dark and large text.
//
// It walks the renderers that the window really uses, unlike test.LaidOutObjects of Fyne, which makes new ones and so empties
// a table. Hidden objects are left out. It is used by tests only; it draws and changes nothing.
package seen

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// Walk calls visit for the object and everything visible in it, parents first.
func Walk(o fyne.CanvasObject, visit func(fyne.CanvasObject)) {
	if o == nil || !o.Visible() {
		return
	}
	visit(o)
	switch c := o.(type) {
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(c).Objects() {
			Walk(child, visit)
		}
	case *fyne.Container:
		for _, child := range c.Objects {
			Walk(child, visit)
		}
	}
}

// Texts returns every text in the order of drawing, empty ones left out.
func Texts(o fyne.CanvasObject) []string {
	var words []string
	Walk(o, func(o fyne.CanvasObject) {
		if t, ok := o.(*canvas.Text); ok && t.Text != "" {
			words = append(words, t.Text)
		}
	})
	return words
}

// Says reports whether one of the texts contains the words.
func Says(o fyne.CanvasObject, words string) bool {
	for _, t := range Texts(o) {
		if strings.Contains(t, words) {
			return true
		}
	}
	return false
}

// All returns the visible objects of type T in the order of drawing.
func All[T fyne.CanvasObject](o fyne.CanvasObject) []T {
	var found []T
	Walk(o, func(o fyne.CanvasObject) {
		if t, ok := o.(T); ok {
			found = append(found, t)
		}
	})
	return found
}
