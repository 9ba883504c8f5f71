package assets_test

import (
	"slices"
	"testing"
)

// What an assembly covers, it puts right as its pieces would: a corner from a donor leaves no sensor lead of the old one in doubt.
func TestAnAssemblySettlesWhatItsPiecesSettle(t *testing.T) {
	all, looked := jobs(t).Jobs, 0
	settles := map[string][]string{}
	for _, j := range all {
		settles[j.ID] = j.Settles
	}
	for _, j := range all {
		for _, piece := range j.Covers {
			for _, risk := range settles[piece] {
				if looked++; !slices.Contains(j.Settles, risk) {
					t.Errorf("%s covers %s, which puts %s right, and does not", j.ID, piece, risk)
				}
			}
		}
	}
	if looked < 30 {
		t.Errorf("only %d were looked at", looked)
	}
}

// replaced names, for a thing, the work that replaces it whole and the hidden damage that then is no longer there. Common practice, no
// source.
var replaced = []struct {
	thing string
	work  []string
	risks []string
}{
	{"an engine", []string{"engine_replace"}, []string{"engine_seized", "timing_failed", "head_gasket", "engine_run_dry", "oil_pan_cracked",
		"front_cover_cracked", "flood_engine_water", "fire_engine_seals", "roll_engine_inverted"}},
	{"a transmission", []string{"transmission_replace"}, []string{"gearbox_worn", "transmission_case_cracked", "transmission_pan_hit"}},
	{"a battery pack", []string{"pack_replace"}, []string{"pack_isolation", "pack_coolant_inside", "pack_case_dented", "pack_locked",
		"flood_pack"}},
	{"a rim", []string{"wheel_front_left", "wheel_front_right", "wheel_rear_left", "wheel_rear_right", "theft_wheels"},
		[]string{"wheel_rim_cracked"}},
	{"a corner", []string{"corner_front_left", "corner_front_right", "corner_rear_left", "corner_rear_right"}, []string{"knuckle_hairline",
		"hub_bearing_dented", "abs_unit_bumped"}},
	{"a front end", []string{"nose_donor"}, []string{"radiator_leak", "fan_hidden", "front_wiring_crushed", "front_fit_off"}},
	{"a restraint module", []string{"restraint_module"}, []string{"restraint_module_locked"}},
	{"front belts", []string{"seat_belt_front_left", "seat_belt_front_right"}, []string{"belt_pretensioner_fired"}},
	{"a steering rack", []string{"steering_rack"}, []string{"steering_rack_twisted", "flood_steering_motor"}},
	{"instruments", []string{"flood_dash"}, []string{"flood_instruments"}},
	{"a converter", []string{"catalytic_converter"}, []string{"converter_crushed", "converter_stolen"}},
	{"a windshield", []string{"windshield"}, []string{"windshield_edge_stress", "fire_glass_bond"}},
	{"an apron", []string{"apron_left", "apron_right"}, []string{"apron_creased"}},
	{"keys", []string{"key_set"}, []string{"immobiliser_keys"}},
	{"cut wiring", []string{"theft_harness"}, []string{"theft_wiring_cut"}},
}

func TestWhatIsReplacedIsSettled(t *testing.T) {
	for _, x := range replaced {
		for _, id := range x.work {
			settles := job(t, id).Settles
			for _, risk := range x.risks {
				if !slices.Contains(settles, risk) {
					t.Errorf("%s replaces %s and leaves %s a risk", id, x.thing, risk)
				}
			}
		}
	}
}
