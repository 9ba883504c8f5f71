package assets_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// A job that spares another names one that there is, not one that spares it back.
func TestSparedJobsAreThere(t *testing.T) {
	c := jobs(t)
	byID := map[string]repair.Job{}
	for _, j := range c.Jobs {
		byID[j.ID] = j
	}
	spared := 0
	for _, j := range c.Jobs {
		for _, id := range j.Spares {
			spared++
			other, ok := byID[id]
			if !ok || id == j.ID || slices.Contains(other.Spares, j.ID) {
				t.Errorf("%s spares %q", j.ID, id)
			}
			for _, further := range other.Spares {
				if !slices.Contains(j.Spares, further) {
					t.Errorf("%s spares %s, and that %s, which %s does not", j.ID, id, further, j.ID)
				}
			}
		}
	}
	if spared < 40 {
		t.Errorf("only %d jobs are spared", spared)
	}
}

// around is a vehicle hit on every side, as hard as each area can be.
func around() []lot.Damage {
	var survey []lot.Damage
	for _, area := range lot.Areas {
		for _, extent := range lot.Extents {
			for _, depth := range lot.Depths {
				survey = append(survey, cell(area, extent, depth))
			}
		}
	}
	return survey
}

// Common practice, no source: whatever was hit, there is one alignment, one set-up on the frame bench, one refill of the
// refrigerant, one colour match.
func TestSharedWorkIsCountedOnce(t *testing.T) {
	lines := repair.Plan(nil, jobs(t), bags(flooded, "front", "side"), around())
	for _, word := range []string{"align the wheels", "pull the body straight", "measure the body", "refrigerant", "match the color",
		"bleed the brakes",
		"seal the seams", "aim the headlamps", "restraint wiring", "programme or pair"} {
		var found []string
		for _, l := range lines {
			if strings.Contains(strings.ToLower(l.Job), word) {
				found = append(found, l.ID)
			}
		}
		if len(found) != 1 {
			t.Errorf("%q is planned as %v", word, found)
		}
	}
}

var (
	twice = regexp.MustCompile(`^(bumper_cover_front|bumper_cover_rear|hood|trunk_lid|roof|fender|front_door|rear_door|` +
		`quarter)(_replace)?(_left|_right)?$`)
	suffix = regexp.MustCompile(`(_left|_right)?$`)
)

// No panel is repaired and replaced, nor blended and painted, however many neighbors were hit: the chances come to no more than 1.
func TestAPanelIsDoneOnce(t *testing.T) {
	pairs := 0
	for _, survey := range [][]lot.Damage{around(), {cell("11", "functional", "bolted"), cell("10", "minor", "skin"),
		cell("12", "disabling", "structure")},
		{cell("09", "functional", "skin"), cell("10", "functional", "bolted"), cell("08", "minor", "skin"),
			cell("07", "functional", "structure")},
		{cell("09", "minor", "skin"), cell("03", "minor", "skin"), cell("02", "functional", "bolted"), cell("06", "functional", "structure"),
			cell("06", "functional", "skin")}} {
		chances := planned(repair.Plan(nil, jobs(t), crash(), survey))
		for id, p := range chances {
			var others []string
			if twice.MatchString(id) {
				base := strings.ReplaceAll(id, "_replace", "")
				others = append(others, suffix.ReplaceAllString(base, "_repair$1"))
			}
			if panel, is := strings.CutPrefix(id, "refinish_"); is {
				others = append(others, "blend_"+panel)
			}
			for _, other := range others {
				if q, both := chances[other]; both {
					pairs++
					if p+q > 1+1e-9 {
						t.Errorf("%s at %.3f and %s at %.3f", id, p, other, q)
					}
				}
			}
		}
	}
	if pairs < 6 {
		t.Errorf("only %d pairs were looked at", pairs)
	}
}

// An id names one job or one risk: a build notes both by their ids, so that finishing the one would finish the other.
func TestIDsAreUniqueOverJobsAndRisks(t *testing.T) {
	know, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	seen := map[string]string{}
	once := func(id, what string) {
		if seen[id] != "" {
			t.Errorf("%q is the id of a %s and of a %s", id, seen[id], what)
		}
		seen[id] = what
	}
	for _, j := range know.Jobs.Jobs {
		once(j.ID, "job")
	}
	for _, r := range know.Risks.Risks {
		once(r.ID, "risk")
	}
}

// What a job puts right is a risk that there is, and a panel that is replaced brings its refinish along.
func TestJobsSettleRisksAndPanelsCarryTheirRefinish(t *testing.T) {
	know, _ := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior())
	risks, settled := map[string]bool{}, 0
	for _, r := range know.Risks.Risks {
		risks[r.ID] = true
	}
	panel := regexp.MustCompile(`^(bumper_cover_(front|rear)|hood_replace|fender_(left|right)|(front|rear)_door_(left|right)|` +
		`quarter_(left|right)|trunk_lid|roof_replace)$`)
	for _, j := range know.Jobs.Jobs {
		for _, id := range j.Settles {
			settled++
			if !risks[id] {
				t.Errorf("%s puts %q right, which is no risk", j.ID, id)
			}
		}
		refinish := slices.ContainsFunc(j.Brings, func(b repair.Brought) bool { return strings.HasPrefix(b.ID, "refinish_") && b.Chance == nil })
		if panel.MatchString(j.ID) && !refinish {
			t.Errorf("%s brings no refinish", j.ID)
		}
	}
	if settled < 60 {
		t.Errorf("only %d risks are put right by a job", settled)
	}
}

// No list of a jurisdiction says the same twice.
func TestAPackSaysEachThingOnce(t *testing.T) {
	for _, p := range starter(t).Packs {
		said := map[string]bool{}
		for _, q := range p.Questions {
			if said[q.Text] {
				t.Errorf("%s asks twice: %s", p.ID, q.Text)
			}
			said[q.Text] = true
		}
	}
}
