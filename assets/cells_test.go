package assets_test

import (
	"fmt"
	"slices"
	"testing"

	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// seen is a lot lost by a collision whose survey says that much.
func seen(s lot.Survey, loss ...string) lot.Lot {
	if len(loss) == 0 {
		loss = []string{"collision"}
	}
	return lot.Lot{Loss: loss, Condition: "starts", ModelYear: 2019, SaleDate: "2026-11-28", Survey: &s}
}

// expected returns the expected cost of what the survey calls for: known work, that which hidden damage brings, and the hidden
// damage, own hours at their rate.
func expected(j repair.Catalogue, r hidden.Catalogue, l lot.Lot, survey []lot.Damage) float64 {
	raised := settled(j, repair.Plan(nil, j, l, survey), hidden.Raise(nil, r, l, survey))
	money, hours := known(repair.Plan(nil, j, l, survey, causes(raised)...))
	return money + ownHour*hours + unseen(raised)
}

// settled returns the risks less where known work puts them right, as the engine counts them.
func settled(j repair.Catalogue, plan []repair.Line, risks []hidden.Risk) []hidden.Risk {
	chances := planned(plan)
	left := map[string]float64{}
	for _, x := range j.Jobs {
		for _, id := range x.Settles {
			if _, known := left[id]; !known {
				left[id] = 1
			}
			left[id] *= 1 - chances[x.ID]
		}
	}
	for i, r := range risks {
		if p, is := left[r.ID]; is {
			n := r.Chance.A + r.Chance.B
			risks[i].Chance.A *= p
			risks[i].Chance.B = n - risks[i].Chance.A
		}
	}
	return risks
}

func causes(risks []hidden.Risk) []repair.Cause {
	var all []repair.Cause
	for _, r := range risks {
		var brings []repair.Brought
		for _, w := range r.Brings {
			brings = append(brings, repair.Brought{ID: w.ID, Chance: w.Chance})
		}
		all = append(all, repair.Cause{ID: r.ID, Name: r.Name, Chance: r.Chance.Mean(), Brings: brings})
	}
	return all
}

// vehicles are the kinds and powertrains over which the properties hold.
func vehicles() []lot.Survey {
	all := []lot.Survey{{}}
	for _, kind := range []string{"car", "pickup", "van", "utility"} {
		for _, power := range lot.Powertrains {
			all = append(all, lot.Survey{Kind: kind, Powertrain: power, Driven: "all", PartsLevel: "usual", Doors: 4})
		}
	}
	return all
}

// Worse is never cheaper, known and hidden together: in every cell of the survey, for every kind of vehicle.
func TestWorseIsNeverCheaper(t *testing.T) {
	j, r := jobs(t), risks(t)
	for _, v := range vehicles() {
		for _, area := range lot.Areas {
			var cost [3][3]float64
			for e := range lot.Extents {
				for d := range lot.Depths {
					cost[e][d] = expected(j, r, seen(v), []lot.Damage{cell(area, lot.Extents[e], lot.Depths[d])})
					at := fmt.Sprintf("%s %s, %s, %s, %s", v.Kind, v.Powertrain, area, lot.Extents[e], lot.Depths[d])
					if e > 0 {
						worse(t, at, cost[e][d], cost[e-1][d])
					}
					if d > 0 {
						worse(t, at, cost[e][d], cost[e][d-1])
					}
				}
			}
		}
	}
}

func worse(t *testing.T, at string, more, less float64) {
	t.Helper()
	if more < less-1e-9*less {
		t.Errorf("%s: %.0f, and the smaller damage %.0f", at, more, less)
	}
}

// kept holds the catalogues, read once for all that rises; nothing changes them.
var kept struct {
	jobs  repair.Catalogue
	risks hidden.Catalogue
}

// rising checks that each survey of a list costs no less than the one before it.
func rising[T any](t *testing.T, what string, words []T, survey func(T) lot.Lot, damage ...lot.Damage) {
	t.Helper()
	if len(kept.jobs.Jobs) == 0 {
		kept.jobs, kept.risks = jobs(t), risks(t)
	}
	before := 0.0
	for _, w := range words {
		cost := expected(kept.jobs, kept.risks, survey(w), damage)
		worse(t, fmt.Sprintf("%s, %v", what, w), cost, before)
		before = cost
	}
}

func TestHigherWaterAndWorseWaterCostMore(t *testing.T) {
	for _, power := range lot.Powertrains {
		for _, kind := range lot.WaterKinds {
			rising(t, power+" in "+kind, lot.WaterHeights, func(h string) lot.Lot {
				return seen(lot.Survey{Powertrain: power, Water: &lot.Water{Height: h, Kind: kind}}, "flood")
			})
		}
		for _, height := range lot.WaterHeights {
			rising(t, power+" to the "+height, lot.WaterKinds, func(k string) lot.Lot {
				return seen(lot.Survey{Powertrain: power, Water: &lot.Water{Height: height, Kind: k}}, "flood")
			})
			rising(t, power+" hours at the "+height, []float64{0, 24, 72}, func(hours float64) lot.Lot {
				return seen(lot.Survey{Powertrain: power, Water: &lot.Water{Height: height, Kind: "fresh", Hours: &hours}}, "flood")
			})
		}
	}
}

func TestAFireThatWentFurtherCostsMore(t *testing.T) {
	for _, power := range []string{"combustion", "electric"} {
		for _, place := range lot.FirePlaces {
			rising(t, power+" fire at "+place, lot.FireReaches, func(reach string) lot.Lot {
				return seen(lot.Survey{Powertrain: power, Fire: &lot.Fire{Where: []string{place}, Reach: reach}}, "fire")
			})
		}
	}
}

// What is missing costs money, whatever else is; more causes, more miles and more years never make it cheaper.
func TestWhatIsMissingAndWhatIsOldCostMore(t *testing.T) {
	for _, power := range lot.Powertrains {
		for _, m := range lot.MissingKeys {
			rising(t, power+" without "+m, [][]string{nil, {m}}, func(gone []string) lot.Lot {
				return seen(lot.Survey{Powertrain: power,
					Missing: gone})
			})
		}
		for _, c := range lot.Causes {
			rising(t, power+" "+c, [][]string{{c}, {c, "oil_starved"}}, func(causes []string) lot.Lot {
				return seen(lot.Survey{Powertrain: power, Causes: causes}, "mechanical")
			})
		}
	}
	rising(t, "miles", []int{20000, 90000, 140000}, func(miles int) lot.Lot {
		l := seen(lot.Survey{}, "mechanical")
		l.Odometer, l.OdometerUnit = &miles, "mi"
		return l
	})
	rising(t, "age", []int{2024, 2018, 2012}, func(year int) lot.Lot { l := seen(lot.Survey{}); l.ModelYear = year; return l })
	rising(t, "price level", lot.PartsLevels, func(level string) lot.Lot { return seen(lot.Survey{PartsLevel: level}) }, cell("12",
		"functional", "bolted"))
}

// every returns lots of every loss, condition, and word of the survey for one vehicle.
func every(v lot.Survey) []lot.Lot {
	v.Missing, v.Causes, v.Doors = lot.MissingKeys, lot.Causes, 4
	var all []lot.Lot
	for _, loss := range lot.Losses {
		for _, state := range lot.Conditions {
			k, no, s := len(all)%len(lot.WaterKinds), false, v
			s.Water = &lot.Water{Height: "roof", Kind: lot.WaterKinds[k]}
			s.Hail = &lot.Hail{Count: lot.HailCounts[k], Size: "large", Glass: true}
			s.Fire = &lot.Fire{Where: lot.FirePlaces, Reach: lot.FireReaches[k]}
			l := seen(s, loss)
			l.Condition, l.Keys, l.Airbags = state, &no, lot.AirbagPositions
			all = append(all, l)
		}
	}
	return all
}

// Every job of the catalogue is called for by some lot, and every risk raised by one.
func TestEveryJobAndRiskIsReached(t *testing.T) {
	j, r := jobs(t), risks(t)
	reached := map[string]bool{}
	look := func(l lot.Lot, survey []lot.Damage) {
		for _, line := range repair.Plan(nil, j, l, survey) {
			reached[line.ID] = true
		}
		for _, x := range hidden.Raise(nil, r, l, survey) {
			reached["risk "+x.ID] = true
		}
	}
	for _, v := range []lot.Survey{{}, {Region: "salted"}, {Kind: "pickup"}, {Kind: "van", Powertrain: "electric"}} {
		for _, l := range every(v) {
			look(l, around())
		}
		for _, area := range lot.Areas {
			for _, extent := range lot.Extents {
				for _, depth := range lot.Depths {
					look(seen(v), []lot.Damage{cell(area, extent, depth)})
				}
			}
		}
	}
	look(seen(lot.Survey{Water: &lot.Water{Height: "carpet"}}, "flood"), nil)
	look(seen(lot.Survey{Hail: &lot.Hail{Count: "many"}}, "hail"), nil)
	for _, loss := range lot.Losses {
		look(seen(lot.Survey{}, loss), nil)
	}
	for _, x := range j.Jobs {
		if !reached[x.ID] {
			t.Errorf("no lot reaches the job %s", x.ID)
		}
	}
	miles := 90000
	old := seen(lot.Survey{})
	old.Odometer, old.OdometerUnit = &miles, "mi"
	look(old, nil)
	for _, x := range r.Risks {
		if !reached["risk "+x.ID] {
			t.Errorf("no lot reaches the risk %s", x.ID)
		}
	}
}

// No risk of what is replaced: where a job is certain, the hidden damage that it puts right is not counted beside it.
func TestNoRiskOfWhatIsReplaced(t *testing.T) {
	k, c := starter(t), wreck(t, "18_allaround")
	c.Survey.Causes, c.Lot.Loss = lot.Causes, lot.Losses
	before := map[string]bool{}
	for _, r := range valuation.Risks(c, k) {
		before[r.ID] = true
	}
	looked := 0
	for _, j := range k.Jobs.Jobs {
		if len(j.Settles) == 0 {
			continue
		}
		sure := c.Clone()
		line := j.Line
		line.Chance = nil
		sure.Repair.Lines = []repair.Line{line}
		for _, r := range valuation.Risks(sure, k) {
			if slices.Contains(j.Settles, r.ID) {
				t.Errorf("%s is certain, and %s is still a risk", j.ID, r.ID)
			}
		}
		for _, id := range j.Settles {
			if before[id] {
				looked++
			}
		}
	}
	if looked < 15 {
		t.Errorf("only %d risks were put right", looked)
	}
}
