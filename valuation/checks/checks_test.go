package checks_test

import (
	"slices"
	"testing"

	"walkline/valuation/checks"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
)

const goodVIN = "1G4AH59H45G118341" // 49 CFR 565.15(c), sample table; position 10 is 5: model year 2005

func stops(l lot.Lot) []string { return checks.Stops(checks.List(checks.Subject{Lot: l})) }

// Wording: AAMVA D20 as published in NIEM 6.0 (junk 08, dismantled 07, parts only 35, salvage 11, rebuilt 09).
func TestDeadTitlesStop(t *testing.T) {
	for word, want := range map[string]int{"junk": 1, "Junk": 1, "parts_only": 1, "parts only": 1, "dismantled": 1, "scrap": 1,
		"certificate of destruction": 1, "salvage": 0, "rebuilt": 0, "clear": 0, "": 0} {
		if got := stops(lot.Lot{VIN: goodVIN, ModelYear: 2005, Title: lot.Title{Document: word}}); len(got) != want {
			t.Errorf("document %q: %q", word, got)
		}
		if got := stops(lot.Lot{VIN: goodVIN, ModelYear: 2005, Title: lot.Title{Document: "salvage", Brands: []string{"flood", word}}}); len(got) != want {
			t.Errorf("brand %q: %q", word, got)
		}
	}
}

func TestVINStops(t *testing.T) {
	for _, c := range []struct {
		vin  string
		year int
		want int
	}{
		{goodVIN, 2005, 0}, {goodVIN, 0, 0}, {goodVIN, 2035, 0}, // code 5 means 2005 or 2035
		{goodVIN, 2006, 1},
		{"1G4AH59H45G11834", 2005, 1},  // 16 characters
		{"1G4AH59H45G11834O", 2005, 1}, // the letter O is not used
		{"", 2005, 0},                  // not entered yet: an open item, no stop
		{"1G4AH59H45G118331", 2005, 0}, // wrong check digit: an item, no stop
	} {
		if got := stops(lot.Lot{VIN: c.vin, ModelYear: c.year}); len(got) != c.want {
			t.Errorf("VIN %q, year %d: %q", c.vin, c.year, got)
		}
	}
}

func TestVINItems(t *testing.T) {
	for vin, id := range map[string]string{"": "vin_missing", "1G4AH59H45G118331": "vin_digit"} {
		items := checks.List(checks.Subject{Lot: lot.Lot{VIN: vin, ModelYear: 2005}})
		if !slices.ContainsFunc(items, func(i checks.Item) bool { return i.ID == id && i.Kind == "title" }) {
			t.Errorf("VIN %q: no item %s", vin, id)
		}
	}
}

func TestListStatesAndOrder(t *testing.T) {
	risk := hidden.Risk{ID: "rail", Name: "bent rail", Findings: []hidden.Evidence{{Finding: "gaps"}, {Finding: "ripples"}, {Finding: "wear"}}}
	findings := []hidden.Finding{{ID: "gaps", Text: "Uneven gaps?"}, {ID: "ripples", Text: "Ripples?"}, {ID: "wear", Text: "Wear?"}, {ID: "mud", Text: "Mud?"}}
	items := checks.List(checks.Subject{Lot: lot.Lot{VIN: goodVIN, ModelYear: 2006, Title: lot.Title{Document: "junk"}},
		Risks: []hidden.Risk{risk}, Findings: findings, Answers: map[string]string{"gaps": "yes", "ripples": "no"}})
	state := map[string]string{}
	rank, last := map[string]int{"stop": 0, "title": 1, "paper": 2, "inspection": 3}, 0
	for _, i := range items {
		state[i.ID] = i.State
		if rank[i.Kind] < last {
			t.Errorf("%s (%s) stands after a later kind", i.ID, i.Kind)
		}
		last = rank[i.Kind]
	}
	for id, want := range map[string]string{"gaps": "bad", "ripples": "ok", "wear": "open", "mud": ""} {
		if state[id] != want {
			t.Errorf("%s is %q, want %q", id, state[id], want)
		}
	}
	if got := len(checks.Stops(items)); got != 2 {
		t.Errorf("%d stops for a junk title and a VIN of another year", got)
	}
}
