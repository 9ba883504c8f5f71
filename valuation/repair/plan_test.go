package repair_test

import (
	"math"
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
		{Line: repair.Line{ID: "z", Job: "z"}, Calls: []lot.Sign{{Areas: []string{"12"}}}, Brings: []repair.Brought{{ID: "y", Chance: chance(.5)}}},
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
