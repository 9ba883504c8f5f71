package assets_test

import (
	"math"
	"slices"
	"testing"

	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/donor"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// The shipped assemblies say what the law may forbid, and cars of each powertrain have what they have and nothing else.
// Common practice, no source.
func TestAssembliesFitTheVehicle(t *testing.T) {
	k := starter(t)
	for _, c := range []struct {
		powertrain  string
		has, hasNot []string
	}{{"combustion", []string{"engine", "gearbox", "exhaust"}, []string{"pack", "drive_unit", "hybrid_pack", "airbags", "converter"}},
		{"", []string{"engine", "gearbox"}, []string{"pack", "drive_unit", "hybrid_pack"}},
		{"electric", []string{"pack", "drive_unit"}, []string{"engine", "gearbox", "exhaust", "tank"}},
		{"hybrid", []string{"engine", "hybrid_pack"}, []string{"pack"}}} {
		ids := offered(k.Parts.Propose(lot.Lot{Condition: "drives", Survey: &lot.Survey{Powertrain: c.powertrain}}, nil, 10000, false))
		for _, id := range c.has {
			if !slices.Contains(ids, id) {
				t.Errorf("%s: no %s", c.powertrain, id)
			}
		}
		for _, id := range c.hasNot {
			if slices.Contains(ids, id) {
				t.Errorf("%s: there is a %s", c.powertrain, id)
			}
		}
	}
	all := offered(k.Parts.Propose(lot.Lot{}, nil, 10000, true))
	if !slices.Contains(all, "airbags") || !slices.Contains(all, "converter") {
		t.Errorf("what is allowed is not offered: %v", all)
	}
}

func offered(p donor.Proposal) []string {
	var ids []string
	for _, i := range p.Items {
		ids = append(ids, i.ID)
	}
	return ids
}

// More damage, a worse running state, missing parts and water never bring more in parts.
func TestDamageNeverAddsParts(t *testing.T) {
	k := starter(t)
	mean := func(l lot.Lot, damage ...lot.Damage) float64 {
		return k.Parts.Propose(l, damage, 10000, false).Money.Mean()
	}
	l := lot.Lot{Condition: "drives"}
	sound := mean(l)
	for _, area := range lot.Areas {
		last := sound
		for _, extent := range lot.Extents {
			for _, depth := range lot.Depths {
				if now := mean(l, lot.Damage{Area: area, Extent: extent, Depth: depth}); depth == "structure" {
					if now > last+10 {
						t.Errorf("%s %s brings %.0f, less damage %.0f", area, extent, now, last)
					}
					last = now
				}
			}
		}
	}
	for _, condition := range lot.Conditions {
		if now := mean(lot.Lot{Condition: condition}); now > sound {
			t.Errorf("%s brings %.0f, one that drives %.0f", condition, now, sound)
		}
	}
	for _, part := range []string{"wheels", "seats", "engine", "transmission", "dash_electronics", "headlamps"} {
		if now := mean(lot.Lot{Condition: "drives", Survey: &lot.Survey{Missing: []string{part}}}); now >= sound {
			t.Errorf("without %s it brings %.0f, with them %.0f", part, now, sound)
		}
	}
	wet := lot.Lot{Condition: "drives", Survey: &lot.Survey{Water: &lot.Water{Height: "dash", Kind: "salt"}}}
	for _, id := range offered(k.Parts.Propose(wet, nil, 10000, false)) {
		if slices.Contains([]string{"engine", "gearbox", "seats", "dash", "electronics", "auxiliaries"}, id) {
			t.Errorf("water at the dash leaves the %s", id)
		}
	}
}

// The sum of two assemblies and the scrap, worked by hand: 0.9 x (0.5 x 1000 + 0.25 x 400) + 100 = 640; hours 2 + 3 + 1.
func TestAProposalByHand(t *testing.T) {
	c := donor.Catalogue{Selling: .1, Overhead: prob.Certain(2), Days: prob.Certain(30), Scrap: prob.Certain(100),
		Runs: donor.Running{Unknown: 1},
		Assemblies: []donor.Assembly{{ID: "a", Price: prob.Certain(1000), Chance: .5, Hours: 3},
			{ID: "b", Share: prob.Certain(.04), Chance: .25, Hours: 1}}}
	p := c.Propose(lot.Lot{}, nil, 10000, false)
	if math.Abs(p.Money.Mean()-640) > 6 || p.Hours.Likely != 6 || p.Days != prob.Certain(30) {
		t.Errorf("%+v, mean %.0f", p, p.Money.Mean())
	}
	// variance by hand: .5 x 900^2 - 450^2 + .25 x 360^2 - 90^2 = 226,800, so sd 476; low 640 - 2.2 x 476 is below nothing
	if p.Money.Low != 0 || math.Abs(p.Money.High-(640+2.6*476.2)) > 10 {
		t.Errorf("ends %+v", p.Money)
	}
}

// Every wreck gets a bid once its ways out are proposed: what no shop would rebuild still has parts. As it stands needs a guess.
func TestHeavyWrecksHaveAPlan(t *testing.T) {
	for name, a := range wrecks(t) {
		if a.WalkAway == nil {
			t.Errorf("%s has no bid: %v", name, a.Plans)
		}
	}
	c, k := wreck(t, "02_heavy_front_rail_bags"), starter(t)
	c.Market.HammerGuess = nil
	p, err := valuation.ProposeWays(c, k, false)
	if err != nil || len(p.Missing) != 1 || p.WaysOut.AsItStands.Money != nil || p.WaysOut.ForParts.Money == nil ||
		!p.WaysOut.ForParts.Starter {
		t.Errorf("without a guess: %+v, %v", p.WaysOut, err)
	}
	c.WaysOut = p.WaysOut
	if back, faults := casefile.Read(casefile.Write(c)); len(faults) > 0 || !back.WaysOut.ForParts.Starter {
		t.Errorf("it came back as %+v, %v", back.WaysOut, faults)
	}
	c.Currency = "EUR"
	c.WaysOut = valuation.WaysOut{}
	if p, err = valuation.ProposeWays(c, k, false); err != nil || len(p.Missing) != 2 || p.WaysOut.ForParts.Money != nil {
		t.Errorf("in another currency without a rate: %+v, %v", p, err)
	}
}
