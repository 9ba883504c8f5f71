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
	c := donor.Catalogue{Terms: donor.Terms{Selling: .1, Overhead: prob.Certain(2), Days: prob.Certain(30), Scrap: prob.Certain(100),
		Runs: donor.Running{Unknown: 1}},
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

// Every wreck gets a bid once its ways out are proposed: what no shop would rebuild still has parts. As it stands needs no guess.
func TestHeavyWrecksHaveAPlan(t *testing.T) {
	for name, a := range wrecks(t) {
		if a.WalkAway == nil {
			t.Errorf("%s has no bid: %v", name, a.Plans)
		}
	}
	c, k := wreck(t, "02_heavy_front_rail_bags"), starter(t)
	c.Market.HammerGuess = nil
	p, err := valuation.ProposeWays(c, k, false)
	if err != nil || len(p.Missing) != 0 || p.WaysOut.AsItStands.Money == nil || !p.WaysOut.AsItStands.Starter ||
		p.WaysOut.ForParts.Money == nil || !p.WaysOut.ForParts.Starter {
		t.Errorf("without a guess: %+v, %v", p.WaysOut, err)
	}
	c.WaysOut = p.WaysOut
	if back, faults := casefile.Read(casefile.Write(c)); len(faults) > 0 || !back.WaysOut.ForParts.Starter {
		t.Errorf("it came back as %+v, %v", back.WaysOut, faults)
	}
	c.Currency = "EUR"
	c.WaysOut = valuation.WaysOut{}
	if p, err = valuation.ProposeWays(c, k, false); err != nil || len(p.Missing) != 1 || p.WaysOut.ForParts.Money != nil {
		t.Errorf("in another currency without a rate: %+v, %v", p, err)
	}
}

// What the lot brings as it stands follows the wreck: it is never more than what the guess leaves, never more than what the next buyer has
// of it, more damage never raises it, and a title that keeps it off the road leaves the next buyer its parts alone. Worked from the
// proposal's own words, with the shares of package hammer.
func TestAsItStandsFollowsTheWreck(t *testing.T) {
	k := starter(t)
	standing := func(name string, change func(*valuation.Case)) prob.Three {
		c := wreck(t, name)
		c.Market.HammerGuess = nil
		change(&c)
		p, err := valuation.ProposeWays(c, k, false)
		if err != nil || p.WaysOut.AsItStands.Money == nil {
			t.Fatal(name, p.Missing, err)
		}
		return *p.WaysOut.AsItStands.Money
	}
	as := func(*valuation.Case) {}
	scuff, light, heavy := standing("01b_scuff_front", as), standing("01_light_front", as), standing("02_heavy_front_rail_bags", as)
	if !(scuff.Likely > light.Likely && light.Likely > heavy.Likely) {
		t.Errorf("a scuff brings %.0f as it stands, a light front %.0f, a heavy one %.0f", scuff.Likely, light.Likely, heavy.Likely)
	}
	low := standing("01b_scuff_front", func(c *valuation.Case) { c.Market.HammerGuess = &prob.Three{Low: 900, Likely: 1000, High: 1200} })
	if want := .9*1000 - 250; math.Abs(low.Likely-want) > 1e-9 {
		t.Errorf("under a guess of 1,000 it brings %.0f, want %.0f", low.Likely, want)
	}
	dear := func(c *valuation.Case) { c.Market.HammerGuess = &prob.Three{Low: 8000, Likely: 9000, High: 10000} }
	if got := standing("02_heavy_front_rail_bags", dear); got != heavy {
		t.Errorf("a guess far above the wreck's worth makes it %v, not %v", got, heavy)
	}
	junk := standing("01b_scuff_front", func(c *valuation.Case) { c.Lot.Title.Document = "certificate_of_destruction" })
	if junk.Likely >= scuff.Likely/2 {
		t.Errorf("for parts alone it brings %.0f, to be driven %.0f", junk.Likely, scuff.Likely)
	}
}

// A vehicle that is dead after a blow is mostly cut off, not worn out: the chance that its engine runs has the odds that the catalogue of
// risks has for a seized one where a collision alone did it. A flood or a fire speaks against it as before.
func TestDeadAfterABlowIsNotWornOut(t *testing.T) {
	k := starter(t)
	engine := func(condition string, loss ...string) float64 {
		for _, i := range k.Parts.Propose(lot.Lot{Condition: condition, Loss: loss}, nil, 10000, false).Items {
			if i.ID == "engine" {
				return i.Sells / i.Chance
			}
		}
		return 0
	}
	odds := 0.0
	for _, r := range k.Risks.Risks {
		for _, m := range r.Moves {
			if r.ID == "engine_seized" && slices.Equal(m.When.Only, []string{"collision"}) {
				odds = m.Odds
			}
		}
	}
	if odds == 0 {
		t.Fatal("the catalogue of risks says nothing of a seized engine after a collision")
	}
	for _, condition := range []string{"dead", "turns_over", "unknown"} {
		bad := (1 - engine(condition)) / engine(condition) * odds
		if got, want := engine(condition, "collision"), 1/(1+bad); math.Abs(got-want) > .02 {
			t.Errorf("%s after a collision: runs %.2f, by the odds %.2f", condition, got, want)
		}
		for _, loss := range []string{"flood", "fire", "other"} {
			if engine(condition, loss, "collision") != engine(condition) {
				t.Errorf("%s after %s and a collision counts as a blow alone", condition, loss)
			}
		}
	}
}

// No assembly below the skin is given up for a blow at which the catalogue of jobs renews none of its parts.
func TestAssembliesAreGivenUpWhereTheirPartsAreRenewed(t *testing.T) {
	k := starter(t)
	parts := map[string][]string{"axle_front": {"control_arm_front_left", "control_arm_front_right", "subframe_front", "knuckle_front_left",
		"knuckle_front_right"}, "auxiliaries": {"compressor", "alternator", "flood_starter_alternator"},
		"cooling":   {"radiator", "condenser", "cooling_fan"},
		"axle_rear": {"arm_rear_left", "arm_rear_right", "subframe_rear", "rear_axle", "knuckle_rear_left", "knuckle_rear_right"}}
	looked := 0
	for _, a := range k.Parts.Assemblies {
		for area, extent := range a.Near {
			if len(parts[a.ID]) == 0 || extent == donor.Marks {
				continue
			}
			looked++
			c := wreck(t, "17_no_damage")
			c.Damage = []lot.Damage{{Area: area, Extent: "disabling", Depth: "structure"}}
			if !slices.ContainsFunc(valuation.Plan(c, k), func(l valuation.PlannedLine) bool { return slices.Contains(parts[a.ID], l.ID) }) {
				t.Errorf("%s is given up at %s, where none of %v is renewed", a.ID, area, parts[a.ID])
			}
		}
	}
	if looked < 12 {
		t.Errorf("only %d looked at", looked)
	}
}
