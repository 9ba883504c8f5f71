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

// TestThePriceIsAskedAbout asks for the chances of the price, walks them to the highest, and goes back to the comparables.
func TestThePriceIsAskedAbout(t *testing.T) {
	s, _ := worksheet(t, "27", '4')
	s.choose("what it may bring")
	s.wants(t, "chance of that or more 50 %")
	chart := seen.All[*plot.Curve](s.screen.Content())[0]
	s.screen.Canvas().Focus(chart)
	seen.Press(chart, fyne.KeyEnd)
	s.wants(t, "chance of that or more 0.")
	s.choose("price against mileage")
	if got := seen.All[*plot.Curve](s.screen.Content()); len(got) != 0 {
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
