package listing

import (
	"regexp"
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/store/runlist"
	"walkline/valuation/lot"
)

// Words for how far an area is hurt, and words that say that it is. Common practice, no source.
var (
	light = cell.SetOf("light|minor|slight|small|scratched|scratches|scuffed|scuff|dented|dent|dents")
	heavy = cell.SetOf("heavy|major|severe|bad|badly|crushed|smashed|extensive|totaled|destroyed")
	hits  = cell.SetOf("damage|damaged|hit|impact|collision|bent|broken|cracked|wrecked|end|crash|accident|struck")
	alike = cell.SetOf("all over|all around|allover|rollover|rolled|around")
)

// says reports whether one of the words stands in a text.
func says(s cell.Set, text string) bool {
	return slices.ContainsFunc(cell.Words(text), func(w string) bool { return s[w] })
}

// findDamage takes runs of words that name areas and that they are hurt.
func findDamage(r *reading, w *words) {
	for w.takeSaid(7, func(s string, before, behind words) bool {
		return (says(hits, s) || says(light, s) || says(heavy, s)) && !ends(s) && !lamp(s, before) && !otherThing(s, before, behind) && r.hurt(s)
	}) {
	}
}

// things are words behind damage that make it the name of a part, and lamps those before a light. Common practice, no source.
var (
	things = cell.SetOf("warning|braking|brake|brakes|avoidance|mitigation|system|sensor|sensors|alert|assist|beam|beams|bar|bars|guard|" +
		"camera|protection|prevention|detection|deterrent|alarm|light|lights|lamp|lamps|fenders|alignment|aligned|rebuilt|replaced|repaired|" +
		"fixed|pump|free|insurance|test|tested")
	lamps = cell.SetOf("tail|head|brake|fog|engine|signal|turn|dome|dash|warning|running|oil|abs|airbag|reverse|marker")
)

// lamp reports whether the light of a run is one that shines.
func lamp(s string, before words) bool {
	w := cell.Words(s)
	at := slices.Index(w, "light")
	if at < 0 || says(heavy, s) || slices.ContainsFunc(w, func(x string) bool { return hits[x] && x != "end" }) {
		return false
	}
	on := !slices.ContainsFunc(w[at+1:], func(x string) bool { return !cell.SetOf("on|off|out|is|in")[x] })
	return on || at == 0 && lamps.Has(before.last())
}

// otherThing reports whether the words beside a run say that it is not so, or make another thing of it. The end of a vehicle is hurt where
// nothing else is said of it.
func otherThing(s string, before, behind words) bool {
	w := cell.Words(s)
	bare := !says(light, s) && !says(heavy, s) && !slices.ContainsFunc(w, func(x string) bool { return hits[x] && x != "end" })
	return denied(before, behind) || things.Has(behind.first()) || bare && len(behind.telling()) > 0
}

// ends reports whether a run begins or ends with a word that joins it to the next.
func ends(s string) bool {
	w := cell.Words(s)
	return len(w) == 0 || slices.Contains([]string{"and", "in", "of", "on", "the", "with"}, w[0]) ||
		slices.Contains([]string{"and", "in", "of", "on", "the", "with"}, w[len(w)-1])
}

// findAreas takes a piece that says nothing else than areas, one where nothing was found before: the engine that is left of "2.0L engine"
// is not hurt. A word that heads a part of a listing alone, such as Interior, is none.
func findAreas(r *reading, w *words) {
	if text := strings.Join(*w, " "); len(*w) == r.words && !heads.Has(text) && !lamp(text, nil) && r.hurt(text) {
		*w = nil
	}
}

var heads = cell.SetOf("interior|inside|engine|motor|driver|passenger|doors|roof|undercarriage")

// hurt marks the areas that a text names, and reports whether it names any and nothing else.
func (r *reading) hurt(text string) bool {
	extent, depth, said := "functional", "bolted", false
	switch {
	case says(heavy, text):
		extent, said = "disabling", true
	case says(light, text):
		extent, depth, said = "minor", "skin", true
	}
	var bare []string
	for _, word := range strings.Fields(text) {
		if !light.Has(word) && !heavy.Has(word) && !alike.Has(word) {
			bare = append(bare, word)
		}
	}
	areas, rest := runlist.Named(strings.Join(bare, " "))
	if rest || len(areas) == 0 {
		return false
	}
	for _, area := range areas {
		if slices.ContainsFunc(r.Damage, func(d lot.Damage) bool { return d.Area == area }) {
			continue
		}
		d := lot.Damage{Area: area, Extent: extent, Depth: depth}
		r.Damage = append(r.Damage, d)
		r.Facts = append(r.Facts, Fact{"Damage", guessed(d, said), area})
	}
	return true
}

