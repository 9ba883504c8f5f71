package patterns

import "walkline/valuation/lot"

// zone is where a collision was, with the extents that it leaves.
type zone struct {
	name   string
	chance float64 // where no area is said
	places [][]string
	extent [3]float64
	bags   [3]float64 // chance that airbags deployed, by extent
	fired  [3][]string
}

// half and half: extents from memory, and open counts of one county's crash reports as shares (superficial, functional, disabling or
// destroyed). Source: US public data, see the package comment.
func blended(memory, counts [3]float64) [3]float64 {
	n := counts[0] + counts[1] + counts[2]
	var out [3]float64
	for i := range out {
		out[i] = (memory[i] + counts[i]/n) / 2
	}
	return out
}

// Airbags deployed by crash speed (1-9, 10-24, 25-39 km/h of velocity change), of frontal and of other crashes. Source: NASS-CDS
// 1997-2002, counts of vehicles: 45 of 135, 2700 of 3863, 2010 of 2181; 22 of 224, 626 of 2355, 489 of 1208.
var (
	frontalBags = [3]float64{45. / 135, 2700. / 3863, 2010. / 2181}
	otherBags   = [3]float64{22. / 224, 626. / 2355, 489. / 1208}
)

// The airbags that deploy, by extent. Starter values, from memory.
var (
	inFront = [3][]string{{"front"}, {"front", "belt"}, {"front", "belt", "knee"}}
	atSide  = [3][]string{{"side"}, {"side", "curtain"}, {"side", "curtain", "belt"}}
	atRear  = [3][]string{{"belt"}, {"belt"}, {"front", "belt"}}
)

// zones of a collision. How often each is hit is from memory.
var zones = []zone{
	{"front", .52, [][]string{{"12", "11"}}, blended([3]float64{.2, .4, .4}, [3]float64{137, 219, 590}), frontalBags,
		inFront},
	{"rear", .2, [][]string{{"06", "05"}}, blended([3]float64{.3, .45, .25}, [3]float64{127, 157, 56}), otherBags, atRear},
	{"left side", .11, [][]string{{"09", "10"}}, blended([3]float64{.25, .4, .35}, [3]float64{87, 65, 143}), otherBags, atSide},
	{"right side", .11, [][]string{{"03", "02"}}, blended([3]float64{.25, .4, .35}, [3]float64{87, 65, 143}), otherBags, atSide},
	{"rollover", .06, [][]string{{"top", "03", "09"}}, [3]float64{.05, .35, .6}, otherBags, atSide},
}

// deep is how deep damage of each extent goes: skin, bolted, structure. Starter values, from memory.
var deep = [3][3]float64{{.7, .3, 0}, {.1, .65, .25}, {0, .4, .6}}

// costOf is what a repair comes to as a share of the value before, by extent and depth. Starter values, from memory.
var costOf = [3][3]float64{{.12, .2, 0}, {.25, .38, .55}, {0, .6, .8}}

// collisions returns the patterns of a collision, in the areas that are said, or wherever they may be.
func collisions(areas []string) []Pattern {
	if len(areas) > 0 {
		z := zoneOf(areas)
		z.places, z.chance = [][]string{areas}, 1
		return z.patterns()
	}
	var all []Pattern
	for _, z := range zones {
		all = append(all, z.patterns()...)
	}
	return all
}

// zoneAt is which of the zones an area lies in; the others lie in the rollover's.
var zoneAt = map[string]int{"11": 0, "12": 0, "01": 0, "engine_bay": 0, "05": 1, "06": 1, "07": 1, "08": 2, "09": 2, "10": 2, "02": 3,
	"03": 3,
	"04": 3}

// zoneOf returns the zone that the first of the areas lies in; the rollover's where it lies in none.
func zoneOf(areas []string) zone {
	if i, known := zoneAt[areas[0]]; known {
		return zones[i]
	}
	return zones[len(zones)-1]
}

func (z zone) patterns() []Pattern {
	var out []Pattern
	for e, extent := range lot.Extents {
		for d, depth := range lot.Depths {
			for _, place := range z.places {
				chance := z.chance * z.extent[e] * deep[e][d] / float64(len(z.places))
				for bags, share := range [2]float64{1 - z.bags[e], z.bags[e]} {
					if chance*share == 0 {
						continue
					}
					p := Pattern{Chance: chance * share, Damage: marks(place, extent, depth), Cost: costOf[e][d] + .08*float64(bags), still: e,
						Words: crashWords(z, extent, depth)}
					if bags == 1 {
						p.Airbags = z.fired[e]
						p.Words += deployed
					}
					out = append(out, p)
				}
			}
		}
	}
	return out
}

// marks returns the areas marked: the first in full, the others one extent less.
func marks(areas []string, extent, depth string) []lot.Damage {
	var out []lot.Damage
	less := map[string]string{"minor": "minor", "functional": "minor", "disabling": "functional"}
	for i, a := range areas {
		d := lot.Damage{Area: a, Extent: extent, Depth: depth}
		if i > 0 {
			d.Extent = less[extent]
			if depth == "structure" {
				d.Depth = "bolted"
			}
		}
		out = append(out, d)
	}
	return out
}
