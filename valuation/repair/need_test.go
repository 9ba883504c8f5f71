package repair_test

import (
	"slices"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// together is invented: a door that may be replaced brings its paint; a complete door covers both; painting spares a blend.
func together() repair.Catalogue {
	at := []lot.Sign{{Areas: []string{"03"}}}
	cost := prob.Certain(100)
	return repair.Catalogue{Jobs: []repair.Job{
		{Line: repair.Line{ID: "complete", Job: "Fit a complete door", Chance: chance(.4), Outside: cost}, Calls: at,
			Covers: []string{"door"}},
		{Line: repair.Line{ID: "door", Job: "Replace the door", Chance: chance(.5), Outside: cost}, Calls: at,
			Brings: []repair.Brought{{ID: "paint"}}},
		{Line: repair.Line{ID: "paint", Job: "Paint the door", Outside: cost}},
		{Line: repair.Line{ID: "blend", Job: "Blend the door", Chance: chance(.8), Outside: cost}, Calls: at},
		{Line: repair.Line{ID: "align", Job: "Align", Outside: cost}},
	}}
}

// What a job brings is drawn with it, in the same scenarios; what an assembly covers is never done beside it.
func TestBroughtWorkIsThereWithWhatBringsIt(t *testing.T) {
	c := together()
	c.Jobs[2].Spares = []string{"blend"}
	cause := repair.Cause{ID: "arm", Name: "Bent arm", Chance: .2, Brings: []repair.Brought{{ID: "align"}}}
	lines := byID(repair.Plan(nil, c, lot.Lot{}, []lot.Damage{{Area: "03"}}, cause))
	p := repair.NewPlayer(setting(30, 5))
	p.There["arm"] = []int32{1, 5, 9}
	at := map[string][]int32{}
	for id, l := range lines {
		at[id] = p.Draw(l).At
	}
	if len(at["door"]) == 0 || !slices.Equal(at["door"], at["paint"]) {
		t.Errorf("the door is replaced %d times and painted %d times", len(at["door"]), len(at["paint"]))
	}
	if !slices.Equal(at["align"], []int32{1, 5, 9}) {
		t.Errorf("the alignment is there in %v", at["align"])
	}
	for _, i := range at["door"] {
		if slices.Contains(at["complete"], i) || slices.Contains(at["blend"], i) {
			t.Fatalf("in scenario %d the door is replaced, and a complete one fitted or its color blended", i)
		}
	}
	n := float64(len(p.Factor))
	for id, want := range map[string]float64{"complete": .4, "door": .3, "paint": .3, "blend": .56, "align": .2} {
		near(t, "planned chance of "+id, repair.Or(lines[id].Chance, 1), want, 1e-9)
		if id != "align" {
			near(t, "share of "+id, float64(len(at[id]))/n, want, .03)
		}
	}
}

// A chance moves by its odds: 0.5 times odds of 3 is 0.75; a sign that is not met moves nothing; a job ruled out is not planned.
func TestMovesAndNevers(t *testing.T) {
	l := lot.Lot{Survey: &lot.Survey{Powertrain: "electric"}}
	job := repair.Job{Line: repair.Line{ID: "a", Job: "Work", Chance: chance(.5)}, Calls: []lot.Sign{{Areas: []string{"12"}}},
		Moves: []lot.Move{{When: lot.Sign{Powertrains: []string{"electric"}}, Odds: 3}, {When: lot.Sign{Extents: []string{"minor"}},
			Odds: 9}}}
	plan := func() []repair.Line {
		return repair.Plan(nil, repair.Catalogue{Jobs: []repair.Job{job}}, l, []lot.Damage{{Area: "12", Extent: "functional"}})
	}
	near(t, "the moved chance", *plan()[0].Chance, .75, 1e-12)
	job.Never = []lot.Sign{{Powertrains: []string{"electric", "hybrid"}}}
	if len(plan()) != 0 {
		t.Error("work that such a vehicle has no use for is planned")
	}
}

// Prices follow the level of the vehicle's parts; freight and hours stay.
func TestPriceLevelScalesWhatIsBought(t *testing.T) {
	l := lot.Lot{Survey: &lot.Survey{PartsLevel: "high"}}
	c := repair.Catalogue{Scales: []lot.Scale{{When: lot.Sign{Levels: []string{"high"}}, Parts: 1.5}},
		Jobs: []repair.Job{{Calls: []lot.Sign{{Areas: []string{"12"}}},
			Line: repair.Line{ID: "a", Job: "Work", Hours: map[string]prob.Three{"body": prob.Certain(2)}, Outside: prob.Certain(100),
				Materials: prob.Certain(10),
				Parts: []repair.Part{{Name: "part", Options: []repair.Option{{Source: "used", Price: prob.Certain(200),
					Freight: prob.Certain(40)}}, Fallback: &repair.Fallback{Price: prob.Certain(400)}}}}}}}
	x := repair.Plan(nil, c, l, []lot.Damage{{Area: "12"}})[0]
	if x.Outside.Likely != 150 || x.Materials.Likely != 10 || x.Hours["body"].Likely != 2 || x.Parts[0].Options[0].Price.Likely != 300 ||
		x.Parts[0].Options[0].Freight.Likely != 40 || x.Parts[0].Fallback.Price.Likely != 600 {
		t.Errorf("%+v", x)
	}
	if c.Jobs[0].Parts[0].Options[0].Price.Likely != 200 || c.Jobs[0].Parts[0].Fallback.Price.Likely != 400 {
		t.Error("the catalogue itself was changed")
	}
}
