package ui

import (
	"fyne.io/fyne/v2"

	"walkline/ui/desk"
)

// Drop takes files dropped on the window. Pictures become photographs of the open lot, of the selected area while Damage is
// shown and of the whole vehicle elsewhere, or of the open build, after the work; any other file is read as the table that the place is
// for. While a dialog is open
// it does nothing.
func (w *Window) Drop(files []fyne.URI) {
	if w.modal() || len(files) == 0 {
		return
	}
	var paths []string
	for _, f := range files {
		paths = append(paths, f.Path())
	}
	pictures := photoFiles(paths)
	of, usual := w.photosOf()
	table, there := w.tableHere()
	switch {
	case len(pictures) > 0 && of != 0:
		w.takePhotos(pictures, w.droppedOn(), usual)
	case len(pictures) > 0:
		w.say(desk.State{Notice: "Open the lot that the photos are of, then drop them again."})
	case there:
		w.readFile(table, files[0].Path())
	default:
		w.say(desk.State{Notice: whereTables})
	}
}

// whereTables says which table belongs where.
const whereTables = "A run list belongs on the Board, comparables on the lot that they are for, past buys on Builds."

// tableHere returns the table that the place is for, and whether there is one.
func (w *Window) tableHere() (taking, bool) {
	switch {
	case w.state.Place == desk.Builds:
		return w.pastBuys(), true
	case w.state.Place == desk.Board:
		return w.runList(), true
	case w.state.Open != nil:
		return w.comparables(), true
	}
	return taking{}, false
}

// droppedOn returns the area that dropped pictures are of.
func (w *Window) droppedOn() string {
	if w.state.Place != desk.Worksheet {
		return ""
	}
	area, shown := w.sheet().DamageShown()
	if !shown {
		return ""
	}
	return area
}
