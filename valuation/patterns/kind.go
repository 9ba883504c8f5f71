package patterns

import (
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// The words of patterns, which are the kinds that surveys are counted by.
const (
	deployed     = ", airbags deployed" // ends the words of a pattern whose airbags went off
	foundWhole   = "found whole, lock and ignition forced"
	partsGone    = "wheels and dash gone"
	stripped     = "stripped"
	crashed      = "crashed: "
	panelsOnly   = "paint and panels"
	panelsInside = "panels, glass and interior"
	allRound     = "all round and inside"
)

func crashWords(z zone, extent, depth string) string {
	return strings.Join([]string{z.name, extent, depth}, ", ")
}

func wetWords(kind, height string) string { return kind + " water to the " + height }

func burntWords(place, reach string) string {
	return strings.ReplaceAll(place, "_", " ") + ", " + reach
}

func causeWords(cause string) string { return "mechanical, " + strings.ReplaceAll(cause, "_", " ") }

func hailWords(count string, glass bool) string {
	if glass {
		return "hail, dents " + count + ", glass broken"
	}
	return "hail, dents " + count
}

// kind is what the shop's surveys are counted by: the pattern whether or not airbags went off.
func (p Pattern) kind() string { return strings.TrimSuffix(p.Words, deployed) }

// kind returns the kind of a cause's patterns that a survey is nearest to; empty: it does not say.
func (s Seen) kind(loss string) string {
	if len(s.Damage) == 0 && !s.Survey.Hurt() { // nobody has looked
		return ""
	}
	sv := lot.Survey{}
	if s.Survey != nil {
		sv = *s.Survey
	}
	switch {
	case loss == "collision":
		return s.crash()
	case loss == "flood" && sv.Water != nil && sv.Water.Height != "":
		if sv.Water.Kind == "salt" {
			return wetWords("salt", sv.Water.Height)
		}
		return wetWords("fresh", sv.Water.Height) // sewage stands with fresh water: the patterns have none of its own
	case loss == "fire" && sv.Fire != nil && sv.Fire.Reach != "" && len(sv.Fire.Where) > 0:
		return burntWords(sv.Fire.Where[0], sv.Fire.Reach)
	case loss == "theft":
		return s.theft(len(sv.Missing))
	case loss == "hail" && sv.Hail != nil && sv.Hail.Count != "":
		return hailWords(sv.Hail.Count, sv.Hail.Glass)
	case loss == "vandalism" && len(s.Damage) > 0:
		return s.vandals()
	case loss == "mechanical" && len(sv.Causes) > 0:
		return causeWords(sv.Causes[0])
	}
	return ""
}

// crash returns the zone, extent and depth of the mark on the body that goes furthest, of a rollover where the top is more than scratched.
func (s Seen) crash() string {
	e, d, at := -1, -1, zone{}
	rolled := false
	for _, m := range s.Damage {
		if _, clock := zoneAt[m.Area]; !clock && m.Area != "top" {
			continue
		}
		extent, depth := slices.Index(lot.Extents, m.Extent), slices.Index(lot.Depths, m.Depth)
		rolled = rolled || m.Area == "top" && extent > 0
		if extent > e || extent == e && depth > d {
			e, d, at = extent, depth, zoneOf([]string{m.Area})
		}
	}
	if e < 0 || d < 0 {
		return ""
	}
	if rolled {
		at = zones[len(zones)-1]
	}
	if deep[e][d] == 0 { // no pattern has it: the next depth does
		d = slices.Index(lot.Depths, "bolted")
	}
	return crashWords(at, lot.Extents[e], lot.Depths[d])
}

// strippedFrom is from how many missing parts on a stolen vehicle is called stripped. Ours.
const strippedFrom = 5

func (s Seen) theft(missing int) string {
	hit := s.crash()
	switch {
	case missing >= strippedFrom:
		return stripped
	case hit != "":
		return crashed + hit
	case missing > 0:
		return partsGone
	}
	return foundWhole
}

func (s Seen) vandals() string {
	at := func(area string) bool {
		return slices.ContainsFunc(s.Damage, func(d lot.Damage) bool { return d.Area == area })
	}
	switch {
	case at("electrical"):
		return allRound
	case at("interior"):
		return panelsInside
	}
	return panelsOnly
}
