package assets_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// Work on the body shell that carries a car, and work on the frame that carries a pickup. Common practice, no source.
var (
	shellJobs = []string{"subframe_front", "subframe_rear", "frame_pull", "floor_pan", "rail_end_left", "rail_end_right", "rear_rail_left",
		"rear_rail_right", "apron_left", "apron_right", "trunk_floor", "rear_clip", "subframe_shifted", "strut_tower_left", "strut_tower_right",
		"strut_tower_bent"}
	frameJobs = []string{"frame_pull_ladder", "frame_section", "frame_replace", "cab_complete", "bed_complete", "ladder_frame_bent"}
)

// On every damage of every depth, work on the body shell is in no plan of a pickup and work on its frame in none of a car.
func TestAPickupIsMendedOnItsFrameAndACarOnItsShell(t *testing.T) {
	for _, kind := range []string{"pickup", "car", "utility", "van"} {
		for _, area := range lot.Areas {
			for _, extent := range lot.Extents {
				for _, depth := range lot.Depths {
					for _, id := range called(t, kind, cell(area, extent, depth)) {
						other := frameJobs
						if kind == "pickup" {
							other = shellJobs
						}
						if slices.Contains(other, id) {
							t.Errorf("a %s with %s %s %s has %s", kind, area, extent, depth, id)
						}
					}
				}
			}
		}
	}
}

// What was missed on a rolled pickup with a bent frame: frame, cab and bed work, and a look at the rails (common practice, no source).
func TestARolledPickupWithABentFrame(t *testing.T) {
	ids := called(t, "pickup", cell("top", "disabling", "structure"), cell("undercarriage", "disabling", "structure"))
	ids = append(ids, called(t, "pickup", cell("undercarriage", "functional", "structure"))...)
	for _, id := range frameJobs {
		if !slices.Contains(ids, id) {
			t.Errorf("%s is missing in %s", id, strings.Join(ids, " "))
		}
	}
}

// called returns the ids of the lines and the risks of a vehicle of that kind with this damage.
func called(t *testing.T, kind string, survey ...lot.Damage) []string {
	t.Helper()
	l := crash()
	l.Survey = &lot.Survey{Kind: kind}
	var ids []string
	for _, x := range repair.Plan(nil, jobs(t), l, survey) {
		ids = append(ids, x.ID)
	}
	for _, x := range hidden.Raise(nil, risks(t), l, survey) {
		ids = append(ids, x.ID)
	}
	return ids
}
