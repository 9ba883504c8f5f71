package assets_test

import (
	"regexp"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// combustion is work or damage that only a car that burns fuel can have, by its own words.
var combustion = regexp.MustCompile(`(?i)exhaust|fuel|catalytic|muffler|oil pan|alternator|gearbox|transmission|timing|head gasket|` +
	`intake|air filter box|charge-air|the engine\b|engine harness|engine module|crank|sump`)

// bay is a place that every car calls by that name.
var bay = regexp.MustCompile(`(?i)engine[ -]bay`)

func burns(words string) bool { return combustion.MatchString(bay.ReplaceAllString(words, "")) }

func TestAnElectricCarHasNothingOfACombustionCar(t *testing.T) {
	j, r := jobs(t), risks(t)
	asked := map[string]bool{}
	for _, kind := range lot.Kinds[:4] {
		for _, l := range every(lot.Survey{Kind: kind, Powertrain: "electric"}) {
			for _, line := range repair.Plan(nil, j, l, around()) {
				words := line.Job
				for _, p := range line.Parts {
					words += "; " + p.Name
				}
				if burns(words) {
					t.Errorf("an electric %s gets %q (%s)", kind, words, line.ID)
				}
			}
			for _, x := range hidden.Raise(nil, r, l, around()) {
				if burns(x.Name) {
					t.Errorf("an electric %s risks %q (%s)", kind, x.Name, x.ID)
				}
				for _, e := range x.Findings {
					asked[e.Finding] = true
				}
			}
		}
	}
	for _, f := range r.Findings {
		if asked[f.ID] && burns(f.Text+" "+f.Look) {
			t.Errorf("an electric car is asked %q (%s)", f.Text, f.ID)
		}
	}
}

var charged = regexp.MustCompile(`(?i)the pack|battery pack|high-voltage|inverter|charge port|drive unit|charging`)

func TestACombustionCarHasNothingOfAnElectricOne(t *testing.T) {
	j, r := jobs(t), risks(t)
	for _, kind := range lot.Kinds[:4] {
		for _, l := range every(lot.Survey{Kind: kind, Powertrain: "combustion"}) {
			for _, line := range repair.Plan(nil, j, l, around()) {
				if charged.MatchString(line.Job) {
					t.Errorf("a combustion %s gets %q (%s)", kind, line.Job, line.ID)
				}
			}
			for _, x := range hidden.Raise(nil, r, l, around()) {
				if charged.MatchString(x.Name) {
					t.Errorf("a combustion %s risks %q (%s)", kind, x.Name, x.ID)
				}
			}
		}
	}
}
