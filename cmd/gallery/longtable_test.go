package main

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// longTable is a table of more rows than are taken back on the window's goroutine.
func longTable() string {
	var rows strings.Builder
	rows.WriteString("asking price\tyear\tmake\tmodel\tmiles\n")
	for n := range 2500 {
		fmt.Fprintf(&rows, "%d\t2018\tKettrick\tDunlin\t%d\n", 5000+n, 40000+n)
	}
	return rows.String()
}

// A long table is taken back, done again and its source removed away from the window, behind a bar; Escape ends that and changes nothing.
func TestALongTableIsTakenBackAwayFromTheWindow(t *testing.T) {
	r := &slow{}
	s := opened(t, r)
	shelved := func(want int, says ...string) {
		t.Helper()
		r.Release()
		shelf, err := s.book.Shelf(t.Context())
		if err != nil || len(shelf) != want {
			t.Fatalf("%d rows on the shelf, want %d, %v", len(shelf), want, err)
		}
		s.wants(t, says...)
	}
	ended := func(saying string) {
		t.Helper()
		r.Release()
		s.says(t, saying, "Cancel")
		s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
		task.Inline{}.Run(r.taking)
		shelved(2500, "cancelled. Nothing was changed.")
	}
	r.Release()
	s.window.Do(desk.Go(desk.Bench))
	s.window.Do(desk.ShowSection(desk.ShelfSection))
	s.window.Paste(longTable())
	r.Release()
	s.tap(t, "Import")
	task.Inline{}.Run(r.taking)
	shelved(2500, "2,500 rows read: 2,500 new")
	s.undo()
	ended("Stepping through the history")
	s.undo()
	task.Inline{}.Run(r.taking)
	shelved(0, "Undone: import comparables.")
	s.window.Do(desk.Redo())
	task.Inline{}.Run(r.taking)
	shelved(2500, "Done again: import comparables.")
	var ids []int64
	shelf, _ := s.book.Shelf(t.Context())
	for _, c := range shelf {
		ids = append(ids, c.ID)
	}
	s.window.Do(desk.RemoveComparables("remove the clipboard", ids...))
	ended("Remove the clipboard")
	s.window.Do(desk.RemoveComparables("remove the clipboard", ids...))
	task.Inline{}.Run(r.taking)
	shelved(0)
	s.undo()
	task.Inline{}.Run(r.taking)
	shelved(2500, "Undone: remove the clipboard.")
}

// What a word of a title means is chosen by keyboard, and the choice keeps the keyboard while rows are put right; once none is refused
// Enter takes them in. A list in a cell stands without brackets.
func TestTheKeyboardLeadsFromAQuestionToTheRows(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.Paste("Lot\tYear\tMake\tTitle\tDamage\n14\t20x7\tOstrane\tgreen slip\thail\n15\t2017\tOstrane\tSalvage\thail\n")
	shown := func() []*widgets.Select { return seen.All[*widgets.Select](s.top()) }
	asked := slices.IndexFunc(shown(), func(c *widgets.Select) bool { return slices.Contains(c.Options, "junk") && c.Selected == "" })
	of := shown()[asked]
	s.screen.Canvas().Focus(of)
	of.SetSelected("salvage")
	s.says(t, "green slip (1)", "15 2017 Ostrane salvage hail")
	if !slices.Contains(shown(), of) || s.screen.Canvas().Focused() != of {
		t.Errorf("the keyboard is on %v, which is not shown", s.screen.Canvas().Focused())
	}
	s.tap(t, "Put rows right…")
	cell, ok := s.screen.Canvas().Focused().(*widgets.TextEntry)
	if !ok || cell.SelectedText() != "20x7" {
		t.Fatalf("the keyboard is on %v", s.screen.Canvas().Focused())
	}
	test.Type(cell, "2017")
	cell.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	s.says(t, "No row is refused any more.")
	s.tap(t, "Back to the table")
	if b, ok := s.screen.Canvas().Focused().(*widgets.Button); !ok || b.Text != "Import" {
		t.Fatalf("the keyboard is on %v", s.screen.Canvas().Focused())
	}
	s.screen.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	s.wants(t, "2 rows read: 2 new")
}

// A table that is pasted where a listing belongs opens its dialog, and no row of it stays in the listing.
func TestATablePastedAsAListingIsTakenForATable(t *testing.T) {
	s := onResale(t, task.Inline{})
	s.window.Do(desk.Go(desk.Listing))
	field := seen.All[*widgets.Passage](s.screen.Content())[0]
	s.screen.Canvas().Focus(field)
	board := test.NewClipboard()
	board.SetContent(strings.ReplaceAll(someRows, ",", "\t"))
	field.TypedShortcut(&fyne.ShortcutPaste{Clipboard: board})
	s.says(t, "Import the clipboard", "Usable: 1 of 2 rows.")
	if field.Text != "" {
		t.Errorf("the listing says %q", field.Text)
	}
}

// What a table leaves in doubt is asked again of the next that looks alike, until it is said: what was taken in silence is not remembered.
func TestADoubtStaysUntilItIsAnswered(t *testing.T) {
	s := onResale(t, task.Inline{})
	const doubt = `Is "mileage" in miles or kilometers?`
	paste := func(mileage string) {
		s.window.Paste("asking price\tyear\tmake\tmodel\tmileage\n9500\t2018\tKettrick\tDunlin\t" + mileage + "\n")
	}
	for _, mileage := range []string{"60000", "61000"} {
		paste(mileage)
		s.says(t, doubt)
		s.tap(t, "Import")
	}
	paste("62000")
	for _, c := range seen.All[*widgets.Select](s.top()) {
		if slices.Equal(c.Options, []string{"mi", "km"}) && c.Selected == "mi" {
			c.SetSelected("mi")
			break
		}
	}
	if seen.Says(s.top(), doubt) {
		t.Error("it is asked although it was said")
	}
	s.tap(t, "Import")
	paste("63000")
	if seen.Says(s.top(), doubt) {
		t.Error("it is asked of a table like one of which it was said")
	}
}
