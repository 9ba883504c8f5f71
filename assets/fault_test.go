package assets_test

import (
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// The checks of this package see the faults that they are there for: each change to a sound job is found.
func TestFaultsOfAJobAreSeen(t *testing.T) {
	sound := func() repair.Job { return job(t, "headlamp_left") }
	known := map[string]bool{"headlamp_aim": true}
	if faults := jobFaults(sound(), known); len(faults) > 0 {
		t.Fatalf("the sound job is faulty: %v", faults)
	}
	half, twice := 0.5, 2.0
	for name, spoil := range map[string]func(*repair.Job){
		"unknown area":        func(j *repair.Job) { j.Area = "13" },
		"no reason":           func(j *repair.Job) { j.Why = "" },
		"unknown trade":       func(j *repair.Job) { j.Hours["glass"] = prob.Certain(1) },
		"hours out of order":  func(j *repair.Job) { j.Hours["body"] = prob.Three{Low: 2, Likely: 1, High: 3} },
		"negative money":      func(j *repair.Job) { j.Outside = prob.Certain(-1) },
		"chance above one":    func(j *repair.Job) { j.Chance = &twice },
		"unknown job brought": func(j *repair.Job) { j.Brings[0].ID = "headlamp_aimed" },
		"brought twice over":  func(j *repair.Job) { j.Brings[0].Chance = &twice },
		"unknown extent":      func(j *repair.Job) { j.Calls[0].Extents[0] = "severe" },
		"unknown loss":        func(j *repair.Job) { j.Calls[0].Loss = []string{"storm"} },
		"empty sign":          func(j *repair.Job) { j.Calls[0] = lot.Sign{} },
		"unknown source":      func(j *repair.Job) { j.Parts[0].Options[0].Source = "second_hand" },
		"no option":           func(j *repair.Job) { j.Parts[0].Options = nil },
		"nothing in the end":  func(j *repair.Job) { j.Parts[0].Fallback = nil },
		"a fallback for free": func(j *repair.Job) { j.Parts[0].Fallback = &repair.Fallback{} },
	} {
		j := sound()
		spoil(&j)
		if len(jobFaults(j, known)) == 0 {
			t.Errorf("%s is not seen", name)
		}
	}
	j := sound()
	j.Parts[0].Fallback, j.Parts[0].Options[0].Chance = nil, nil
	if faults := jobFaults(j, known); len(faults) > 0 {
		t.Errorf("a sure option needs no fallback: %v", faults)
	}
	j.Parts[0].Options[0].Chance = &half
	if len(jobFaults(j, known)) == 0 {
		t.Error("an unsure option without a fallback is not seen")
	}
}

func TestFaultsOfARiskAreSeen(t *testing.T) {
	sound := func() hidden.Entry {
		for _, r := range risks(t).Risks {
			if r.ID == "radiator_leak" {
				return r
			}
		}
		t.Fatal("no risk radiator_leak")
		return hidden.Entry{}
	}
	known := map[string]bool{"coolant_under_car": true, "radiator_pushed_back": true}
	if faults := riskFaults(sound(), known); len(faults) > 0 {
		t.Fatalf("the sound risk is faulty: %v", faults)
	}
	heavy := 0.7
	for name, spoil := range map[string]func(*hidden.Entry){
		"weighs too much":        func(r *hidden.Entry) { r.Chance = hidden.Beta{A: 10, B: 30} },
		"never there":            func(r *hidden.Entry) { r.Chance = hidden.Beta{A: 0, B: 8} },
		"leans too much":         func(r *hidden.Entry) { r.Loading = &heavy },
		"no trigger":             func(r *hidden.Entry) { r.Triggers = nil },
		"unknown depth":          func(r *hidden.Entry) { r.Triggers[0].Depths = []string{"deep"} },
		"unknown finding":        func(r *hidden.Entry) { r.Findings[0].Finding = "coolant" },
		"speaks against itself":  func(r *hidden.Entry) { r.Findings[0].IfPresent = 0.01 },
		"certain evidence":       func(r *hidden.Entry) { r.Findings[0].IfPresent = 1 },
		"costs nothing":          func(r *hidden.Entry) { r.Cost = prob.Three{} },
		"days out of order":      func(r *hidden.Entry) { r.Days = prob.Three{Low: 5, Likely: 1, High: 9} },
		"days shorter than work": func(r *hidden.Entry) { r.Hours["mechanical"] = prob.Certain(90) },
	} {
		r := sound()
		spoil(&r)
		if len(riskFaults(r, known)) == 0 {
			t.Errorf("%s is not seen", name)
		}
	}
}
