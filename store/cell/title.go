package cell

import (
	"strings"

	"walkline/valuation/lot"
)

// titleIdle are words of a title that say only that it is one.
var titleIdle = SetOf("title|titled|brand|branded|certificate|cert|status|history|titel|titre|titulo|tytul|titolo|papers|paper|of|the|a")

// titles are what is said for a brand of the list in plain words, folded and without the idle ones. Common practice, no source.
var titles = map[string]string{
	"clean": "clear", "clear": "clear", "sauber": "clear", "frei": "clear", "propre": "clear", "limpio": "clear", "czysty": "clear",
	"schoon": "clear", "pulito": "clear", "unbranded": "clear",
	"r": "rebuilt", "rebuild": "rebuilt", "rebuilt salvage": "rebuilt", "salvage rebuilt": "rebuilt",
	"rebuilt from salvage": "rebuilt", "wiederaufgebaut": "rebuilt", "reconstruit": "rebuilt",
	"reconstruido": "rebuilt", "odbudowany": "rebuilt", "herbouwd": "rebuilt", "ricostruito": "rebuilt", "restored salvage": "rebuilt",
	"salvage restored":    "rebuilt",
	"salvage rebuildable": "salvage", "rebuildable salvage": "salvage", "rebuildable": "salvage", "repairable salvage": "salvage",
	"salvage repairable": "salvage", "s": "salvage", "salvamento": "salvage",
	"total loss": "totaled", "totalled": "totaled", "totalschaden": "totaled", "perte totale": "totaled", "perdida total": "totaled",
	"siniestro total": "totaled", "inundado": "flood damage", "inonde": "flood damage", "flooded": "flood damage", "water": "flood damage",
	"water damage": "flood damage",
	"hochwasser":   "flood damage", "burned": "fire damage", "burnt": "fire damage",
	"theft recovery": "recovered theft", "theft recovered": "recovered theft", "stolen recovered": "recovered theft", "junked": "junk",
	"nonrepairable": "junk", "non repairable": "junk", "non rebuildable": "junk",
	"destruction": "certificate of destruction", "reconstructed": "reconstructed", "grey market": "gray market", "taxi": "prior taxi",
	"police": "prior police",
}

// Title returns "clear" or the brand of the AAMVA list, in small letters, that a cell means, and whether it means one.
func Title(cell string) (string, bool) {
	if strings.HasSuffix(cell, "?") {
		return "", false // whoever wrote it doubts it
	}
	if a, b, parts := strings.Cut(cell, "/"); parts && strings.Trim(a, " ") != "" {
		first, known := titleOf(a)
		if second, too := titleOf(b); known && too && first == second {
			return first, true
		}
	}
	return titleOf(cell)
}

func titleOf(cell string) (string, bool) {
	var words []string
	for _, w := range Words(cell) {
		if !titleIdle[w] {
			words = append(words, w)
		}
	}
	phrase := strings.Join(words, " ")
	if brand, known := titles[phrase]; known {
		return brand, true
	}
	if brand, known := lot.BrandOf(phrase); known {
		return strings.ToLower(brand.Words), true
	}
	return "", false
}
