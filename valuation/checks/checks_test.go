package checks_test

import (
	"slices"
	"strings"
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
		"certificate of destruction": 1, "Certificate_of_Destruction": 1, "junk title": 1, "Junking Certificate": 1, "scrap certificate": 1,
		"non-repairable":                    1,
		"Nonrepairable Vehicle Certificate": 1, "Dismantled Title": 1, "Salvage, parts only": 1, "08": 1, "35": 1,
		"salvage certificate": 0, "11": 0, "Certificate of Title": 0, "salvage": 0, "rebuilt": 0, "clear": 0, "": 0} {
		if got := stops(lot.Lot{VIN: goodVIN, ModelYear: 2005, Title: lot.Title{Document: word}}); len(got) != want {
			t.Errorf("document %q: %q", word, got)
		}
		if got := stops(lot.Lot{VIN: goodVIN, ModelYear: 2005, Title: lot.Title{Document: "salvage",
			Brands: []string{"flood", word}}}); len(got) != want {
			t.Errorf("brand %q: %q", word, got)
		}
	}
}

// The words in any order: parts, scrap, export, dismantling, what can't be rebuilt (common practice, no source).
func TestDeadWordsInAnyOrderStop(t *testing.T) {
	for _, word := range []string{"for parts only", "Only Parts", "parts vehicle", "export only", "For Export", "certificate for export",
		"to be dismantled", "dismantler's certificate",
		"Salvage - Scrapped", "rebuildable: no", "not rebuildable", "unrebuildable", "non-rebuildable salvage", "cannot be repaired",
		"may not be rebuilt", "Salvage certificate, unrepairable",
		"irreparable", "destroyed", "hulk", "not registrable", "never to be registered"} {
		if got := stops(lot.Lot{VIN: goodVIN, Title: lot.Title{Document: word}}); len(got) != 1 || !strings.Contains(got[0],
			"may not go back on the road") {
			t.Errorf("%q: %q", word, got)
		}
	}
}

// What nobody can read stops the bid until it is answered, and so does what is no title; an answer of "no" trouble settles it.
func TestDocumentsThatMustBeAnsweredBeforeABid(t *testing.T) {
	for word, id := range map[string]string{"no title": "title_none", "Bill of Sale": "title_none", "sale bill only": "title_none",
		"none": "title_none", "title missing": "title_none", "papers lost": "title_none",
		"junkyard find": "title_document_unheard", "form 27b": "title_document_unheard", "pending": "title_document_unheard",
		"salvage": "", "Salvage Certificate - water damage": "", "rebuilt salvage": "", "Clean Title": "", "theft recovery": "",
		"manufacturer buyback": "", "unknown": "", "not yet known": "", "": ""} {
		subject := checks.Subject{Lot: lot.Lot{VIN: goodVIN, Title: lot.Title{Document: word}}}
		open := checks.Stops(checks.List(subject))
		subject.Answers = map[string]string{id: "yes"}
		bad := checks.Stops(checks.List(subject))
		subject.Answers = map[string]string{id: "no"}
		settled := checks.Stops(checks.List(subject))
		if want := map[bool]int{true: 1}[id != ""]; len(open) != want || len(bad) != want || len(settled) != 0 {
			t.Errorf("%q: open %q, answered yes %q, no %q", word, open, bad, settled)
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
	for _, c := range []struct {
		vin   string
		year  int
		id    string
		words string
	}{
		{"", 2005, "vin_missing", "windshield"},
		{"1G4AH59H45G118331", 2005, "vin_digit", "should be 1"},                    // one changed character: 408 mod 11 = 1
		{"1G4AH59H45G118314", 2005, "vin_digit", "1 and 4 at positions 16 and 17"}, // the last two of the sample, swapped
		{goodVIN, 2035, "vin_cycle", "model year 2005, the facts say 2035"},        // 565.15(b)
		{"WG4AH59H45G118341", 2019, "vin_year", "does not say model year 2019"},    // not made for the US: warned, no stop
		{"WG4AH59H45G118341", 2005, "vin_digit", "hints at Europe"},
		{goodVIN, 2005, "vin_differs", "A, J and 1 count alike"},
		{"1M8GDM9AXKP042788", 1989, "vin_differs", "D and M at positions 5 and 6"}, // both count 4
		{"1A9AH59H45G118341", 2005, "vin_differs", "positions 12 to 14"},           // 565.15(a)
	} {
		items := checks.List(checks.Subject{Lot: lot.Lot{VIN: c.vin, ModelYear: c.year}})
		if !slices.ContainsFunc(items, func(i checks.Item) bool {
			return i.ID == c.id && i.Kind == "title" && strings.Contains(i.Text+" "+i.Why, c.words)
		}) {
			t.Errorf("VIN %q, %d: no item %s with %q among %+v", c.vin, c.year, c.id, c.words, items)
		}
	}
}

// Source: 49 CFR 580.17, at both sides of the day; the wordings are those of appendix B.
func TestOdometerItem(t *testing.T) {
	for _, c := range []struct {
		lot   lot.Lot
		on    lot.Date
		words string
	}{
		{lot.Lot{ModelYear: 2011}, "2030-12-31", "until 2031-01-01"},
		{lot.Lot{ModelYear: 2011}, "2031-01-01", "exempt from the federal statement since 2031-01-01"},
		{lot.Lot{ModelYear: 2010}, "2026-11-28", "since 2020-01-01"},
		{lot.Lot{}, "2026-11-28", "ten years after a model year to 2010"},
		{lot.Lot{ModelYear: 2019, OdometerStatus: "not_actual"}, "2026-11-28", "WARNING - ODOMETER DISCREPANCY"},
		{lot.Lot{ModelYear: 2019, OdometerStatus: "exceeds_limits"}, "2026-11-28", "in excess of the mechanical limits"},
	} {
		items := checks.List(checks.Subject{Lot: c.lot, On: c.on})
		at := slices.IndexFunc(items, func(i checks.Item) bool { return i.ID == "odometer_statement_missing" })
		if at < 0 || !strings.Contains(items[at].Why, c.words) {
			t.Errorf("%d on %s: %+v", c.lot.ModelYear, c.on, items[max(at, 0)])
		}
	}
}

func TestABrandThatTheVocabularyDoesNotKnowIsAskedAbout(t *testing.T) {
	ids := func(brands ...string) (out []string) {
		for _, i := range checks.List(checks.Subject{Lot: lot.Lot{Title: lot.Title{Brands: brands}}}) {
			if strings.HasPrefix(i.ID, "brand_") {
				out = append(out, i.ID)
			}
		}
		return out
	}
	if got := ids("Flood damage", "hail", "Bruised", "rebuilt"); !slices.Equal(got, []string{"brand_strange_3"}) {
		t.Errorf("%v", got)
	}
}

func TestListStatesAndOrder(t *testing.T) {
	risk := hidden.Risk{ID: "rail", Name: "bent rail", Findings: []hidden.Evidence{{Finding: "gaps"}, {Finding: "ripples"}, {Finding: "wear"}}}
	findings := []hidden.Finding{{ID: "gaps", Text: "Uneven gaps?"}, {ID: "ripples", Text: "Ripples?"}, {ID: "wear", Text: "Wear?"},
		{ID: "mud", Text: "Mud?"}}
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
