package ui

import (
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// known returns the words that the entries of the window offer for the field of a label.
func (w *Window) known(label string) []widgets.Choice {
	var choices []widgets.Choice
	for _, x := range view.Known(w.state, label) {
		choices = append(choices, widgets.Choice{ID: x.Word, Name: x.Word, Note: x.Note})
	}
	return choices
}
