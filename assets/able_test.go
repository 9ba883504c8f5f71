package assets_test

import (
	"regexp"
	"slices"
	"testing"

	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
)

// powered are words of what is done with the ignition on.
const powered = `(?i)\b(key in|ignition is|switch on and|read the codes|or the codes|read all modules|restraint codes|codes of`

// tells says by its words what a look asks of the vehicle. Common practice, no source.
var tells = map[string]*regexp.Regexp{
	"crank":   regexp.MustCompile(`(?i)\b(cranks?|jump start|turn over|starter)\b`),
	"run":     regexp.MustCompile(`(?i)\b(running|idles?|yard starts)\b`),
	"keys":    regexp.MustCompile(powered + `|lock free)\b`),
	"battery": regexp.MustCompile(powered + `)\b`),
}

func TestALookSaysWhatItAsksOfTheVehicle(t *testing.T) {
	said := map[string]int{}
	for _, f := range risks(t).Findings {
		for need, words := range tells {
			if words.MatchString(f.Text+" "+f.Look) != slices.Contains(f.Needs, need) && !(need == "keys" && slices.Contains(f.Needs, "crank")) &&
				!(need == "battery" && slices.Contains(f.Needs, "crank")) {
				t.Errorf("%s: %q %q does not agree with its need of %q", f.ID, f.Text, f.Look, need)
			}
		}
		for _, need := range f.Needs {
			said[need]++
		}
	}
	for _, need := range lot.Abilities {
		if said[need] == 0 {
			t.Errorf("no look needs %q", need)
		}
	}
}

// No look is asked of a vehicle that lacks what it takes, on any wreck, however it stands, with keys or without, dry, flooded and rolled.
func TestNoLookAsksWhatTheVehicleCannot(t *testing.T) {
	k := starter(t)
	needs := map[string]hidden.Finding{}
	for _, f := range k.Risks.Findings {
		needs[f.ID] = f
	}
	kept := map[string]bool{}
	for n, name := range wreckNames(t) {
		c, k := wreck(t, name), starter(t)
		c.Run.Scenarios, c.Run.WinnersAllowance, c.WaysOut = 16, false, valuation.WaysOut{}
		for i, c := range states(c) {
			if (n+i)%8 == 0 { // every state on several wrecks
				asked(t, k, c, needs, kept)
			}
		}
	}
	for id, f := range needs {
		if len(f.Needs) > 0 && !kept[id] {
			t.Errorf("%s is asked of no wreck at all", id)
		}
	}
}

// states returns the case in every state of vehicle, keys and losses that bears on what can be done with it.
func states(c valuation.Case) []valuation.Case {
	var all []valuation.Case
	for _, condition := range lot.Conditions {
		for _, keys := range []bool{true, false} {
			for _, hurt := range []string{"", "flood", "brand", "roll", "fire"} {
				x := c
				x.Lot.Condition, x.Lot.Keys = condition, &keys
				switch hurt {
				case "flood", "fire":
					x.Lot.Loss = append(slices.Clone(x.Lot.Loss), hurt)
				case "brand":
					x.Lot.Title.Brands = append(slices.Clone(x.Lot.Title.Brands), "flood damage")
				case "roll":
					x.Damage = append(slices.Clone(x.Damage), lot.Damage{Area: "top", Extent: "disabling", Depth: "structure"})
				}
				all = append(all, x)
			}
		}
	}
	return all
}

func asked(t *testing.T, k valuation.Knowledge, c valuation.Case, needs map[string]hidden.Finding, kept map[string]bool) {
	t.Helper()
	answer, err := valuation.Value(c, k)
	if err != nil {
		t.Fatal(err)
	}
	water := slices.Contains(c.Lot.Loss, "flood") || slices.Contains(c.Lot.Title.Brands, "flood damage") ||
		c.Survey != nil && c.Survey.Water != nil
	rolled := slices.Contains(c.Damage, lot.Damage{Area: "top", Extent: "disabling", Depth: "structure"})
	stands := water || rolled || slices.Contains(c.Lot.Loss, "fire") || c.Survey != nil && c.Survey.Fire != nil
	for _, i := range answer.Checklist {
		f := needs[i.ID]
		off := map[string]bool{"keys": !*c.Lot.Keys, "battery": c.Lot.Condition == "dead", "crank": stands,
			"run": stands || c.Lot.Condition == "dead" || c.Lot.Condition == "turns_over"}
		for _, need := range f.Needs {
			kept[i.ID] = true
			if off[need] {
				t.Errorf("%s needs %q and is asked of a lot that is %s, keys %v, water %v, rolled %v, lost by %q", i.ID, need, c.Lot.Condition,
					*c.Lot.Keys, water, rolled, c.Lot.Loss)
			}
		}
	}
}
