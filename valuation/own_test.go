package valuation_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// smallKnowledge is one job, one risk and one finding; every figure is made up.
func smallKnowledge() valuation.Knowledge {
	return valuation.Knowledge{
		Jobs: repair.Catalogue{Jobs: []repair.Job{{Line: repair.Line{ID: "hood", Job: "Replace the hood", Materials: prob.Certain(100)},
			Calls: []lot.Sign{{Areas: []string{"12"}}}}}},
		Risks: hidden.Catalogue{Risks: []hidden.Entry{{Risk: hidden.Risk{ID: "rail", Name: "Rail bent", Chance: hidden.Beta{A: 1, B: 3}},
			Triggers: []lot.Sign{{Areas: []string{"12"}}}}}, Findings: []hidden.Finding{{ID: "gap", Text: "Is the gap uneven?", Minutes: 1}}},
	}
}

func ownHood(materials float64) repair.Job {
	return repair.Job{Line: repair.Line{ID: "hood", Job: "Replace the hood", Materials: prob.Certain(materials)},
		Calls: []lot.Sign{{Areas: []string{"12"}}}}
}

func TestOwnEntriesReplaceAndAreAdded(t *testing.T) {
	k := smallKnowledge()
	latch := repair.Job{Line: repair.Line{ID: "latch", Job: "Replace the latch", Materials: prob.Certain(9)},
		Calls: []lot.Sign{{Areas: []string{"12"}}}}
	with := k.With(valuation.Own{Jobs: []repair.Job{ownHood(250), latch}})
	if n := len(with.Jobs.Jobs); n != 2 || with.Jobs.Jobs[0].Materials.Likely != 250 || with.Jobs.Jobs[1].ID != "latch" {
		t.Errorf("%d jobs: %+v", n, with.Jobs.Jobs)
	}
	if k.Jobs.Jobs[0].Materials.Likely != 100 {
		t.Error("the starter's catalogue was changed")
	}
	c := valuation.Defaults()
	c.Damage = []lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}}
	plan := valuation.Plan(c, with)
	if len(plan) != 2 || plan[0].Materials.Likely != 250 {
		t.Errorf("the plan holds %+v", plan)
	}
}

func TestAnOwnEntryWithAFaultIsNamedAndLeftOut(t *testing.T) {
	k := smallKnowledge()
	unordered, unknown, empty := ownHood(1), ownHood(1), ownHood(1)
	unordered.Materials = prob.Three{Low: 3, Likely: 2, High: 1}
	unknown.Brings = []repair.Brought{{ID: "latch"}}
	empty.Calls = []lot.Sign{{}}
	wrongWord := ownHood(1)
	wrongWord.Calls = []lot.Sign{{Areas: []string{"13"}}}
	never := hidden.Entry{Risk: hidden.Risk{ID: "rail", Name: "Rail bent"}}
	strange := hidden.Entry{Risk: hidden.Risk{ID: "rail", Name: "Rail bent", Chance: hidden.Beta{A: 1, B: 1},
		Findings: []hidden.Evidence{{Finding: "gaps", IfPresent: .5, IfAbsent: .1}}}}
	for want, own := range map[string]valuation.Own{
		"jobs.hood.materials":            {Jobs: []repair.Job{unordered}},
		"jobs.hood.brings[0].id":         {Jobs: []repair.Job{unknown}},
		"jobs.hood.calls[0]":             {Jobs: []repair.Job{empty}},
		"jobs.hood.calls[0].areas":       {Jobs: []repair.Job{wrongWord}},
		"jobs.hood":                      {Jobs: []repair.Job{ownHood(1), ownHood(2)}},
		"risks.rail.chance":              {Risks: []hidden.Entry{never}},
		"risks.rail.findings[0].finding": {Risks: []hidden.Entry{strange}},
		"findings.gap.minutes":           {Findings: []hidden.Finding{{ID: "gap", Text: "?", Minutes: -1}}},
		"findings.gap.text":              {Findings: []hidden.Finding{{ID: "gap"}}},
	} {
		faults := k.CheckOwn(own)
		if len(faults) != 1 || faults[0].Key != want {
			t.Errorf("want one fault at %s, got %v", want, faults)
		}
		with := k.With(own)
		if with.Jobs.Jobs[0].Materials.Likely != 100 || with.Risks.Risks[0].Chance.B != 3 ||
			!strings.HasSuffix(with.Risks.Findings[0].Text, "uneven?") {
			t.Errorf("%s: an entry with a fault is used", want)
		}
	}
}

