package patterns

import (
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// lossShare is how often a lot comes to a sale by each cause. Starter values, from memory.
var lossShare = map[string]float64{"collision": .7, "flood": .07, "fire": .02, "theft": .06, "hail": .06, "vandalism": .02,
	"mechanical": .07}

// starters returns the patterns of one cause with their starter weights, which sum to 1.
func starters(loss string, areas []string) []Pattern {
	switch loss {
	case "collision":
		return collisions(areas)
	case "flood":
		return floods()
	case "fire":
		return fires()
	case "theft":
		return thefts(areas)
	case "hail":
		return hails()
	case "vandalism":
		return vandalism(areas)
	case "mechanical":
		return mechanical()
	}
	return nil
}

// of returns the patterns of one cause, their chances summing to share.
func (c Counts) of(loss string, areas []string, share float64) []Pattern {
	all := starters(loss, areas)
	c.weigh(loss, all)
	for i := range all {
		all[i].Chance *= share
		all[i].Loss = append([]string{loss}, all[i].Loss...)
	}
	return all
}

// floods by the height of the water. Starter values, from memory.
func floods() []Pattern {
	var out []Pattern
	height := []float64{.25, .35, .3, .1}
	cost := []float64{.25, .45, .7, .85}
	for i, h := range lot.WaterHeights {
		for kind, share := range map[string]float64{"fresh": .75, "salt": .25} {
			p := Pattern{Chance: height[i] * share, Cost: cost[i], still: min(i+1, 3), Words: wetWords(kind, h),
				Survey: &lot.Survey{Water: &lot.Water{Height: h, Kind: kind}}}
			if kind == "salt" {
				p.Cost, p.still = p.Cost+.1, 3
			}
			out = append(out, p)
		}
	}
	slices.SortFunc(out, func(a, b Pattern) int { return strings.Compare(a.Words, b.Words) })
	return out
}

// fires by place and reach. Starter values, from memory.
func fires() []Pattern {
	var out []Pattern
	for i, reach := range lot.FireReaches {
		for k, place := range lot.FirePlaces[:3] {
			out = append(out, Pattern{Chance: []float64{.2, .35, .45}[i] * []float64{.65, .2, .15}[k], Cost: []float64{.15, .5, .9}[i],
				still: []int{1, 2, 3}[i], Words: burntWords(place, reach),
				Survey: &lot.Survey{Fire: &lot.Fire{Where: []string{place}, Reach: reach}}})
		}
	}
	return out
}

// thefts: found as it was, stripped, or crashed. Starter values, from memory.
func thefts(areas []string) []Pattern {
	whole := Pattern{Chance: .35, Cost: .12, missing: true, Words: foundWhole,
		Damage: []lot.Damage{{Area: "interior", Extent: "minor", Depth: "bolted"}}}
	some := Pattern{Chance: .2, Cost: .35, still: 1, missing: true, Words: partsGone,
		Damage: []lot.Damage{{Area: "interior", Extent: "functional", Depth: "bolted"}},
		Survey: &lot.Survey{Missing: []string{"wheels", "dash_electronics"}}}
	bare := Pattern{Chance: .15, Cost: .7, still: 3, missing: true, Words: stripped,
		Damage: []lot.Damage{{Area: "interior", Extent: "disabling", Depth: "bolted"},
			{Area: "electrical", Extent: "functional", Depth: "bolted"}},
		Survey: &lot.Survey{Missing: []string{"wheels", "seats", "airbags", "dash_electronics", "headlamps", "hood", "front_bumper"}}}
	out := []Pattern{whole, some, bare}
	for _, p := range collisions(areas) {
		p.Chance, p.missing = .3*p.Chance, true
		p.Damage = worst(append(slices.Clone(p.Damage), whole.Damage...))
		p.Words = crashed + p.Words
		out = append(out, p)
	}
	return out
}

// hails by the number of dents. Starter values, from memory.
func hails() []Pattern {
	var out []Pattern
	for i, count := range lot.HailCounts {
		for glass, share := range [2]float64{.7, .3} {
			p := Pattern{Chance: []float64{.3, .45, .25}[i] * share, Cost: []float64{.1, .25, .45}[i] + .05*float64(glass),
				Words:  hailWords(count, glass == 1),
				Survey: &lot.Survey{Hail: &lot.Hail{Count: count, Size: lot.HailSizes[i], Glass: glass == 1}}}
			out = append(out, p)
		}
	}
	return out
}

// vandalism: paint and glass, or the interior with it. Starter values, from memory.
func vandalism(areas []string) []Pattern {
	if len(areas) == 0 {
		areas = []string{"09", "03"}
	}
	light := marks(areas, "minor", "skin")
	more := append(marks(areas, "functional", "bolted"), lot.Damage{Area: "interior", Extent: "minor", Depth: "bolted"})
	heavy := append(marks(areas, "functional", "bolted"), lot.Damage{Area: "interior", Extent: "functional", Depth: "bolted"},
		lot.Damage{Area: "electrical", Extent: "minor", Depth: "bolted"})
	return []Pattern{{Chance: .5, Cost: .12, Damage: light, Words: panelsOnly},
		{Chance: .35, Cost: .3, Damage: worst(more), Words: panelsInside},
		{Chance: .15, Cost: .5, still: 1, Damage: worst(heavy), Words: allRound}}
}

// mechanical losses by cause. Starter values, from memory.
func mechanical() []Pattern {
	var out []Pattern
	for i, cause := range lot.Causes {
		out = append(out, Pattern{Chance: []float64{.2, .2, .25, .15, .2}[i], Cost: []float64{.35, .5, .4, .35, .45}[i],
			still: []int{2, 3, 2, 3, 2}[i], Words: causeWords(cause),
			Survey: &lot.Survey{Causes: []string{cause}}})
	}
	return out
}
