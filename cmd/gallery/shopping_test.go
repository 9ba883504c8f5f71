package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
)

// The shopping list of the open lot, and of several marked ones, is on screen, on paper and in a table, all from the same rows.
func TestTheShoppingListOfOneLotAndOfSeveral(t *testing.T) {
	s, _ := worksheet(t, "27", '3')
	s.press(fyne.KeyG)
	lists := seen.All[*table.Table](s.top())
	if len(lists) != 2 {
		t.Fatalf("%d tables in the dialog", len(lists))
	}
	pick, parts := lists[0], lists[1]
	one := parts.Facts()
	if len(one) < 10 || !strings.Contains(strings.Join(one, " "), "27") {
		t.Fatalf("the list of lot 27 holds %d rows: %q", len(one), one)
	}
	of := seen.All[*widgets.Select](s.top())[0]
	of.SetSelectedIndex(len(of.Options) - 1)
	all := parts.Facts()
	if len(all) <= len(one) {
		t.Errorf("%d rows of all lots, %d of one", len(all), len(one))
	}
	// One lot after the other is taken off the list by its box, down to none, and one comes back.
	for row := range pick.Rows() {
		pick.SelectRow(row)
		pick.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	}
	if none := parts.Facts(); len(none) != 1 || !seen.Says(s.top(), "No lot is ticked.") || of.Selected != "" {
		t.Errorf("of no lot: %q, chosen %q", none, of.Selected)
	}
	pick.SelectRow(slices.IndexFunc(pick.Facts(), func(row string) bool { return strings.HasPrefix(row, "Lot 27,") }))
	pick.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	if again := parts.Facts(); !slices.Equal(again, one) {
		t.Errorf("lot 27 ticked again holds %d rows, was %d", len(again), len(one))
	}
	s.tap(t, "Close")
	folder := t.TempDir()
	for button, start := range map[string]string{"Print…": "%PDF-", "As a table (CSV)…": "lot,vehicle,part,for"} {
		s.press(fyne.KeyG)
		of = seen.All[*widgets.Select](s.top())[0]
		of.SetSelectedIndex(len(of.Options) - 1)
		pick = seen.All[*table.Table](s.top())[0]
		pick.OnTick(0, false) // all but the first
		rows := len(seen.All[*table.Table](s.top())[1].Facts())
		s.tap(t, button)
		to := filepath.Join(folder, strings.Trim(start, "%-")[:3])
		seen.All[*widgets.TextEntry](s.top())[0].SetText(to)
		s.tap(t, "Save")
		data, err := os.ReadFile(to)
		if err != nil || !bytes.HasPrefix(data, []byte(start)) {
			t.Errorf("%s: %v, %.30q", button, err, data)
		}
		if n := bytes.Count(data, []byte("\n")); start[0] == 'l' && (n != rows+1 || rows >= len(all)) {
			t.Errorf("the table has %d lines, the screen %d rows, of all lots %d", n, rows, len(all))
		}
	}
}