// Faults come in one order, run after run: the first is what the Board says of a lot.
func TestFaultsComeInOneOrder(t *testing.T) {
	k, c, broken := smallKnowledge(), valuation.Defaults(), ownHood(1)
	c.Lot.Listed = &lot.Listed{ValueBefore: new(-1.), RepairEstimate: new(-1.)}
	broken.Spares, broken.Covers = []string{"latch"}, []string{"latch"}
	for range 20 {
		if faults := k.CheckOwn(valuation.Own{Jobs: []repair.Job{broken}}); len(faults) != 2 || faults[0].Key != "jobs.hood.spares[0]" {
			t.Fatalf("%v", faults)
		}
		faults := c.Check()
		at := func(key string) int {
			return slices.IndexFunc(faults, func(f valuation.Fault) bool { return f.Key == "lot.listed."+key })
		}
		if first, second := at("value_before"), at("repair_estimate"); first < 0 || second < first {
			t.Fatalf("%v", faults)
		}
	}
}

// Older files know two jobs by ids that risks have too: their lines, and a shop's own entries, stand in the place of the job as it is
// called now, and leave the risk alone. What an older build noted of the id speaks of both, as it did.
func TestFormerIDsOfJobsAreRead(t *testing.T) {
	k := shipped(t)
	old := `{"format":"walkline-case/1","currency":"USD","valued_on":"2026-11-20","damage":[{"area":"water","extent":"functional",` +
		`"depth":"skin"}],
 "repair":{"lines":[{"id":"flood_connectors","job":"mine","removed":true},{"id":"flood_bearings","job":"mine too"}]},
 "hidden":{"risks":[{"id":"flood_connectors","name":"harness","chance":{"a":1,"b":1}}]},
 "resale":{"guess":{"low":9000,"likely":10000,"high":11000}},"buying":{"bid_steps":[{"from":0,"step":25}]},"rules":{"min_profit":1500}}`
	c, faults := casefile.Read([]byte(old))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	count := map[string]int{}
	for _, l := range valuation.Plan(c, k) {
		count[l.ID]++
	}
	for _, r := range valuation.Risks(c, k) {
		count[r.ID]++
	}
	if count["flood_connectors_clean"] != 0 || count["flood_bearings_grease"] != 1 || count["flood_connectors"] != 1 ||
		count["flood_bearings"] > 1 {
		t.Errorf("lines and risks by id: %v", count)
	}
	own := k.With(valuation.Own{Jobs: []repair.Job{{Line: repair.Line{ID: "flood_bearings", Job: "ours"}}}})
	if len(own.Jobs.Jobs) != len(k.Jobs.Jobs) || !slices.ContainsFunc(own.Jobs.Jobs,
		func(j repair.Job) bool { return j.ID == "flood_bearings_grease" && j.Job == "ours" }) {
		t.Errorf("%d jobs with an own entry of a former id, %d without", len(own.Jobs.Jobs), len(k.Jobs.Jobs))
	}
	b := build.Build{Done: []string{"flood_bearings"}}
	if !b.IsDone("flood_bearings_grease") || !b.IsDone("flood_bearings") ||
		(build.Build{Done: []string{"flood_bearings_grease"}}).IsDone("flood_bearings") {
		t.Error("finishing the job and finishing the risk are not told apart")
	}
}
