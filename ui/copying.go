package ui

import (
	"fmt"

	"walkline/ui/desk"
)

// copyTable puts the table that has the keyboard on the clipboard, with its headings.
func (w *Window) copyTable() {
	t, ok := w.window.Canvas().Focused().(interface{ Cells() [][]string })
	if !ok {
		w.say(desk.State{Notice: "Click a row of the table first, then copy."})
		return
	}
	cells := t.Cells()
	w.app.Clipboard().SetContent(w.desk.Copied(cells))
	w.say(desk.State{Notice: fmt.Sprintf("Copied: the headings and %d rows. Paste them into any spreadsheet.", len(cells)-1)})
}
