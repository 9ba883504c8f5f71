package assets_test

import (
	"fmt"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/store/csvfile"
	walktable "walkline/store/table"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// demo reads one case of the demo with the comparables that it names.
func demo(t *testing.T, name string) valuation.Case {
	t.Helper()
	data, err := assets.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read(data)
	if len(faults) > 0 {
		t.Fatalf("%s: %v", name, faults)
	}
	table, err := assets.Demo(c.Resale.Comparables)
	if err != nil {
		t.Fatal(err)
	}
	rows, _, err := csvfile.RowsOf(table, walktable.Stated{Wanted: c.Currency, Distance: "mi"})
	if err != nil {
		t.Fatalf("%s: %v", c.Resale.Comparables, err)
	}
	header := "price,kind,date,model_year,make,model,trim,mileage,mileage_unit,title,distance,upkeep,note,source"
	if !strings.HasPrefix(string(table), header+"\n") || len(rows) < 25 || len(rows) > 40 {
		t.Errorf("%s: columns, or %d rows", c.Resale.Comparables, len(rows))
	}
	c.Resale.Rows, c.Resale.Comparables = rows, ""
	return c
}

func TestDemoIsTheSaleAtHarrowFlats(t *testing.T) {
	for _, name := range assets.DemoCases() {
		c := demo(t, name)
		if c.Lot.Sale != "Harrow Flats yard" || c.Lot.SaleDate != "2026-11-28" || c.ValuedOn != "2026-11-20" || !c.Repair.UseCatalogue ||
			!c.Hidden.UseCatalogue {
			t.Errorf("%s: sale, days or catalogue", name)
		}
		if v := lot.ReadVIN(c.Lot.VIN); v.Problem != "" || !v.Digit || c.Lot.VIN[0] != '0' {
			t.Errorf("%s: VIN %s: %q, check digit right %v; its first character is to be the unused 0", name, c.Lot.VIN, v.Problem, v.Digit)
		}
		for _, r := range c.Resale.Rows {
			if r.Make != c.Lot.Make || r.Model != c.Lot.Model {
				t.Errorf("%s: a comparable is a %s %s", name, r.Make, r.Model)
			}
		}
	}
}

// The front hit pays at the price it is likely to fetch, which lies so near that a look may change the bid, the side hit only well below
// it, the flood lot at no price.
func TestDemoLotsDoAsTheyShould(t *testing.T) {
	knowledge, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, name := range assets.DemoCases() {
		c := demo(t, name)
		a, err := valuation.Value(c, knowledge)
		if err != nil {
			t.Fatal(err)
		}
		walkAway := 0.0
		if a.WalkAway != nil {
			walkAway = float64(*a.WalkAway) / 100
		}
		guess := c.Market.HammerGuess
		story := map[string]bool{
			"front.json": a.Decision == "bid" && walkAway >= guess.Likely && a.Looks.Perfect != nil && *a.Looks.Perfect > 10,
			"side.json":  a.Decision == "bid" && walkAway > guess.Low && walkAway < guess.Likely,
			"flood.json": a.Decision == "do_not_bid" && strings.Contains(fmt.Sprint(a.Reasons), "title"),
		}
		if !story[name] {
			t.Errorf("%s: %s, walk away at %.0f, hammer guess %v, %v", name, a.Decision, walkAway, *guess, a.Reasons)
		}
		for _, w := range a.Warnings {
			if strings.Contains(w, "informs no risk") {
				t.Errorf("%s: %s", name, w)
			}
		}
	}
}

func TestDemoFilesAreThoseOfTheCases(t *testing.T) {
	for _, name := range assets.DemoCases() {
		if _, err := assets.Demo(name); err != nil {
			t.Error(err)
		}
	}
	if _, err := assets.Demo("nowhere.json"); err == nil || !strings.Contains(err.Error(), "nowhere.json") {
		t.Errorf("a document that is not there gives %v", err)
	}
}
