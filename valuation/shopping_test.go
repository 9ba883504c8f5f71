package valuation_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"walkline/store/csvfile"
	"walkline/valuation"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// A shopping list holds every part of every line, each source once, in the order in which they are asked, and what each is for.
func TestShoppingListHoldsEveryPartWithItsSources(t *testing.T) {
	half := .5
	line := repair.Line{ID: "r1", Job: "Replace the hood", Area: "12", Chance: &half,
		Parts: []repair.Part{{Name: "hood", Options: []repair.Option{
			{Source: "new_maker", Price: prob.Certain(600)},
			{Source: "used", Price: prob.Three{Low: 150, Likely: 200, High: 300}, Chance: &half,
				Quote: &repair.Quote{Yard: "Low Mill parts", Phone: "=555", Day: "2026-11-19", Price: 180}}},
			Fallback: &repair.Fallback{Price: prob.Certain(900)}}}}
	sure := repair.Line{ID: "r2", Job: "Replace the lamp",
		Parts: []repair.Part{{Name: "lamp", Options: []repair.Option{{Source: "used", Price: prob.Certain(80)}}}}}
	c := valuation.Defaults()
	c.Currency, c.Lot.Number, c.Lot.ModelYear, c.Lot.Make = "USD", "14", 2019, "Ostrane"
	c.Repair.Lines = []repair.Line{line, sure}
	list := valuation.Shopping([]valuation.Case{c, c}, valuation.Knowledge{})
	if len(list) != 8 {
		t.Fatalf("%d rows of two lots with four sources each: %+v", len(list), list)
	}
	if x := list[0]; x.Part != "lamp" || x.For != "Replace the lamp" || x.Vehicle != "2019 Ostrane" || x.Need != 1 {
		t.Errorf("what is certain does not stand first: %+v", x)
	}
	if x := list[1]; x.Source != "used" || x.Turn != 1 || x.Said == nil || x.Said.Price != 180 || x.Price.Likely != 200 || x.Has != .5 {
		t.Errorf("the quoted source: %+v", x)
	}
	if x := list[3]; x.Source != valuation.Fallback || x.Turn != 3 || x.Price.Likely != 900 {
		t.Errorf("the fallback: %+v", x)
	}
	rows, err := csv.NewReader(strings.NewReader(string(csvfile.WriteParts(list)))).ReadAll()
	if err != nil || len(rows) != 9 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	row := strings.Join(rows[2], "|")
	for _, want := range []string{"14|2019 Ostrane|hood|Replace the hood|12|0.50|1|used|150.00|200.00|300.00",
		"|180.00|Low Mill parts|'=555|2026-11-19|USD"} {
		if !strings.Contains(row, want) {
			t.Errorf("%s lacks %s", row, want)
		}
	}
}
