package assets_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/valuation/repair"
)

// bringing returns what a job brings along, and what that brings.
func bringing(book repair.Catalogue, id string, all map[string]bool) map[string]bool {
	for _, j := range book.Jobs {
		for _, b := range j.Brings {
			if j.ID == id && !all[b.ID] {
				all[b.ID] = true
				bringing(book, b.ID, all)
			}
		}
	}
	return all
}

// neighbors is each painted panel with those that it is blended into. Common practice, no source.
var neighbors = map[string][]string{"hood": {"fender_left", "fender_right"}, "roof": {"quarter_left", "quarter_right"},
	"trunk_lid": {"quarter_left", "quarter_right"}, "fender_left": {"front_door_left"}, "front_door_left": {"fender_left", "rear_door_left"},
	"rear_door_left": {"front_door_left", "quarter_left"}, "quarter_left": {"rear_door_left"}, "side_frame_left": {"quarter_left"},
	"fender_right": {"front_door_right"}, "front_door_right": {"fender_right", "rear_door_right"},
	"rear_door_right": {"front_door_right", "quarter_right"}, "quarter_right": {"rear_door_right"}, "side_frame_right": {"quarter_right"}}

// The blend comes with the paint of a panel, so that it comes whatever the panel's source; nothing else blends.
func TestEveryRefinishBringsItsBlends(t *testing.T) {
	book := jobs(t)
	for _, j := range book.Jobs {
		panel, painted := strings.CutPrefix(j.ID, "refinish_")
		var blends []string
		for _, b := range j.Brings {
			if blend, is := strings.CutPrefix(b.ID, "blend_"); is {
				blends = append(blends, blend)
			}
		}
		slices.Sort(blends)
		if painted && !slices.Equal(blends, neighbors[panel]) || !painted && len(blends) > 0 {
			t.Errorf("%s blends %q, its neighbors are %q", j.ID, blends, neighbors[panel])
		}
	}
	for _, source := range []string{"nose_donor", "donor_vehicle", "fender_left", "fender_repair_left"} {
		if !bringing(book, source, map[string]bool{})["blend_front_door_left"] {
			t.Errorf("%s brings no blend of the door", source)
		}
	}
}

// Welded outer and engine-bay steel is painted; floors and jacking points are under sealer, a bow is under the roof that is painted with
// it.
// Common practice, no source.
func TestWeldedStructureIsRefinished(t *testing.T) {
	book := jobs(t)
	under := []string{"floor_side_left", "floor_side_right", "floor_pan", "roof_bow"}
	welded := 0
	for _, j := range book.Jobs {
		if _, is := j.Hours["structure"]; !is || !slices.Contains([]string{"replace", "repair"}, j.Operation) || slices.Contains(under, j.ID) {
			continue
		}
		welded++
		all := bringing(book, j.ID, map[string]bool{})
		paint := false
		for id := range all {
			paint = paint || strings.HasPrefix(id, "refinish_")
		}
		if !paint || !all["paint_setup"] {
			t.Errorf("%s is welded and not painted", j.ID)
		}
	}
	if welded < 20 {
		t.Errorf("only %d welded jobs", welded)
	}
}
