package checks_test

import (
	"slices"
	"testing"

	"walkline/valuation/checks"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
)

func clashes(s checks.Subject) []string {
	var ids []string
	for _, i := range checks.Contradictions(s) {
		ids = append(ids, i.ID)
	}
	return ids
}

func TestContradictions(t *testing.T) {
	front := func(extent string) []lot.Damage { return []lot.Damage{{Area: "12", Extent: extent, Depth: "bolted"}} }
	yes, no := true, false
	for name, c := range map[string]struct {
		s    checks.Subject
		want []string
	}{
		"a front bag without a blow": {checks.Subject{Lot: lot.Lot{Airbags: []string{"front"}}}, []string{"clash_front_bag"}},
		"a front bag with a scratch": {checks.Subject{Lot: lot.Lot{Airbags: []string{"front"}}, Damage: front("minor")},
			[]string{"clash_front_bag"}},
		"a front bag with a blow": {checks.Subject{Lot: lot.Lot{Airbags: []string{"front"}}, Damage: front("functional")}, nil},
		"a curtain with a blow to the front": {checks.Subject{Lot: lot.Lot{Airbags: []string{"curtain"}}, Damage: front("disabling")},
			[]string{"clash_side_bag"}},
		"a curtain after a roll": {checks.Subject{Lot: lot.Lot{Airbags: []string{"curtain"}},
			Damage: []lot.Damage{{Area: "top", Extent: "disabling"}}}, nil},
		"a lamp that looks well": {checks.Subject{Lot: lot.Lot{Airbags: []string{"front"}}, Damage: front("functional"),
			Answers: map[string]string{"restraint_lamp_on": "no"}}, []string{"clash_lamp"}},
		"refitted lids": {checks.Subject{Answers: map[string]string{"airbag_lid_refit": "yes"}}, []string{"clash_refit"}},
		"an engine that is off": {checks.Subject{Lot: lot.Lot{Condition: "starts"}, Answers: map[string]string{"engine_will_not_turn": "yes"}},
			[]string{"clash_engine"}},
		"a dead engine's knock": {checks.Subject{Lot: lot.Lot{Condition: "dead"}, Answers: map[string]string{"engine_knocks": "no"}},
			[]string{"clash_running"}},
		"keys": {checks.Subject{Lot: lot.Lot{Keys: &yes}, Answers: map[string]string{"key_missing": "yes"}},
			[]string{"clash_keys"}},
		"no keys": {checks.Subject{Lot: lot.Lot{Keys: &no}, Answers: map[string]string{"key_missing": "no"}},
			[]string{"clash_no_keys"}},
		"keys agree": {checks.Subject{Lot: lot.Lot{Keys: &yes}, Answers: map[string]string{"key_missing": "no"}}, nil},
		"a water line": {checks.Subject{Lot: lot.Lot{Loss: []string{"collision"}}, Answers: map[string]string{"waterline_dash": "yes"}},
			[]string{"clash_flood"}},
		"a flood brand": {checks.Subject{Lot: lot.Lot{Title: lot.Title{Brands: []string{"Flood damage"}}}}, []string{"clash_flood"}},
		"a flood told":  {checks.Subject{Lot: lot.Lot{Loss: []string{"flood"}, Title: lot.Title{Brands: []string{"flood"}}}}, nil},
		"a fire brand":  {checks.Subject{Lot: lot.Lot{Title: lot.Title{Document: "fire"}}}, []string{"clash_fire"}},
		"more miles": {checks.Subject{Lot: lot.Lot{OdometerStatus: "actual"},
			Answers: map[string]string{"service_sticker_differs": "yes"}}, []string{"clash_miles"}},
		"miles not vouched for": {checks.Subject{Lot: lot.Lot{OdometerStatus: "not_actual"},
			Answers: map[string]string{"service_sticker_differs": "yes"}}, nil},
		"it drives": {checks.Subject{Lot: lot.Lot{Condition: "drives"},
			Answers: map[string]string{"wheel_out_of_place": "yes", "steering_binds": "yes"}}, []string{"clash_drives"}},
		"nothing": {checks.Subject{}, nil},
	} {
		if got := clashes(c.s); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

func TestAnswersThatExcludeEachOther(t *testing.T) {
	r := hidden.Risk{ID: "r", Name: "Rail", Findings: []hidden.Evidence{{Finding: "a", IfPresent: .5, IfAbsent: 0},
		{Finding: "b", IfPresent: 0, IfAbsent: .5}}}
	s := checks.Subject{Risks: []hidden.Risk{r}, Answers: map[string]string{"a": "yes", "b": "yes"}}
	if got := clashes(s); !slices.Equal(got, []string{"clash_r"}) {
		t.Errorf("%v", got)
	}
}
