package view

import (
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// A table shows days as the window says, and is sorted and searched by the days themselves.
func TestTablesShowDaysInTheSystemsManner(t *testing.T) {
	desk.ShowDays(lot.MonthFirst.Show)
	defer desk.ShowDays(func(d lot.Date) string { return string(d) })
	var list []book.Bought
	for _, day := range []lot.Date{"2026-11-27", "2026-04-03", "2025-12-01"} {
		list = append(list, book.Bought{State: lot.Won, Build: build.Build{Dates: build.Dates{Bought: day}}})
	}
	rows := Builds(list, nil, "2026-11-30", BuildFilter{})
	for i, want := range []string{"Dec 1, 2025", "Apr 3, 2026", "Nov 27, 2026"} {
		if rows[i].Cells[0] != want {
			t.Errorf("row %d is of %q, not %q", i, rows[i].Cells[0], want)
		}
	}
	if got := Builds(list, nil, "2026-11-30", BuildFilter{Search: "2026-04"}); len(got) != 1 || got[0].Cells[0] != "Apr 3, 2026" {
		t.Errorf("a search leaves %+v", got)
	}
}
