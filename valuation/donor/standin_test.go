package donor_test

import (
	"testing"

	"walkline/valuation/donor"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// A catalogue without chances after a blow has starter values there, says so, and never reads them as nothing; one without any chances of
// running is refused by name.
func TestAStarterValueStandsInForRunsAfterAHit(t *testing.T) {
	c := donor.Catalogue{Format: donor.Format, Terms: donor.Terms{Runs: donor.Running{Dead: .4, Unknown: .5}},
		Assemblies: []donor.Assembly{{ID: "engine",
			Name: "engine", Price: prob.Certain(1000), Chance: 1, Runs: true}}}
	hit, flood := lot.Lot{Loss: []string{"collision"}, Condition: "dead"}, lot.Lot{Loss: []string{"flood"}, Condition: "dead"}
	if !c.StandsIn(hit) || c.StandsIn(flood) {
		t.Errorf("stands in after a hit %v, after a flood %v", c.StandsIn(hit), c.StandsIn(flood))
	}
	if p := c.Propose(hit, nil, 9000, false); len(p.Items) != 1 || p.Items[0].Sells != .75 {
		t.Errorf("after a hit %+v", p.Items)
	}
	c.AfterHit = donor.Running{Dead: .6}
	if p := c.Propose(hit, nil, 9000, false); c.StandsIn(hit) || p.Items[0].Sells != .6 {
		t.Errorf("with chances of its own %+v", p.Items)
	}
	c.Runs, c.AfterHit.Dead = donor.Running{}, 1.5
	keys := map[string]bool{}
	for _, f := range c.Check() {
		keys[f.Key] = true
	}
	if !keys["runs"] || !keys["runs_after_a_hit"] {
		t.Errorf("faults: %v", keys)
	}
}
