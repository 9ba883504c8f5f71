package repair_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

func chance(x float64) *float64 { return &x }

// catalogue is invented: the survey at 12 calls for the bumper and the lamp, both of which bring paint mixing.
func catalogue() repair.Catalogue {
	at12 := []lot.Sign{{Areas: []string{"12"}}}
	job := func(id string, calls []lot.Sign, brings ...repair.Brought) repair.Job {
		return repair.Job{Line: repair.Line{ID: id, Job: id + " work"}, Calls: calls, Brings: brings}
	}
	return repair.Catalogue{Jobs: []repair.Job{
		job("bumper", at12, repair.Brought{ID: "mix", Chance: chance(.9)}, repair.Brought{ID: "scan"}),
		job("lamp", at12, repair.Brought{ID: "mix", Chance: chance(.9)}),
		job("door", []lot.Sign{{Areas: []string{"03"}}}, repair.Brought{ID: "glass"}),
		job("mix", nil, repair.Brought{ID: "blend", Chance: chance(.5)}),
		job("scan", nil, repair.Brought{ID: "bumper"}), // a ring
		job("glass", nil), job("blend", nil),
	}}
}

var front = []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}, {Area: "12", Extent: "minor", Depth: "skin"}}

func byID(lines []repair.Line) map[string]repair.Line {
	m := map[string]repair.Line{}
	for _, l := range lines {
		m[l.ID] = l
	}
	return m
}

// Source: independent events, P(at least one of two at .9) = 1 - .1 x .1 = .99; .99 x .5 = .495.
func TestPlanOfJobsOnceEachWithTheirChances(t *testing.T) {
	lines := repair.Plan(nil, catalogue(), lot.Lot{}, front)
	got := byID(lines)
	if len(got) != len(lines) {
		t.Fatalf("%d lines for %d jobs", len(lines), len(got))
	}
	want := map[string]float64{"bumper": 1, "lamp": 1, "mix": .99, "scan": 1, "blend": .495}
	for id, c := range want {
		if l, ok := got[id]; !ok || math.Abs(repair.Or(l.Chance, -1)-c) > 1e-12 {
			t.Errorf("%s: in the plan %v, chance %g, want %g", id, ok, repair.Or(l.Chance, -1), c)
		}
		if got[id].Area != "12" {
			t.Errorf("%s is done at %q, want 12", id, got[id].Area)
		}
	}
	if len(got) != len(want) {
		t.Errorf("the plan holds %v", got)
	}
	if why := got["mix"].Why; !strings.Contains(why, "bumper work") || !strings.Contains(why, "lamp work") {
		t.Errorf("mix comes with %q", why)
	}
}

// Two jobs that bring each other and are brought by a third: 1 - (1 - .5) = .5 for the first, .5 x .4 = .2 for the second.
func TestPlanOfARingOfJobs(t *testing.T) {
	jobs := repair.Catalogue{Jobs: []repair.Job{
		{Line: repair.Line{ID: "y", Job: "y"}, Brings: []repair.Brought{{ID: "x", Chance: chance(.4)}}},
		{Line: repair.Line{ID: "x", Job: "x"}, Brings: []repair.Brought{{ID: "y"}}},
		{Line: repair.Line{ID: "z", Job: "z"}, Calls: []lot.Sign{{Areas: []string{"12"}}},
			Brings: []repair.Brought{{ID: "y", Chance: chance(.5)}}},
	}}
	got := byID(repair.Plan(nil, jobs, lot.Lot{}, front))
	for id, want := range map[string]float64{"z": 1, "y": .5, "x": .2} {
		if l := got[id]; math.Abs(repair.Or(l.Chance, -1)-want) > 1e-12 || l.Area != "12" {
			t.Errorf("%s: chance %g at %q, want %g at 12", id, repair.Or(l.Chance, -1), l.Area, want)
		}
	}
}

func TestPlanWithNoDamageIsEmpty(t *testing.T) {
	if got := repair.Plan(nil, catalogue(), lot.Lot{}, nil); len(got) != 0 {
		t.Errorf("no damage, yet %v", got)
	}
}

func TestPlanLeavesTheUsersLinesAlone(t *testing.T) {
	own := []repair.Line{
		{ID: "lamp", Job: "my lamp", Chance: chance(.4), Edited: true},
		{ID: "scan", Job: "scan work", Removed: true},
		{ID: "own", Job: "wash"},
	}
	before := slices.Clone(own)
	lines := repair.Plan(own, catalogue(), lot.Lot{}, front)
	got := byID(lines)
	if l := got["lamp"]; l.Job != "my lamp" || *l.Chance != .4 {
		t.Errorf("the edited line became %+v", l)
	}
	if _, there := got["scan"]; there {
		t.Error("the line that was struck out came back")
	}
	if lines[0].ID != "lamp" || lines[1].ID != "own" {
		t.Errorf("the user's lines do not stand first: %v", lines)
	}
	for i := range own {
		if own[i].ID != before[i].ID || own[i].Removed != before[i].Removed {
			t.Fatal("the user's own lines were changed")
		}
	}
}

