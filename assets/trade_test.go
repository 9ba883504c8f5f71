package assets_test

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

var geometry = regexp.MustCompile(`^(strut_front|control_arm_front|knuckle|tie_rod|arm_rear|strut_tower)_|^(steering_rack|` +
	`subframe_front|subframe_rear|rear_axle)$`)

// Common practice, no source: a car with suspension damage needs an alignment about 99 times in 100.
func TestSuspensionBringsAnAlignment(t *testing.T) {
	c, found := jobs(t), 0
	for _, j := range c.Jobs {
		if !geometry.MatchString(j.ID) {
			continue
		}
		found++
		at := slices.IndexFunc(j.Brings, func(b repair.Brought) bool { return b.ID == "wheel_alignment" })
		if at < 0 || j.Brings[at].Chance == nil || *j.Brings[at].Chance != 0.99 {
			t.Errorf("%s does not bring an alignment 99 times in 100", j.ID)
		}
	}
	if found < 15 {
		t.Errorf("only %d jobs on suspension and steering", found)
	}
	for _, area := range []string{"01", "11", "02", "10", "04", "08", "05", "07"} {
		lines := repair.Plan(nil, c, crash(), []lot.Damage{{Area: area, Extent: "disabling", Depth: "bolted"}})
		if p := planned(lines)["wheel_alignment"]; p < 0.85 || p > 0.999 {
			t.Errorf("a disabling blow at %s needs an alignment %.3f of the time", area, p)
		}
	}
}

// Common practice, no source: a used maker's axle goes for about a third of a new one.
func TestUsedAxleIsAThirdOfANewOne(t *testing.T) {
	for _, id := range []string{"rear_axle", "half_shaft_front_left", "half_shaft_front_right"} {
		price := map[string]float64{}
		for _, o := range job(t, id).Parts[0].Options {
			price[o.Source] = o.Price.Likely
		}
		if r := price["used"] / price["new_maker"]; !(r > 0.30 && r < 0.37) {
			t.Errorf("%s: used is %.2f of new", id, r)
		}
	}
}

// A weld leaves bare seams; a cover, a bolted panel or a welded one is painted; an opened cooling circuit is filled.
func TestWorkBringsWhatBelongsToIt(t *testing.T) {
	for id, wants := range map[string][]string{
		"rail_end_left": {"corrosion_protection", "frame_measure"}, "apron_right": {"corrosion_protection", "frame_measure"},
		"middle_pillar_left": {"corrosion_protection", "frame_measure", "refinish_side_frame_left"},
		"quarter_right":      {"corrosion_protection", "refinish_quarter_right"},
		"rear_body_panel":    {"corrosion_protection", "refinish_rear_body"},
		"bumper_cover_front": {"refinish_bumper_front", "calibrate_front_sensors"},
		"fender_left":        {"refinish_fender_left"}, "refinish_fender_left": {"blend_front_door_left"},
		"bumper_cover_rear": {"refinish_bumper_rear", "calibrate_rear_sensors"}, "condenser": {"refrigerant_refill"},
		"radiator_support_welded": {"refrigerant_refill"}, "radiator": {"coolant_fill"}, "windshield": {"calibrate_front_sensors"},
		"airbag_driver": {"restraint_test"}, "brake_lines": {"brake_bleed"},
	} {
		j := job(t, id)
		for _, want := range wants {
			if !slices.ContainsFunc(j.Brings, func(b repair.Brought) bool { return b.ID == want }) {
				t.Errorf("%s does not bring %s", id, want)
			}
		}
	}
}

// Work that is shared between jobs is called for by no damage of its own, so that it is counted once.
func TestSharedWorkIsReachedThroughOtherJobs(t *testing.T) {
	for _, id := range []string{"wheel_alignment", "refrigerant_refill", "coolant_fill", "frame_measure", "corrosion_protection",
		"brake_bleed",
		"paint_setup", "module_programming", "calibrate_front_sensors", "calibrate_rear_sensors", "headlamp_aim", "glass_cleanup"} {
		if len(job(t, id).Calls) != 0 {
			t.Errorf("%s is called for by itself", id)
		}
	}
}

