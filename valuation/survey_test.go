package valuation_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// wanting returns the keys of the faults of a case with that survey.
func wanting(s lot.Survey, catalogue bool) string {
	c := valuation.Defaults()
	c.Survey, c.Repair.UseCatalogue, c.Hidden.UseCatalogue = &s, catalogue, catalogue
	var keys []string
	for _, f := range c.Check() {
		if strings.HasPrefix(f.Key, "survey") || strings.HasSuffix(f.Key, "use_catalogue") {
			keys = append(keys, f.Key)
		}
	}
	return strings.Join(keys, " ")
}

func TestSurveyWordsAreChecked(t *testing.T) {
	minus := -1.0
	for want, s := range map[string]lot.Survey{
		"": {Kind: "car", Powertrain: "hybrid", Driven: "all", PartsLevel: "low", Region: "dry", Doors: 2,
			Water: &lot.Water{Height: "seat"}},
		"survey.kind":               {Kind: "boat"},
		"survey.powertrain":         {Powertrain: "steam"},
		"survey.doors":              {Doors: 7},
		"survey.missing[1]":         {Missing: []string{"wheels", "roof"}},
		"survey.mechanical[0]":      {Causes: []string{"age"}},
		"survey.water.height":       {Water: &lot.Water{}},
		"survey.water.kind":         {Water: &lot.Water{Height: "dash", Kind: "rain"}},
		"survey.water.hours":        {Water: &lot.Water{Height: "dash", Hours: &minus}},
		"survey.hail.count":         {Hail: &lot.Hail{}},
		"survey.hail.panels[0]":     {Hail: &lot.Hail{Count: "few", Panels: []string{"wing"}}},
		"survey.hail.discount.high": {Hail: &lot.Hail{Count: "few", Discount: &prob.Three{Low: .1, Likely: .5, High: 1}}},
		"survey.fire.reach":         {Fire: &lot.Fire{Where: []string{"rear"}}},
	} {
		if got := wanting(s, true); got != want {
			t.Errorf("faults at %q, want %q", got, want)
		}
	}
}

// A motorcycle is not covered: with the catalogue on, no work would read as none needed.
func TestAMotorcycleIsNotCovered(t *testing.T) {
	if got := wanting(lot.Survey{Kind: "motorcycle"}, true); got != "repair.use_catalogue hidden.use_catalogue" {
		t.Errorf("faults at %q", got)
	}
	if got := wanting(lot.Survey{Kind: "motorcycle"}, false); got != "" {
		t.Errorf("with work entered by hand: faults at %q", got)
	}
}

// invented is a catalogue in which a bent arm hidden behind the wheel brings the alignment along.
func invented() valuation.Knowledge {
	corner := []lot.Sign{{Areas: []string{"11"}}}
	return valuation.Knowledge{
		Jobs: repair.Catalogue{Currency: "USD", Jobs: []repair.Job{
			{Line: repair.Line{ID: "fender", Job: "Replace the fender"}, Calls: corner},
			{Line: repair.Line{ID: "align", Job: "Align the wheels", Outside: prob.Certain(100)}}}},
		Risks: hidden.Catalogue{Currency: "USD", Risks: []hidden.Entry{{Triggers: corner,
			Risk: hidden.Risk{ID: "arm", Name: "Bent arm", Chance: hidden.Beta{A: 1, B: 3}, Cost: prob.Certain(200),
				Brings: []hidden.Work{{ID: "align"}}}}}},
	}
}

// Alignment is planned where a part of the suspension is in doubt, as likely as the doubt is, and certain once it was seen.
func TestAHiddenRiskBringsItsWork(t *testing.T) {
	c := valuation.Defaults()
	c.Currency, c.Repair.UseCatalogue, c.Hidden.UseCatalogue = "USD", true, true
	c.Damage = []lot.Damage{{Area: "11", Extent: "functional", Depth: "bolted"}}
	chance := func() float64 {
		for _, l := range valuation.Plan(c, invented()) {
			if l.ID == "align" {
				return repair.Or(l.Chance, 1)
			}
		}
		return 0
	}
	if got := chance(); got != .25 {
		t.Errorf("an alignment at %g, the arm at 0.25", got)
	}
	if !valuation.Confirm(&c, invented(), "arm") {
		t.Fatal("the risk is not there")
	}
	if got := chance(); got != 1 {
		t.Errorf("the arm was seen bent, an alignment at %g", got)
	}
	if !slices.ContainsFunc(c.Repair.Lines, func(l repair.Line) bool { return l.ID == "seen_arm" }) {
		t.Error("no line for what was seen")
	}
}

// An old file says nothing of the survey, and means what it meant: no key of it is met, none excluded.
func TestAnOldFileKeepsItsMeaning(t *testing.T) {
	l := lot.Lot{Loss: []string{"flood"}}
	for _, s := range []lot.Sign{{Powertrains: lot.Powertrains}, {Water: lot.WaterHeights}, {Kinds: lot.Kinds}, {MinAge: 1},
		{MinMiles: 1}, {MinSoak: 1}, {Missing: lot.MissingKeys}} {
		if _, met := s.Match(&l, nil); met {
			t.Errorf("%+v is met by a lot of which nothing is known", s)
		}
	}
	if got := l.All([]lot.Damage{{Area: "water"}}); len(got) != 1 {
		t.Errorf("marked water becomes %v", got)
	}
}
