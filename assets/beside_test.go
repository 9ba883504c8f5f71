package assets_test

import (
	"testing"

	"walkline/valuation/lot"
)

// beside are the things that a vehicle may have beside the damage, each of which makes it no cheaper. Nothing is said of dead against
// turns over: what a collision alone leaves dead is mostly cut off.
func beside() map[string]func(*lot.Lot) {
	no, all := false, map[string]func(*lot.Lot){}
	all["no keys"] = func(l *lot.Lot) { l.Keys = &no }
	for _, state := range []string{"turns_over", "dead"} {
		all[state] = func(l *lot.Lot) { l.Condition = state }
	}
	for _, bag := range lot.AirbagPositions {
		all["bag "+bag] = func(l *lot.Lot) { l.Airbags = []string{bag} }
	}
	for _, part := range lot.MissingKeys {
		all["without "+part] = func(l *lot.Lot) { l.Survey.Missing = []string{part} }
	}
	return all
}

// What is found beside the damage never makes a lot cheaper, whatever was hit: bags that fired, parts that are gone, keys that are gone, a
// vehicle that runs less.
func TestMoreBesideTheDamageIsNeverCheaper(t *testing.T) {
	j, r := jobs(t), risks(t)
	for _, power := range lot.Powertrains {
		for _, area := range lot.Areas {
			at := []lot.Damage{cell(area, "functional", "bolted")}
			drives, starts := seen(lot.Survey{Powertrain: power}), seen(lot.Survey{Powertrain: power})
			drives.Condition = "drives"
			base := expected(j, r, starts, at)
			worse(t, power+", "+area+": starts", base, expected(j, r, drives, at))
			for what, change := range beside() {
				l := seen(lot.Survey{Powertrain: power})
				change(&l)
				worse(t, power+", "+area+": "+what, expected(j, r, l, at), base)
			}
		}
	}
}

// Two places hurt cost no less than either alone, known and hidden together, though the work on one may spare some on the other.
func TestTwoPlacesCostNoLessThanOne(t *testing.T) {
	j, r := jobs(t), risks(t)
	var cells []lot.Damage
	for _, area := range lot.Areas {
		cells = append(cells, cell(area, "minor", "skin"), cell(area, "disabling", "structure"))
	}
	cost := func(survey ...lot.Damage) float64 { return expected(j, r, crash(), survey) }
	alone := map[lot.Damage]float64{}
	for _, x := range cells {
		alone[x] = cost(x)
	}
	for i, x := range cells {
		for _, y := range cells[i+1:] {
			if both, one := cost(x, y), max(alone[x], alone[y]); both < one-1e-6*one {
				t.Errorf("%v and %v: %.2f, one of them alone %.2f", x, y, both, one)
			}
		}
	}
}
