package main

import (
	"bytes"
	"os"
	"path/filepath"
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
	if len(lists) != 1 {
		t.Fatalf("%d tables in the dialog", len(lists))
	}
	one := lists[0].Facts()
	if len(one) < 10 || !strings.Contains(strings.Join(one, " "), "27") {
		t.Fatalf("the list of lot 27 holds %d rows: %q", len(one), one)
	}
	of := seen.All[*widgets.Select](s.top())[0]
	of.SetSelectedIndex(len(of.Options) - 1)
	all := lists[0].Facts()
	if len(all) <= len(one) {
		t.Errorf("%d rows of all lots, %d of one", len(all), len(one))
	}
	s.tap(t, "Close")
	folder := t.TempDir()
	for button, start := range map[string]string{"Print…": "%PDF-", "As a table (CSV)…": "lot,vehicle,part,for"} {
		s.press(fyne.KeyG)
		of = seen.All[*widgets.Select](s.top())[0]
		of.SetSelectedIndex(len(of.Options) - 1)
		s.tap(t, button)
		to := filepath.Join(folder, strings.Trim(start, "%-")[:3])
		seen.All[*widgets.TextEntry](s.top())[0].SetText(to)
		s.tap(t, "Save")
		data, err := os.ReadFile(to)
		if err != nil || !bytes.HasPrefix(data, []byte(start)) {
			t.Errorf("%s: %v, %.30q", button, err, data)
		}
		if n := bytes.Count(data, []byte("\n")); start[0] == 'l' && n != len(all)+1 {
			t.Errorf("the table has %d lines, the screen %d rows", n, len(all))
		}
	}
}
