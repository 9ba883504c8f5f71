package runlist

import (
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/store/table"
)

// conditions are plain words for whether a vehicle drives, folded. Common practice, no source.
var conditions = map[string]string{
	"runs and drives": "drives", "run and drive": "drives", "starts and drives": "drives", "run and drives": "drives", "run drive": "drives",
	"runs drives": "drives",
	"drives":      "drives", "drivable": "drives", "can be driven": "drives", "fahrbereit": "drives",
	"fahrt": "drives", "roule": "drives", "roulant": "drives", "circula": "drives", "jezdzi": "drives", "rijdt": "drives",
	"marciante": "drives",
	"starts":    "starts", "runs": "starts", "engine starts": "starts", "startet": "starts", "springt an": "starts", "demarre": "starts",
	"arranca": "starts", "odpala": "starts", "start": "starts", "si avvia": "starts",
	"turns over": "turns_over", "engine turns over": "turns_over", "turns over no start": "turns_over", "cranks no start": "turns_over",
	"cranks": "turns_over", "dreht": "turns_over", "turns": "turns_over",
	"dead": "dead", "does not start": "dead", "no start": "dead", "does not run": "dead", "not running": "dead",
	"won t start": "dead", "doesn t start": "dead", "will not start": "dead", "doesn t run": "dead", "won t run": "dead",
	"springt nicht an": "dead", "startet nicht": "dead", "ne demarre pas": "dead", "no arranca": "dead", "nie odpala": "dead",
	"start niet": "dead", "non parte": "dead",
	"unknown": "unknown", "not tested": "unknown", "not tried": "unknown",
}

// conditionOf returns how a vehicle runs as words tell it, empty where they do not: the words of the list, or any that holds one
// of driving, starting or cranking with or without a "not" ("runs and drives", "won't start").
func conditionOf(text string) string {
	words := cell.Words(strings.NewReplacer("_", " ", "'", "", "’", "").Replace(text))
	if known := conditions[strings.Join(words, " ")]; known != "" {
		return known
	}
	drives, stays := verbs(words, conditionDrives)
	starts, dead := verbs(words, conditionStarts)
	has := func(any cell.Set) bool { return slices.ContainsFunc(words, func(w string) bool { return any[w] }) }
	switch {
	case has(conditionDoubt), starts && dead, drives && (stays || dead), has(conditionNots) && !stays && !dead:
		return ""
	case dead:
		return "dead"
	case drives:
		return "drives"
	case starts:
		return "starts"
	}
	return ""
}

// verbs returns whether one of the verbs stands among the words as it is, and whether one does behind a "not".
func verbs(words []string, of cell.Set) (said, denied bool) {
	for i, w := range words {
		not := i > 0 && conditionNots[words[i-1]]
		said, denied = said || of[w] && !not, denied || of[w] && not
	}
	return said, denied
}

// Words of a sentence that tells how a vehicle runs; with one of the doubtful ones it does not tell. Common practice, no source.
var (
	conditionDrives = cell.SetOf("drive|drives|driving|drivable|driveable")
	conditionStarts = cell.SetOf("run|runs|running|start|starts|starting")
	conditionNots   = cell.SetOf("not|no|non|doesnt|dont|wont|cannot|cant|never|isnt")
	conditionDoubt  = cell.SetOf("but|if|jump|jumped|boost|only|may|might|should|could|with|when|last|was|once|maybe|crank|cranks|turns")
)

// putCondition takes a word for whether a vehicle drives; words that tell none of the conditions go to the note.
func putCondition(r *Row, v table.Value) error {
	code, known := Runs(v.Text)
	if r.Lot.Condition = code; !known {
		r.Lot.Condition = ""
		r.noted("condition: " + v.Text)
	}
	return nil
}

// noted adds to the note of a row.
func (r *Row) noted(text string) { r.Note = strings.TrimPrefix(r.Note+"; "+text, "; ") }

// parts are parts of folded words and the code that they tell of, in the order of the codes. Common practice, no source.
type parts []struct {
	code  string
	words []string
}

var lossParts = parts{
	{"collision", []string{"collision", "impact", "crash", "rollover", "rolled", "accident", "unfall", "kollision", "choc", "choque",
		"colision", "kolizja", "wypadek", "botsing", "aanrijding", "urto", "incidente"}},
	{"flood", []string{"flood", "water", "wasser", "inondation", "inundacion", "zalan", "powodz", "alluvione", "acqua"}},
	{"fire", []string{"fire", "burn", "brand", "feuer", "incendie", "incendio", "pozar", "spalon"}},
	{"theft", []string{"theft", "stolen", "diebstahl", "gestohlen", "robo", "kradziez", "diefstal", "furto"}},
	{"hail", []string{"hail", "hagel", "grele", "granizo", "grad", "grandine"}},
	{"vandalism", []string{"vandal", "wandal"}},
	{"mechanical", []string{"mechanical", "engine", "transmission", "mechanisch", "motorschaden", "mecanique", "mecanico",
		"mechaniczn", "meccanico"}},
}

// found returns the codes whose words stand in a text.
func (p parts) found(text string) []string {
	text = cell.Fold(text)
	var codes []string
	for _, l := range p {
		if slices.ContainsFunc(l.words, func(w string) bool { return strings.Contains(text, w) }) {
			codes = append(codes, l.code)
		}
	}
	return codes
}