// lossy are the words of a loss that mean something else unless a word for damage stands beside them.
var lossy = cell.SetOf("water|engine|motor|transmission|fire|mechanical|electrical|burn")

// clearLoss are words that tell of a loss by themselves.
var clearLoss = cell.SetOf("collision|flood|flooded|hail|theft|stolen|vandalism|vandalized|crash|accident|rollover|rolled|burned|burnt")

// beside are the words that a run which tells of a loss may hold.
var beside = cell.SetOf("damage|damaged|loss|total|recovery|recovered|blown|failure|failed|seized|of|cause|by|the|only|issue|problem")

// findLoss takes runs of words that tell what the vehicle was lost by.
func findLoss(r *reading, w *words) {
	for w.takeSaid(4, func(s string, before, behind words) bool {
		told, harmed := false, false
		for _, word := range cell.Words(s) {
			if !clearLoss[word] && !lossy[word] && !beside[word] {
				return false
			}
			told, harmed = told || clearLoss[word], harmed || beside[word]
		}
		codes := runlist.Told(s)
		if len(codes) == 0 || !told && !harmed || ends(s) || denied(before, behind) || things.Has(behind.first()) {
			return false
		}
		r.lost(codes)
		return true
	}) {
	}
}

// lost takes causes of loss.
func (r *reading) lost(codes []string) {
	for _, code := range codes {
		if !slices.Contains(r.Lot.Loss, code) {
			r.Lot.Loss = append(r.Lot.Loss, code)
			r.fact("Loss", code)
		}
	}
}

// airbagWords are the words of a run that tells of airbags, by the codes of the case file; those without one name no place.
var airbagWords = map[string]string{"front": "front", "driver": "front", "drivers": "front", "passenger": "front", "side": "side",
	"curtain": "curtain", "curtains": "curtain", "knee": "knee", "belt": "belt", "belts": "belt", "roof": "curtain", "steering": "front",
	"dash": "front", "airbag": "", "airbags": "", "air": "", "bag": "", "bags": "", "deployed": "", "blown": "", "and": "", "wheel": "",
	"seat": "", "all": "", "have": "", "are": "", "both": "", "several": "", "multiple": ""}

// Words of airbags that have gone off, and words that say of something that it is not so. Common practice, no source.
var (
	blownWords = cell.SetOf("deployed|blown")
	negations  = cell.SetOf("no|not|none|never|without|undeployed|intact|good|ok|unknown")
	noBags     = regexp.MustCompile(`(?i)\b(no|not|none|never|without)\b[a-z ]*\bair ?bags?|` +
		`\bair ?bags?\b[a-z ]*\b(not|none|never|intact|good|ok)\b`)
	bags = regexp.MustCompile(`(?i)^(all |both |the |several |multiple )?air ?bags? (have |are )?(deployed|blown)$|` +
		`^(deployed|blown) air ?bags?$`)
)

func findAirbags(r *reading, w *words) {
	if noBags.MatchString(strings.Join(*w, " ")) || w.take(8, r.blown) {
		return
	}
	w.take(4, func(s string) bool { return bags.MatchString(s) && r.bagsUnplaced(s) })
}

// bagsUnplaced notes airbags that have deployed, of which nobody says where: they are asked for, and not guessed.
func (r *reading) bagsUnplaced(text string) bool {
	r.Left = append(r.Left, text+" (which ones is not said: tick them under State)")
	return true
}

// blown takes airbags that have deployed; without a place the words are not understood.
func (r *reading) blown(text string) bool {
	var codes []string
	bag, deployed := false, false
	for _, word := range cell.Words(text) {
		code, known := airbagWords[word]
		if !known {
			return false
		}
		bag = bag || strings.Contains(word, "bag")
		deployed = deployed || word == "deployed" || word == "blown"
		if code != "" && !slices.Contains(codes, code) {
			codes = append(codes, code)
		}
	}
	if !bag || !deployed || len(codes) == 0 {
		return false
	}
	for _, code := range codes {
		if !slices.Contains(r.Lot.Airbags, code) {
			r.Lot.Airbags = append(r.Lot.Airbags, code)
		}
	}
	r.fact("Airbags deployed", strings.Join(codes, ", "))
	return true
}
