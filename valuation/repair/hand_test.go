package repair_test

import (
	"slices"
	"testing"

	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// A part in hand costs nothing, comes with no wait and no extra hours, whatever the other sources ask, and even where a core deposit would
// pay for another. By definition, and the same line without the part.
func TestAPartInHandTakesNothing(t *testing.T) {
	sure, half := prob.Certain, 0.5
	l := repair.Line{ID: "cover", Hours: map[string]prob.Three{"body": sure(2)}, Parts: []repair.Part{{Name: "bumper cover",
		Options: []repair.Option{{Source: "used", Price: sure(125), Freight: sure(40), LeadDays: sure(6), ExtraHours: sure(.5), Chance: &half},
			{Source: "new_maker", Price: sure(100), CoreBack: sure(90)}},
		Fallback: &repair.Fallback{Price: sure(400), LeadDays: sure(20)}}}}
	s := repair.Setting{Rates: map[string]float64{"body": 35}, HoldingPerDay: 6}
	bare := l
	bare.Parts = nil
	kept := l
	kept.Parts = slices.Clone(l.Parts)
	kept.Parts[0].Hold(true)
	if got, want := kept.Foreknown(s, nil), bare.Foreknown(s, nil); got != want {
		t.Errorf("in hand %+v, without the part %+v", got, want)
	}
	if order := kept.Parts[0].Order(35, 6); len(order) != 1 || kept.Parts[0].Options[order[0]].Source != repair.HandSource {
		t.Errorf("asked in the order %v", order)
	}
	kept.Parts[0].Hold(true)
	if len(kept.Parts[0].Options) != 3 || len(l.Parts[0].Options) != 2 {
		t.Error("in hand twice, or in the line it came from")
	}
	kept.Parts[0].Hold(false)
	if kept.Parts[0].InHand() || kept.Foreknown(s, nil) != l.Foreknown(s, nil) {
		t.Error("what was in hand did not go back")
	}
}
