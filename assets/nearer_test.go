package assets_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// chains name, from the hit inwards, the work on each part with the hidden damage that stands for it where the work is not planned; what
// they say of the left is held for the right as well.
// Common practice, no source: what stands nearer the hit is hurt no less often than what stands behind it.
var chains = []struct {
	area  string
	parts [][]string
}{
	{"12", [][]string{{"bumper_cover_front", "bumper_cover_front_repair"}, {"bumper_inner_front"}, {"bumper_beam_front"},
		{"rail_end_left", "rail_end_bent"}, {"apron_left", "apron_creased"}}},
	{"12", [][]string{{"bumper_cover_front"}, {"grille_front"}}},
	{"12", [][]string{{"bumper_inner_front"}, {"condenser"}, {"radiator", "radiator_leak"}, {"cooling_fan", "fan_hidden"},
		{"front_cover_cracked"}}},
	{"12", [][]string{{"bumper_cover_front"}, {"headlamp_left"}}},
	{"12", [][]string{{"rail_end_left", "rail_end_bent"}, {"strut_tower_left", "strut_tower_bent"},
		{"hinge_pillar_left", "hinge_pillar_pushed"}}},
	{"06", [][]string{{"bumper_cover_rear", "bumper_cover_rear_repair"}, {"bumper_inner_rear"}, {"bumper_beam_rear"}}},
	{"06", [][]string{{"bumper_cover_rear"}, {"rear_body_panel", "rear_panel_creased"}, {"trunk_floor", "trunk_floor_ripple"}}},
	{"06", [][]string{{"bumper_beam_rear"}, {"rear_rail_left", "rear_rail_kicked"}}},
	{"09", [][]string{{"front_door_left"}, {"front_door_glass_left"}}},
	{"09", [][]string{{"front_door_left", "front_door_edge_repair_left"}, {"middle_pillar_left", "pillar_inner_bent"}, {"seat_front_left",
		"seat_frame_side"}}},
	{"09", [][]string{{"rocker_left"}, {"sill_inner_folded"}, {"floor_side_left", "floor_cross_member"}}},
	{"11", [][]string{{"fender_left"}, {"headlamp_left"}}},
	{"11", [][]string{{"fender_left"}, {"wheel_front_left"}}},
	{"11", [][]string{{"control_arm_front_left"}, {"half_shaft_front_left", "half_shaft_pulled"}}},
	{"11", [][]string{{"fender_left", "fender_repair_left"}, {"apron_left", "apron_creased"}, {"strut_tower_left", "strut_tower_bent"}}},
	{"07", [][]string{{"quarter_left", "quarter_repair_left"}, {"wheelhouse_rear_left", "wheelhouse_split"}}},
	{"07", [][]string{{"arm_rear_left", "knuckle_hairline", "rear_wheel_pushed"}, {"rear_axle", "rear_axle_bent"}}},
	{"undercarriage", [][]string{{"undertray_front"}, {"oil_pan", "oil_pan_cracked"}}},
	{"top", [][]string{{"roof_replace", "roof_repair"}, {"headliner"}}},
}

// opposite is the same place of the other side.
var opposite = map[string]string{"11": "01", "10": "02", "09": "03", "08": "04", "07": "05"}

func TestNearerTheHitIsNeverSafer(t *testing.T) {
	j, r := jobs(t), risks(t)
	for _, v := range vehicles() {
		for _, extent := range lot.Extents {
			for _, depth := range lot.Depths {
				for _, c := range chains {
					nearer(t, j, r, v, cell(c.area, extent, depth), c.parts)
					if area, is := opposite[c.area]; is {
						nearer(t, j, r, v, cell(area, extent, depth), mirrored(c.parts))
					}
				}
			}
		}
	}
}

// nearer checks one chain of parts at one cell of the survey of one vehicle.
func nearer(t *testing.T, j repair.Catalogue, r hidden.Catalogue, v lot.Survey, at lot.Damage, parts [][]string) {
	t.Helper()
	survey := []lot.Damage{at}
	plan, raised := planned(repair.Plan(nil, j, seen(v), survey)), hidden.Raise(nil, r, seen(v), survey)
	before := 1.0
	for _, part := range parts {
		p := hurt(j, plan, raised, part)
		if p > before+1e-9 {
			t.Errorf("%s %s, %s %s, %s: %v at %.2f is likelier than what stands before it, %.2f", v.Kind, v.Powertrain, at.Area, at.Extent,
				at.Depth, part, p, before)
		}
		before = min(p, before)
	}
}

func mirrored(parts [][]string) [][]string {
	out := make([][]string, len(parts))
	for i, ids := range parts {
		for _, id := range ids {
			out[i] = append(out[i], strings.ReplaceAll(id, "_left", "_right"))
		}
	}
	return out
}

// hurt returns the chance that a part is hurt: that one of its jobs or of the assemblies that hold it is done, or else its risk
// comes true.
func hurt(j repair.Catalogue, plan map[string]float64, raised []hidden.Risk, ids []string) float64 {
	sound := 1.0
	for _, id := range ids {
		sound *= 1 - plan[id]
		for _, r := range raised {
			if r.ID == id {
				sound *= 1 - r.Chance.Mean()
			}
		}
	}
	held := 0.0 // an assembly and its pieces are never both done
	for _, x := range j.Jobs {
		if slices.ContainsFunc(ids, func(id string) bool { return slices.Contains(x.Covers, id) }) {
			held = max(held, plan[x.ID])
		}
	}
	return min(1, 1-sound+held)
}
