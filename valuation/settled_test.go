package valuation_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// leaky is a knowledge of one risk and the job that puts it right, and a lot whose survey raises the risk.
func leaky() (valuation.Case, valuation.Knowledge) {
	front := []lot.Sign{{Areas: []string{"12"}}}
	k := valuation.Knowledge{
		Jobs: repair.Catalogue{Jobs: []repair.Job{{Line: repair.Line{ID: "radiator", Job: "Replace the radiator",
			Materials: prob.Certain(200)}, Settles: []string{"leak"}}}},
		Risks: hidden.Catalogue{Risks: []hidden.Entry{{Risk: hidden.Risk{ID: "leak", Name: "Radiator cracked", Chance: hidden.Beta{A: 2,
			B: 3}, Cost: prob.Certain(300)}, Triggers: front},
			{Risk: hidden.Risk{ID: "fan", Name: "Fan broken", Chance: hidden.Beta{A: 1, B: 3}, Cost: prob.Certain(80)}, Triggers: front}}},
	}
	c := small(1)
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue, c.Repair.Lines, c.Hidden.Risks = true, true, nil, nil
	c.Run.Scenarios, c.Hidden.SharedLoading = 1<<14, 0
	c.Damage = []lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}}
	return c, k
}

// By hand: .4 of 300 and .25 of 80 are 140 of hidden damage. A radiator that is replaced for certain leaves 20 and says so; one
// that is needed six times in ten leaves .4 x .4 of 300.
func TestKnownWorkTakesItsHiddenDamageOut(t *testing.T) {
	half := .6
	for _, w := range []struct {
		name  string
		line  repair.Line
		want  float64
		taken bool
	}{
		{"the job of the catalogue", repair.Line{ID: "radiator", Job: "mine", Materials: prob.Certain(150)}, 20, true},
		{"a line of its name", repair.Line{ID: "x", Job: " replace the Radiator"}, 20, true},
		{"a line that may be needed", repair.Line{ID: "radiator", Job: "mine", Chance: &half}, .4*.4*300 + 20, false},
		{"a line that was struck out", repair.Line{ID: "radiator", Job: "mine", Removed: true}, 140, false},
		{"a line of the risk's name", repair.Line{ID: "z", Job: "radiator  cracked"}, 20, true},
		{"a line of the risk's id", repair.Line{ID: "leak", Job: "mine"}, 20, true},
		{"another line", repair.Line{ID: "y", Job: "Replace the hood"}, 140, false},
	} {
		c, k := leaky()
		c.Repair.Lines = []repair.Line{w.line}
		a := value(t, c, k)
		if math.Abs(a.Hidden.Mean-w.want) > .3 {
			t.Errorf("%s: hidden damage %.2f, want %.2f", w.name, a.Hidden.Mean, w.want)
		}
		said := slices.ContainsFunc(a.Warnings, func(s string) bool { return strings.Contains(s, `"Radiator cracked" is taken out`) })
		if said != w.taken || slices.ContainsFunc(valuation.Risks(c, k), func(r valuation.RiskFigure) bool { return r.ID == "leak" }) == w.taken {
			t.Errorf("%s: said %v, want %v: %q", w.name, said, w.taken, a.Warnings)
		}
	}
}

// A panel that the user adds carries its refinish, whoever adds it, and one that is struck out does not.
func TestAnAddedPanelCarriesItsRefinish(t *testing.T) {
	k := shipped(t)
	refinish := func(lines ...repair.Line) float64 {
		c := demoLot(t)
		c.Damage, c.Repair.Lines = []lot.Damage{{Area: "06", Extent: "minor", Depth: "skin"}}, lines
		for _, l := range valuation.Plan(c, k) {
			if l.ID == "refinish_fender_left" {
				return repair.Or(l.Chance, 1)
			}
		}
		return 0
	}
	if got := refinish(repair.Line{ID: "own", Job: "Replace the left front fender"}); got != 1 {
		t.Errorf("a fender in the catalogue's words: refinish %g", got)
	}
	part := .3
	for want, line := range map[float64]repair.Line{1: {ID: "fender_left", Job: "fender"}, .3: {ID: "fender_left", Job: "fender",
		Chance: &part}, 0: {ID: "fender_left", Job: "fender", Removed: true}} {
		if got := refinish(line); math.Abs(got-want) > 1e-12 {
			t.Errorf("a fender %+v brings its refinish with a chance of %g, want %g", line, got, want)
		}
	}
}
