package ui

import (
	"context"
	"fmt"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/widgets"
)

// Drop takes files dropped on the window. Pictures become photographs of the open lot, of the selected area while Damage is
// shown and of the whole vehicle elsewhere; on the open build they and PDFs are asked about, for they may be files of a bill. Any
// other files are read as tables, one after the other. While a dialog is open it does nothing.
func (w *Window) Drop(files []fyne.URI) {
	if w.modal() || len(files) == 0 {
		return
	}
	var paths []string
	for _, f := range files {
		paths = append(paths, f.Path())
	}
	if w.filed(paths) {
		return
	}
	pictures := photoFiles(paths)
	of, usual := w.photosOf()
	switch {
	case len(pictures) > 0 && of != 0:
		w.takePhotos(pictures, w.droppedOn(), usual)
	case len(pictures) > 0:
		w.say(desk.State{Notice: "Open the lot that the photos are of, then drop them again."})
	default:
		w.tables = nil
		for _, path := range paths {
			w.tables = append(w.tables, func() {
				w.readAny(filepath.Base(path), func(ctx context.Context) ([]byte, error) { return w.desk.Read(ctx, path, mostBytes) })
			})
		}
		w.nextTable()
	}
}

// nextTable goes on with the next of the tables that were dropped together.
func (w *Window) nextTable() {
	if len(w.tables) == 0 {
		return
	}
	next := w.tables[0]
	w.tables = w.tables[1:]
	w.runner.After(breath, next)
}

// kindHere returns what a table in this place is likely to be of, and whether the place says it.
func (w *Window) kindHere() (kind desk.Kind, sure bool) {
	switch {
	case w.state.Place == desk.Builds, w.state.Place == desk.Record:
		return desk.OfPastBuys, w.state.Place == desk.Builds
	case w.state.Place == desk.Board:
		return desk.OfRunList, true
	}
	return desk.OfComparables, true
}

// takingOf returns how a table of a kind is taken in.
func (w *Window) takingOf(kind desk.Kind) taking {
	switch kind {
	case desk.OfRunList:
		return w.runList()
	case desk.OfPastBuys:
		return w.pastBuys()
	}
	return w.comparables()
}

// kindWords says what a table of each kind holds.
var kindWords = map[desk.Kind]string{desk.OfComparables: "Comparables: prices of vehicles, asked or sold",
	desk.OfRunList: "Run list: the lots of a sale", desk.OfPastBuys: "Past buys: what you bought before, and what came of it"}

// askKind asks what a table is, where it looks like another one than the place takes.
func (w *Window) askKind(name string, here, looks desk.Kind, read func(desk.Kind)) {
	words := widget.NewLabel(fmt.Sprintf("By its headings %s looks like a table of %s. What is it?", name, looks))
	if looks == here {
		words.SetText("What is the table " + name + "?")
	}
	words.Wrapping = fyne.TextWrapWord
	body := container.NewVBox(words)
	d := dialog.NewCustomWithoutButtons("What is this table?", body, w.window)
	var likely *widgets.Button
	for _, kind := range desk.Kinds {
		b := widgets.NewButton(kindWords[kind], w.handler(func() {
			d.Hide()
			read(kind)
		}))
		b.Alignment = widget.ButtonAlignLeading
		if kind == looks {
			b.Importance = widget.HighImportance
			likely = b
		}
		body.Add(b)
	}
	leave := widgets.NewButton("None of these: leave it", w.handler(func() {
		d.Hide()
		w.nextTable()
	}))
	leave.Alignment = widget.ButtonAlignLeading
	body.Add(leave)
	w.open(d)
	if likely != nil {
		w.focusIn(likely) // Enter takes what it is likely to be
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