// losses returns the codes of the losses that a cell tells of: an area alone tells of a collision, words that tell of none are another
// loss.
func losses(text string) []string {
	if codes := lossParts.found(text); len(codes) > 0 {
		return codes
	}
	if areas, _ := areasOf(text); len(areas) > 0 {
		return []string{"collision"}
	}
	return []string{"other"}
}

// putAreas takes damaged areas; a loss that they tell of is taken where no column tells of it. Words that name no area go to the note.
func putAreas(r *Row, v table.Value) error {
	areas, rest := areasOf(v.Text)
	for _, a := range areas {
		if !slices.Contains(r.Areas, a) {
			r.Areas = append(r.Areas, a)
		}
	}
	loss := lossParts.found(v.Text)
	if len(r.Lot.Loss) == 0 {
		r.Lot.Loss = loss
	}
	if (rest || len(areas) == 0) && len(loss) == 0 {
		r.noted("damage: " + v.Text)
	}
	return nil
}

// Words for places of a vehicle, folded. Common practice, no source.
var (
	fronts = cell.SetOf("front|vorn|vorne|vordere|avant|delante|delantera|delantero|frontal|przod|przedni|przednia|voor|voorkant|" +
		"anteriore|davanti|voorzijde|ant")
	rears = cell.SetOf("rear|back|hinten|hintere|heck|arriere|trasera|trasero|detras|tyl|tylny|tylna|achter|achterkant|" +
		"achterzijde|posteriore|dietro|post")
	lefts = cell.SetOf("left|driver|drivers|links|linke|gauche|izquierda|izquierdo|lewy|lewa|lewej|linker|" +
		"linkerzijde|sinistra|sinistro|sx")
	rights = cell.SetOf("right|passenger|passengers|rechts|rechte|droite|droit|derecha|derecho|prawy|prawa|prawej|rechter|" +
		"rechterzijde|destra|destro|dx")
	tops    = cell.SetOf("top|roof|dach|toit|techo|dak|tetto")
	unders  = cell.SetOf("undercarriage|underside|under|unterboden|unten|dessous|bajos|podwozie|onderkant|sottoscocca")
	insides = cell.SetOf("interior|inside|cabin|innenraum|interieur|habitacle|wnetrze|interno|abitacolo")
	engines = cell.SetOf("engine|motor|moteur|silnik|motore")
	asides  = cell.SetOf("side|end|and|door|doors|fender|quarter|corner|seite|seitlich|tur|cote|lado|bok|strona|zijkant|kant|lato|the|" +
		"of|in|on|und|et|y|i|en|e|impact|collision|damage|damaged|hit|light|heavy|minor|major|s|lateral|laterale|flanc|fianco|" +
		"fiancata|golpe|choc|corner|panel|zijde")
)

// denials are words by which a place is said to be whole.
var denials = cell.SetOf("not|no|none|without|nicht|kein|keine|ohne|pas|sans|non|senza|sin|nie|bez|niet|geen")

// corners are the trade's short forms of corners. Common practice, no source.
var corners = map[string][]string{"lf": {"left", "front"}, "rf": {"right", "front"}, "lr": {"left", "rear"}, "rr": {"right", "rear"}}

// placeWords returns the words of a text, short forms and joined ones (linksvoor) parted.
func placeWords(text string) (words []string) {
	for _, w := range cell.Words(text) {
		side := ""
		for _, s := range []string{"links", "rechts"} {
			if strings.HasPrefix(w, s) && w != s {
				side = s
			}
		}
		switch {
		case corners[w] != nil:
			words = append(words, corners[w]...)
		case side != "":
			words = append(words, side, strings.TrimPrefix(w, side))
		default:
			words = append(words, w)
		}
	}
	return words
}

// clock are the clock points of front and rear corners and sides, by how far forward and on which side. Source: lot.Areas, MMUCC.
var clock = map[[2]int]string{{1, 0}: "12", {1, 1}: "01", {1, -1}: "11", {-1, 0}: "06", {-1, 1}: "05", {-1, -1}: "07", {0, 1}: "03",
	{0, -1}: "09"}

// areasOf returns the codes of the areas that a text names, and whether words are left that name none.
func areasOf(text string) (codes []string, rest bool) {
	add := func(code string) {
		if code != "" && !slices.Contains(codes, code) {
			codes = append(codes, code)
		}
	}
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;/+&|()", r) }) {
		along, across := 0, 0
		words := placeWords(part)
		if slices.ContainsFunc(words, func(w string) bool { return denials[w] }) {
			rest = true // "not front" names no damaged area
			continue
		}
		for _, w := range words {
			if (along != 0 || across != 0) && (w == "and" || w == "und" || w == "et" || w == "y" || w == "en") {
				add(clock[[2]int{along, across}])
				along, across = 0, 0
			}
			switch {
			case fronts[w]:
				along = 1
			case rears[w]:
				along = -1
			case lefts[w]:
				across = -1
			case rights[w]:
				across = 1
			case tops[w]:
				add("top")
			case unders[w]:
				add("undercarriage")
			case insides[w]:
				add("interior")
			case engines[w]:
				add("engine_bay")
			default:
				rest = rest || !asides[w]
			}
		}
		add(clock[[2]int{along, across}])
	}
	return codes, rest
}