// sparing is invented: at 12 a hood is repaired or, three times in four, replaced; painting it spares a blend.
func sparing() repair.Catalogue {
	at12 := []lot.Sign{{Areas: []string{"12"}}}
	return repair.Catalogue{Jobs: []repair.Job{
		{Line: repair.Line{ID: "mend", Job: "Mend"}, Calls: at12, Brings: []repair.Brought{{ID: "paint"}, {ID: "sand", Chance: chance(.5)}}},
		{Line: repair.Line{ID: "renew", Job: "Renew", Chance: chance(.75)}, Calls: at12, Brings: []repair.Brought{{ID: "paint"}},
			Spares: []string{"mend"}},
		{Line: repair.Line{ID: "paint", Job: "Paint"}, Spares: []string{"blend"}},
		{Line: repair.Line{ID: "blend", Job: "Blend"}, Calls: []lot.Sign{{Areas: []string{"11"}}}},
		{Line: repair.Line{ID: "sand", Job: "Sand"}},
	}}
}

// By hand: the mending is left where the renewing (.75) is not; painting is sure, so no blend is; what mending brings stays.
func TestASparedJobIsNotCountedTwice(t *testing.T) {
	survey := []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}, {Area: "11", Extent: "minor", Depth: "skin"}}
	got := byID(repair.Plan(nil, sparing(), lot.Lot{}, survey))
	for id, want := range map[string]float64{"mend": .25, "renew": .75, "paint": 1, "sand": .5} {
		if l, ok := got[id]; !ok || math.Abs(repair.Or(l.Chance, -1)-want) > 1e-12 {
			t.Errorf("%s: in the plan %v, chance %g, want %g", id, ok, repair.Or(l.Chance, -1), want)
		}
	}
	if _, ok := got["blend"]; ok || len(got) != 4 {
		t.Errorf("a painted panel is blended as well: %v", got)
	}
	if why := got["mend"].Why; !strings.Contains(why, "needless with: Renew") {
		t.Errorf("why of the mending: %q", why)
	}
}

// The user's own line counts as the user has it: struck out it spares nothing, made sure it spares all.
func TestOwnLinesSpareAsTheyStand(t *testing.T) {
	survey := []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}}
	for _, c := range []struct {
		own  repair.Line
		mend float64
	}{
		{repair.Line{ID: "renew", Job: "Renew", Removed: true}, 1}, {repair.Line{ID: "renew", Job: "Renew", Chance: chance(.1)}, .9},
		{repair.Line{ID: "renew", Job: "Renew"}, 0},
	} {
		l, ok := byID(repair.Plan([]repair.Line{c.own}, sparing(), lot.Lot{}, survey))["mend"]
		if ok != (c.mend > 0) || ok && math.Abs(*l.Chance-c.mend) > 1e-12 {
			t.Errorf("%+v: mending %v, want %g", c.own, l.Chance, c.mend)
		}
	}
}

func TestMissingKeysCallForKeys(t *testing.T) {
	c := repair.Catalogue{Jobs: []repair.Job{{Line: repair.Line{ID: "key", Job: "Key"}, Calls: []lot.Sign{{Keys: []string{"missing"}}}}}}
	yes, no := true, false
	for _, k := range []struct {
		keys  *bool
		lines int
	}{{nil, 0}, {&yes, 0}, {&no, 1}} {
		if got := len(repair.Plan(nil, c, lot.Lot{Keys: k.keys}, nil)); got != k.lines {
			t.Errorf("keys %v: %d lines, want %d", k.keys, got, k.lines)
		}
	}
}

// A planner that has planned already plans as a fresh one does, with hidden damage and without.
func TestAPlannerMayPlanAgain(t *testing.T) {
	hurt := repair.Cause{ID: "rail", Name: "Rail", Chance: .3, Brings: []repair.Brought{{ID: "blend"}, {ID: "scan", Chance: chance(.5)}}}
	own := []repair.Line{{ID: "lamp", Job: "my lamp", Chance: chance(.4)}}
	p := repair.NewPlanner(own, repair.NewIndex(catalogue()), lot.Lot{}, front)
	p.Settling()
	for _, causes := range [][]repair.Cause{{hurt}, nil, {hurt}} {
		if got, want := p.Lines(causes...), repair.Plan(own, catalogue(), lot.Lot{}, front, causes...); !reflect.DeepEqual(got, want) {
			t.Errorf("%d causes: %+v, want %+v", len(causes), got, want)
		}
	}
}

// A line of the user's own id that says a job in the catalogue's words is that job, in certainty and by chance: it stands once, spares what
// the job spares, and what the job brings comes in the very scenarios in which the line is there.
func TestALineInTheCataloguesWordsIsItsJob(t *testing.T) {
	c := repair.Catalogue{Jobs: []repair.Job{
		{Line: repair.Line{ID: "panel", Job: "Replace the panel"}, Brings: []repair.Brought{{ID: "paint"}},
			Calls: []lot.Sign{{Areas: []string{"12"}}}, Spares: []string{"mend"}},
		{Line: repair.Line{ID: "paint", Job: "Paint the panel"}},
		{Line: repair.Line{ID: "mend", Job: "Mend the panel"}, Calls: []lot.Sign{{Areas: []string{"12"}}}},
	}}
	part := .4
	for _, id := range []string{"panel", "own"} {
		lines := repair.Plan([]repair.Line{{ID: id, Job: "replace the  Panel", Chance: &part}}, c, lot.Lot{},
			[]lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}})
		chances := map[string]float64{}
		for _, l := range lines {
			chances[l.ID] += *l.Chance
			if l.ID == "paint" && (len(l.Needs.By) != 1 || l.Needs.By[0].By.ID != id) {
				t.Errorf("%s: the paint hangs on %+v", id, l.Needs)
			}
		}
		if len(lines) != 3 || chances[id] != .4 || chances["paint"] != .4 || chances["mend"] != .6 {
			t.Errorf("%s: %v", id, chances)
		}
	}
}
