package main

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"walkline/ui/desk"
	"walkline/ui/task"
)

// The same table of comparables dropped on each place comes to the same dialog: at once where the place takes such tables, and after a
// question, which knows what the table looks like, where it takes others.
func TestATableDroppedOnAnyPlaceComesToTheSameDialog(t *testing.T) {
	s := onResale(t, task.Inline{})
	path := filepath.Join(t.TempDir(), "rows.csv")
	if err := os.WriteFile(path, []byte(someRows), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, place := range []struct {
		name string
		way  []desk.Action
		asks bool
	}{
		{"Resale", nil, false}, {"Listing", []desk.Action{desk.Go(desk.Listing)}, false},
		{"Board", []desk.Action{desk.Go(desk.Board)}, true}, {"Builds", []desk.Action{desk.Go(desk.Builds)}, true},
		{"the shelf", []desk.Action{desk.Go(desk.Bench), desk.ShowSection(desk.ShelfSection)}, false},
	} {
		for _, a := range place.way {
			s.window.Do(a)
		}
		s.window.Drop([]fyne.URI{storage.NewFileURI(path)})
		if place.asks {
			s.says(t, "What is this table?", "looks like a table of comparables")
			s.tap(t, "Comparables: prices of vehicles, asked or sold")
		}
		s.says(t, "Import rows.csv", "Usable: 1 of 2 rows. Refused: 1.")
		s.escape()
		if s.screen.Canvas().Overlays().Top() != nil {
			t.Fatalf("%s: a dialog is left", place.name)
		}
	}
}
