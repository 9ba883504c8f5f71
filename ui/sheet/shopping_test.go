package sheet_test

import (
	"strings"
	"testing"

	"walkline/ui/sheet"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// A printed shopping list names every lot, part, source and use, in their order, what a yard said, and each caution once; a list of
// many pages loses none.
func TestTheShoppingListReadsBack(t *testing.T) {
	list := []valuation.Wanted{
		{Lot: "14", Vehicle: "2019 Ostrane Pell", Currency: "USD", Line: "hood", For: "Replace the hood", Part: "hood panel", Need: 1, Turn: 1,
			Source: "used", Price: prob.Three{Low: 60, Likely: 110, High: 190}, Has: .7, Caution: "Sheet edges cut.",
			Said: &repair.Quote{Yard: "Harrow Flats parts", Phone: "555-0142", Day: "2026-11-24", Price: 180}},
		{Lot: "14", Vehicle: "2019 Ostrane Pell", Currency: "USD", Line: "hood", For: "Replace the hood", Part: "hood panel", Need: 1, Turn: 2,
			Source: valuation.Fallback, Price: prob.Certain(700), Has: 1, Caution: "Sheet edges cut."},
	}
	for range 150 {
		list = append(list, valuation.Wanted{Lot: "15", Currency: "USD", For: "Replace the lamp", Part: "lamp shell", Need: .4, Turn: 1,
			Source: "used"})
	}
	pdf, err := sheet.Shopping(sheet.List{Parts: list, Printed: "2026-11-25"})
	if err != nil {
		t.Fatal(err)
	}
	pages := read(t, pdf)
	all := strings.Join(pages, " ")
	for _, want := range []string{"Lot 14 · 2019 Ostrane Pell · USD", "hood panel: Replace the hood, 100 %", "110 (60 to 190)",
		"Harrow Flats parts", "USD 180", "2026-11-24", "555-0142", "if no source has it", "Lot 15", "Sheet edges cut.", "printed 2026-11-25"} {
		if !strings.Contains(all, want) {
			t.Errorf("the list lacks %q", want)
		}
	}
	if n := strings.Count(all, "lamp shell"); n != 150 || len(pages) < 3 || strings.Count(all, "Sheet edges cut.") != 1 {
		t.Errorf("%d lamps on %d pages", n, len(pages))
	}
	if _, err := sheet.Shopping(sheet.List{Printed: lot.Date("x")}); err == nil {
		t.Error("a list without a date is printed")
	}
}
