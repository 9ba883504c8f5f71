package store

import (
	"math"
	"slices"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
)

// A lot and a frozen case of the first format, as the version of its day wrote them (testdata/format1.sql), are read and valued by this
// version, alike where the edit between them says nothing of the bid; what the file can't say is named, not made up.
func TestTheOldestFileIsValuedAndSaysWhatIsMissing(t *testing.T) {
	know, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	s := reopened(t, landedFile(t, 1))
	frozen, doubts, err := s.FrozenCases(t.Context())
	if err != nil || len(doubts) > 0 {
		t.Fatal(doubts, err)
	}
	for name, c := range map[string]valuation.Case{"lot": read(t, s, 1).Case, "frozen": frozen[1]} {
		if faults := c.Check(); len(faults) > 0 {
			t.Fatalf("%s: %v", name, faults)
		}
		a, err := valuation.Value(c, know)
		if err != nil || a.WalkAway == nil || len(a.Needs) > 0 || math.IsNaN(a.Profit.Mean) || !(a.Profit.LossChance <= *c.Rules.MaxLossChance) {
			t.Fatalf("%s: %v, %+v", name, err, a.Profit)
		}
		if len(c.WaysOut.Plans) > 0 || a.StopLine != nil || a.Plan != valuation.Rebuild {
			t.Errorf("%s: ways out are made up: %+v, plan %s", name, c.WaysOut, a.Plan)
		}
		says := func(words string) bool {
			return slices.ContainsFunc(a.Warnings, func(w string) bool { return strings.Contains(w, words) })
		}
		if !says("comparable") {
			t.Errorf("%s: nothing said of what it rests on: %q", name, a.Warnings)
		}
	}
	bare := read(t, reopened(t, landedFile(t, 1, `UPDATE lots SET title_document = '', make = '', model = '', model_year = 0, vin = '';
		DELETE FROM repair_lines; DELETE FROM risks; DELETE FROM findings; DELETE FROM surveys; DELETE FROM comparables;`)), 1).Case
	bare.Resale.Guess, bare.Findings = nil, nil
	var keys []string
	for _, n := range valuation.Missing(bare, know) {
		keys = append(keys, n.Key)
	}
	if want := []string{"lot", "lot.title.document", "resale"}; !slices.Equal(slices.DeleteFunc(keys,
		func(k string) bool { return k == "damage" }), want) {
		t.Errorf("a bare lot of the first format lacks %q, want %q and perhaps damage", keys, want)
	}
}
