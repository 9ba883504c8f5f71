package main

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/ui/desk"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
)

// TestThePriceIsAskedAbout asks for the chances of the price: half lies on either side of the middle, and a key moves the line.
func TestThePriceIsAskedAbout(t *testing.T) {
	s, _ := worksheet(t, "27", '4')
	s.choose("what it may bring")
	s.wants(t, "less 50 %", "more 50 %", "8 in 10 bring")
	chart := seen.All[*plot.BreakEven](s.screen.Content())[0]
	s.screen.Canvas().Focus(chart)
	seen.Press(chart, fyne.KeyEnd)
	s.wants(t, "more 0.")
	s.choose("price against mileage")
	if got := seen.All[*plot.BreakEven](s.screen.Content()); len(got) != 0 {
		t.Error("the chances are still in view")
	}
}

// TestAWarningLeadsToItsRow makes one price absurd: the section says so, what it means, and the button goes to the row.
func TestAWarningLeadsToItsRow(t *testing.T) {
	s, _ := worksheet(t, "27", '4')
	s.window.Do(desk.EditLot("slip", func(c *valuation.Case) { c.Resale.Rows[3].Price *= 10 }))
	s.wants(t, "does not fit its age, mileage and equipment")
	rows := seen.All[*table.Table](s.screen.Content())[0]
	for _, b := range seen.Texts(s.screen.Content()) {
		if b == "Go to 1 such row" {
			s.tap(t, b)
		}
	}
	if rows.Selected() != 3 {
		t.Errorf("row %d is selected", rows.Selected())
	}
	if !slices.ContainsFunc(seen.All[*plot.Scatter](s.screen.Content()), func(p *plot.Scatter) bool { return p.Selected() >= 0 }) {
		t.Error("its point is not pointed out")
	}
}
