package ui

import (
	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// Drop takes files dropped on the window. Pictures become photographs of the open lot, of the selected area while Damage is
// shown and of the whole vehicle elsewhere; any other file is read as the table that the place is for. While a dialog is open
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
	switch {
	case w.state.Place == desk.Builds:
		w.readFile(w.pastBuys(), files[0].Path())
	case len(pictures) > 0 && w.state.Open != nil:
		w.takePhotos(pictures, w.droppedOn(), lot.Before)
	case len(pictures) > 0:
		w.say(desk.State{Notice: "Open the lot that the photos are of, then drop them again."})
	case w.state.Place == desk.Board:
		w.readFile(w.runList(), files[0].Path())
	case w.state.Open != nil:
		w.readFile(w.comparables(), files[0].Path())
	default:
		w.say(desk.State{Notice: "Drop a run list on the Board, or comparables on the lot that they are for."})
	}
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