// Left and right are the same work, mirrored.
func TestSidesAreMirrored(t *testing.T) {
	c := jobs(t)
	byID := map[string]repair.Job{}
	for _, j := range c.Jobs {
		byID[j.ID] = j
	}
	for _, j := range c.Jobs {
		if !strings.HasSuffix(j.ID, "_left") || j.ID == "theft_glass" {
			continue
		}
		twin, ok := byID[strings.TrimSuffix(j.ID, "left")+"right"]
		if !ok {
			t.Errorf("%s has no twin on the right", j.ID)
			continue
		}
		if a, b := figures(t, j), figures(t, twin); a != b {
			t.Errorf("%s and its twin differ:\n%s\n%s", j.ID, a, b)
		}
	}
}

// figures returns all that a job costs, as text.
func figures(t *testing.T, j repair.Job) string {
	t.Helper()
	for i := range j.Parts {
		j.Parts[i].Name = ""
	}
	text, err := json.Marshal([]any{j.Operation, j.Chance, j.Hours, j.Materials, j.Outside, j.Parts, j.Caution, len(j.Calls), len(j.Brings)})
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

var (
	dangerous = regexp.MustCompile(`airbag|seat_belt|restraint|steering|strut|control_arm|knuckle|tie_rod|hub_bearing|arm_rear|subframe|` +
		`rear_axle|brake_(corner|lines|booster|bleed)|fuel_|^pack_|^hv_|rail_end|rear_rail|pillar_(left|right)$|^frame_pull|^refinish_`)
	decides = regexp.MustCompile(`maker's procedure`)
	law     = regexp.MustCompile(`\b(code|law|inspection)\b`)
)

// Work that can hurt carries its caution; a used part or straightening in structure, restraints, steering, brakes or the
// battery pack names the maker's procedure and the law as what decides.
func TestDangerousWorkCarriesItsCaution(t *testing.T) {
	c := jobs(t)
	for _, j := range c.Jobs {
		_, structural := j.Hours["structure"]
		if (structural || dangerous.MatchString(j.ID)) && j.Caution == "" && !strings.HasPrefix(j.ID, "pillar_trims") {
			t.Errorf("%s carries no caution", j.ID)
		}
		used := slices.ContainsFunc(j.Parts, func(p repair.Part) bool {
			return slices.ContainsFunc(p.Options, func(o repair.Option) bool { return o.Source == "used" || o.Source == "repaired" })
		})
		bears := structural || j.Area == "battery_pack" || (dangerous.MatchString(j.ID) && !strings.HasPrefix(j.ID, "refinish_"))
		if bears && (used || j.Operation == "straighten") && !(decides.MatchString(j.Caution) && law.MatchString(j.Caution)) {
			t.Errorf("%s may be done with a used part or by straightening, and its caution names not what decides: %q", j.ID, j.Caution)
		}
	}
	for id, source := range map[string]string{"pack_isolation_test": "SB 5909", "airbag_driver": "21770rbm",
		"paint_setup": "NIOSHTIC 20030927", "rail_end_left": "WAC 296-155-415"} {
		if !strings.Contains(job(t, id).Caution, source) {
			t.Errorf("%s does not name its source %s", id, source)
		}
	}
}

// A hidden risk in restraints, steering, brakes, fuel, the battery pack or structure carries its caution.
func TestDangerousRisksCarryTheirCaution(t *testing.T) {
	dangerous := regexp.MustCompile(`restraint|belt|steering|strut_tower|knuckle|hub_bearing|brake|fuel|^pack_|_pack$|pillar|rail_(end|` +
		`kicked)|steel`)
	found := 0
	for _, r := range risks(t).Risks {
		_, structural := r.Hours["structure"]
		if !structural && !dangerous.MatchString(r.ID) {
			continue
		}
		found++
		if r.Caution == "" {
			t.Errorf("%s can hurt someone and carries no caution", r.ID)
		}
	}
	if found < 30 {
		t.Errorf("only %d risks were held to carry a caution", found)
	}
}

func job(t *testing.T, id string) repair.Job {
	t.Helper()
	all := jobs(t).Jobs
	at := slices.IndexFunc(all, func(j repair.Job) bool { return j.ID == id })
	if at < 0 {
		t.Fatalf("no job %s", id)
	}
	return all[at]
}

func crash() lot.Lot { return lot.Lot{Loss: []string{"collision"}, Condition: "starts"} }

// planned returns the chance of each planned line.
func planned(lines []repair.Line) map[string]float64 {
	chances := map[string]float64{}
	for _, l := range lines {
		chances[l.ID] = repair.Or(l.Chance, 1)
	}
	return chances
}

// Every area, extent and depth calls for some work, and every kind of loss for some work or some risk.
func TestNothingIsLeftWithoutWork(t *testing.T) {
	c, r := jobs(t), risks(t)
	for _, area := range lot.Areas {
		for _, extent := range lot.Extents {
			for _, depth := range lot.Depths {
				if len(without(repair.Plan(nil, c, crash(), []lot.Damage{{Area: area, Extent: extent, Depth: depth}}), anyway)) == 0 {
					t.Errorf("%s, %s, %s calls for nothing", area, extent, depth)
				}
			}
		}
	}
	bare := map[string]bool{"collision": true, "other": true}
	for _, loss := range lot.Losses {
		l := lot.Lot{Loss: []string{loss}, Condition: "starts"}
		if len(without(repair.Plan(nil, c, l, nil), anyway)) == 0 && !bare[loss] {
			t.Errorf("a lot lost by %s calls for no work", loss)
		}
		if len(hidden.Raise(nil, r, l, nil)) == 0 {
			t.Errorf("a lot lost by %s raises no risk", loss)
		}
	}
}

// alone returns the chance of one risk after answers.
func alone(r hidden.Risk, answers map[string]string) float64 {
	return hidden.After([]hidden.Risk{r}, answers, 0).Chances[0]
}

// Common practice, no source: where a string along a straight side shows both wheels within about 1 mm, nothing needs to be set: the
// look all but rules out what would stand a wheel askew.
func TestAStraightStringNeedsNoAdjustment(t *testing.T) {
	found := 0
	for _, r := range risks(t).Risks {
		at := slices.IndexFunc(r.Findings, func(e hidden.Evidence) bool { return e.Finding == "string_off_wheels" })
		if at < 0 {
			continue
		}
		found++
		before, straight := r.Chance.Mean(), alone(r.Risk, map[string]string{"string_off_wheels": "no"})
		if straight > .03 || straight > before/5 {
			t.Errorf("%s: %.3f before the string, %.3f when it is straight", r.ID, before, straight)
		}
		if off := alone(r.Risk, map[string]string{"string_off_wheels": "yes"}); off < .5 {
			t.Errorf("%s: %.3f when the string shows a wheel askew", r.ID, off)
		}
	}
	if found < 4 {
		t.Errorf("only %d risks ask for the string", found)
	}
}

// The topics that a rebuilder is warned of, with a word that only their caution has and work that must carry it.
var topics = []struct {
	topic, word string
	work        *regexp.Regexp
}{
	{"deployed restraints", "Charges can fire", regexp.MustCompile(`airbag|restraint_(module|test)|crash_sensor|^dash_pad$|^headliner$`)},
	{"seat belts", "belt that has held a person", regexp.MustCompile(`^seat_belt_`)},
	{"high-strength steel", "igh-strength steel is not heated",
		regexp.MustCompile(`^(rail_end|apron|middle_pillar|hinge_pillar|rocker|rear_rail|strut_tower)_(left|right)$|^bumper_beam_`)},
	{"steering and suspension", "never bent back",
		regexp.MustCompile(`^(strut_front|control_arm|knuckle|tie_rod|arm_rear)|^steering_rack$|^subframe_|^rear_axle$`)},
	{"battery packs", "50 ft", regexp.MustCompile(`^pack_|^hv_cables$|^inverter$`)},
	{"fuel", "Fuel and its vapour", regexp.MustCompile(`^fuel_`)},
	{"lifting", "rated stands", regexp.MustCompile(`^(tyre|wheel_speed_sensor|liner_rear)_|^wheel_alignment$|^undertray_front$`)},
	{"pulling under load", "Pulling gear stores great force", regexp.MustCompile(`^frame_pull$`)},
	{"welding light and fume", "zinc fume", regexp.MustCompile(`^(rail_end|apron|quarter|floor_side)_(left|right)$|^floor_pan$|` +
		`^rear_body_panel$`)},
	{"isocyanates", "isocyanates", regexp.MustCompile(`^(refinish|blend)_|^paint_setup$`)},
	{"biological finds", "Needles, blood", regexp.MustCompile(`^flood_(carpet|seats|strip_dry|mould)|^interior_clean$`)},
	{"used, recalled and counterfeit bags and belts", "counterfeit and recalled inflators",
		regexp.MustCompile(`^(airbag_|knee_airbag$|seat_airbag_|curtain_airbag_|seat_front_|seat_belt_front_|theft_seats$)`)},
	{"converters", "emissions law", regexp.MustCompile(`^catalytic_converter$`)},
	{"refrigerant", "certified person", regexp.MustCompile(`^refrigerant_refill$`)},
	{"sectioning in a clip", "forbid sectioning", regexp.MustCompile(`^rear_clip$`)},
	{"sharp finds", "Broken glass", regexp.MustCompile(`^glass_cleanup$|_glass_(left|right)$`)},
}

func TestEveryTopicIsWarnedOf(t *testing.T) {
	for _, topic := range topics {
		found := 0
		for _, j := range jobs(t).Jobs {
			if topic.work.MatchString(j.ID) {
				found++
				if !strings.Contains(j.Caution, topic.word) {
					t.Errorf("%s: %s says %q", topic.topic, j.ID, j.Caution)
				}
			}
		}
		if found == 0 {
			t.Errorf("%s: no work", topic.topic)
		}
	}
}

// careful are the parts that have a caution of their own wherever they are bought, taken out or opened, with a word that it has.
var careful = []struct {
	what, word string
	part       *regexp.Regexp
}{
	{"airbags and inflators", "counterfeit", regexp.MustCompile(`(?i)\bair ?bag\b(?:.*(cushion|bag|inflator))?$|inflator`)},
	{"catalytic converters", "emissions law", regexp.MustCompile(`(?i)catalytic|converter$`)},
	{"lithium batteries", "burn later", regexp.MustCompile(`(?i)battery pack|pack module|high-voltage (battery|module)|lithium`)},
	{"refrigerant", "Refrigerant", regexp.MustCompile(`(?i)condenser|compressor|evaporator|refrigerant|air[- ]conditioning (line|hose)`)},
}

// What can hurt has its caution wherever it is worked on, also inside an assembly that covers that work.
func TestCarefulPartsCarryTheirCautionEverywhere(t *testing.T) {
	all := jobs(t).Jobs
	for _, c := range careful {
		touches := map[string]bool{}
		for _, j := range all {
			for _, p := range j.Parts {
				touches[j.ID] = touches[j.ID] || c.part.MatchString(p.Name)
			}
		}
		for _, j := range all {
			if slices.ContainsFunc(j.Covers, func(id string) bool { return touches[id] }) {
				touches[j.ID] = true
			}
		}
		found := 0
		for _, j := range all {
			if !touches[j.ID] {
				continue
			}
			if found++; !strings.Contains(j.Caution, c.word) {
				t.Errorf("%s: %s (%s) says %q", c.what, j.ID, j.Job, j.Caution)
			}
		}
		for _, r := range risks(t).Risks {
			if what, _, _ := strings.Cut(r.Name, " behind "); c.part.MatchString(what) && !strings.Contains(r.Caution, c.word) {
				t.Errorf("%s: the risk %s (%s) says %q", c.what, r.ID, r.Name, r.Caution)
			}
		}
		if found == 0 {
			t.Errorf("%s: no work", c.what)
		}
	}
}

// Every job of the shop has hours, work bought in apart; what is replaced has parts from somewhere, or is made from materials.
func TestEveryJobHasItsHoursAndItsParts(t *testing.T) {
	for _, j := range jobs(t).Jobs {
		if len(j.Hours) == 0 && j.Outside.Zero() {
			t.Errorf("%s takes nobody's time", j.ID)
		}
		if j.Operation == "replace" && len(j.Parts) == 0 && j.Materials.Zero() {
			t.Errorf("%s is replaced by nothing", j.ID)
		}
	}
}
