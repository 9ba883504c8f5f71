package damage

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// NotKnown is what the survey says of what nobody has entered.
const NotKnown = "not known"

// said are the words of the survey's codes that need more than the code, by list and code.
var said = map[string]string{
	"kind.utility": "sport utility", "driven.front": "front wheels", "driven.rear": "rear wheels", "driven.all": "all wheels",
	"parts_level.low": "cheap", "parts_level.high": "expensive", "region.dry": "dry", "region.salted": "salted in winter",
	"powertrain.combustion": "engine only",
	"height.carpet":         "to the carpet", "height.seat": "to the seats", "height.dash": "to the dash", "height.roof": "over the roof",
	"water.fresh": "fresh", "water.sewage": "sewage or mud", "water.salt": "salt",
	"count.few": "few, to about 15", "count.many": "many, to about 75", "count.beaten": "beaten, more",
	"size.small": "small, to 15 mm", "size.medium": "medium, to 35 mm", "size.large": "large",
	"reach.smoke": "smoke only", "cause.oil_starved": "ran low on oil", "cause.timing": "timing drive",
	"cause.unknown": "cause not known",
}

// Said returns a code of one of the survey's lists in words; no code is not known.
func Said(list, code string) string {
	if code == "" {
		return NotKnown
	}
	if words, special := said[list+"."+code]; special {
		return words
	}
	return strings.ReplaceAll(code, "_", " ")
}

// AllSaid returns each code of a list in words.
func AllSaid(list string, codes []string) []string {
	out := make([]string, len(codes))
	for i, code := range codes {
		out[i] = Said(list, code)
	}
	return out
}

// Topics are what the survey says beside the vehicle and the damaged areas, in the order in which they are shown.
var Topics = []string{"Missing parts", "Water", "Hail", "Fire and smoke", "Mechanical"}

// Topic returns what the survey says of a topic in words.
func Topic(s *lot.Survey, topic string) string {
	if s == nil {
		return NotKnown
	}
	switch topic {
	case "Missing parts":
		return listed(AllSaid("missing", s.Missing))
	case "Water":
		return water(s.Water)
	case "Hail":
		return hail(s.Hail)
	case "Fire and smoke":
		return fire(s.Fire)
	}
	return listed(AllSaid("cause", s.Causes))
}

func listed(words []string) string {
	if len(words) == 0 {
		return NotKnown
	}
	return strings.Join(words, ", ")
}

func water(w *lot.Water) string {
	if w == nil {
		return NotKnown
	}
	words := Said("height", w.Height)
	if w.Kind != "" {
		words += ", " + Said("water", w.Kind)
	}
	if w.Hours != nil {
		words += fmt.Sprintf(", under water %g h", *w.Hours)
	}
	return words
}

func hail(h *lot.Hail) string {
	if h == nil {
		return NotKnown
	}
	words := []string{dents(lot.Dents{Count: h.Count, Size: h.Size})}
	if len(h.Panels) > 0 {
		words = append(words, "on "+strings.Join(AllSaid("panel", h.Panels), ", "))
	}
	for _, panel := range lot.HailPanels {
		if d, apart := h.Each[panel]; apart {
			words = append(words, Said("panel", panel)+" "+dents(d))
		}
	}
	if h.Glass {
		words = append(words, "glass or lamps broken")
	}
	if h.Left {
		words = append(words, "the dents stay")
	}
	return strings.Join(words, "; ")
}

// dents says how many there are a panel and how large they are, as far as either is known.
func dents(d lot.Dents) string {
	var words []string
	if d.Count != "" {
		words = append(words, Said("count", d.Count)+" a panel")
	}
	if d.Size != "" {
		words = append(words, Said("size", d.Size))
	}
	return strings.Join(words, ", ")
}

func fire(f *lot.Fire) string {
	if f == nil {
		return NotKnown
	}
	words := Said("reach", f.Reach)
	if len(f.Where) > 0 {
		words += ": " + strings.Join(AllSaid("place", f.Where), ", ")
	}
	return words
}

// Survey returns what the survey says beside the damaged areas, a line for each topic of which something is known.
func Survey(s *lot.Survey) []string {
	var lines []string
	for _, topic := range Topics {
		if words := Topic(s, topic); words != NotKnown {
			lines = append(lines, topic+": "+words)
		}
	}
	return lines
}

// Described returns what the survey knows of the vehicle itself, as "powertrain: hybrid"; what is not known is left out.
func Described(s *lot.Survey) []string {
	if s == nil {
		return nil
	}
	doors := ""
	if s.Doors > 0 {
		doors = fmt.Sprint(s.Doors)
	}
	lines := []string{"kind: " + Said("kind", s.Kind), "powertrain: " + Said("powertrain", s.Powertrain),
		"driven: " + Said("driven", s.Driven),
		"doors: " + Said("doors", doors), "paint: " + Said("paint", s.Paint), "price level of parts: " + Said("parts_level", s.PartsLevel),
		"roads it was driven on: " + Said("region", s.Region)}
	return slices.DeleteFunc(lines, func(l string) bool { return strings.HasSuffix(l, ": "+NotKnown) })
}
