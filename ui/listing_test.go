package ui

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/widgets"
)

// Laying out 5,000 refused rows as one text once froze the window for most of a minute.
func TestAListOfThousandsBuildsTheRowsOnShow(t *testing.T) {
	test.NewTempApp(t)
	lines := []string{strings.Repeat("9", 1_000_000)}
	for i := range 5000 {
		lines = append(lines, fmt.Sprintf("line %d: no price", i+2))
	}
	listing := newListing(lines).(*fyne.Container)
	w := test.NewTempWindow(t, listing)
	w.Resize(fyne.NewSize(760, 420))
	if rows := len(test.LaidOutObjects(listing)); rows > 500 {
		t.Errorf("%d objects for %d sentences", rows, len(lines))
	}
	list := found[*widgets.List](listing)[0]
	whole := found[*widget.Label](listing)[0]
	if n := len([]rune(whole.Text)); n != mostShown+1 {
		t.Errorf("%d letters of the first sentence are shown", n)
	}
	list.Select(5000)
	if whole.Text != "line 5001: no price" {
		t.Errorf("%q", whole.Text)
	}
}
