package table

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// A cell whose words are cut keeps them whole, to be told under the pointer; one that shows them all has nothing to tell.
func TestCutWordsAreKeptWhole(t *testing.T) {
	test.NewTempApp(t)
	tb := New([]Column{{Title: "Work", Width: 60}})
	tb.SetRows([]Row{{Cells: []string{"Replace the front bumper cover"}}, {Cells: []string{"oil"}}})
	for row, want := range []string{"Replace the front bumper cover", ""} {
		c := newCell(tb)
		c.Resize(fyne.NewSize(60, 24))
		if tb.updateCell(widget.TableCellID{Row: row}, c); c.whole != want {
			t.Errorf("row %d tells %q, want %q", row, c.whole, want)
		}
	}
}
