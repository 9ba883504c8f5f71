package valuation_test

import (
	"math"
	"testing"

	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/hidden"
	"walkline/valuation/prob"
)

// A "yes" that damage found since explains tells little of another cause. By hand, for a prior of 0.3 and a found cause that answers "yes"
// in 0.9: 0.3 x 0.98 / (0.3 x 0.98 + 0.7 x 0.9) = 0.318; without the found one it was 0.3 x 0.8 / (0.3 x 0.8 + 0.7 x 0.1) = 0.774.
func TestFoundDamageExplainsAnAnswer(t *testing.T) {
	none := 0.0
	risk := func(id string, present float64) hidden.Risk {
		return hidden.Risk{ID: id, Name: id, Chance: hidden.Beta{A: 3, B: 7}, Cost: prob.Certain(100), Loading: &none,
			Findings: []hidden.Evidence{{Finding: "wave", IfPresent: present, IfAbsent: .1}}}
	}
	c := uncertain(1, lossRule())
	c.Hidden.SharedLoading = 0
	c.Hidden.Risks = []hidden.Risk{risk("rail", .9), risk("apron", .8)}
	c.Findings = map[string]string{"wave": "yes"}
	b := build.Build{Risks: []build.Seen{{Risk: "rail", State: build.Found}}}
	left, _ := valuation.Remaining(c, valuation.Knowledge{}, b, "2026-11-20")
	risks := valuation.Risks(left, valuation.Knowledge{})
	if len(risks) != 1 || math.Abs(risks[0].Chance-.294/.924) > 1e-6 {
		t.Errorf("what is left: %+v", risks)
	}
}
