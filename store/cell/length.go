package cell

import (
	"errors"
	"fmt"
	"strings"
)

// Length is what a cell of an odometer reading or a distance says.
type Length struct {
	Number
	Known  bool   // there is a reading
	Unit   string // mi | km, where the cell says it
	Status string // actual | not_actual | exceeds_limits | exempt, where the cell says it
}

var (
	miles      = SetOf("mi|mile|miles|mls|meilen|milles|millas|mijl|mijlen|miglia")
	kilometers = SetOf("km|kms|kilometre|kilometres|kilometer|kilometers|kilometros|kilometro|kilometry|kilometrow|chilometri|" +
		"chilometro|kilometrage|kilometraje|kilometerstand|tkm|chilometraggio")
	// fillers are words beside a length that say no more than it is one.
	fillers = SetOf("odometer|reading|mileage|away|from|here|on|clock|ca|circa|approx|about|roughly|original|over|under|just|only|the|" +
		"gelaufen|przebieg|przebiegu|compteur|entfernt|distance|environ|around|est|laufleistung|od|odo|" +
		"nur|abgelesen|tacho|laut|read|shows|showing|indicated|affiche|afgelezen|odczyt|tellerstand")
)

// UnitOf returns mi or km for a word that names it, empty for none.
func UnitOf(word string) string {
	switch word = Fold(strings.Trim(word, ". ")); {
	case kilometers[word]:
		return "km"
	case miles[word]:
		return "mi"
	}
	return ""
}

// unitAlone returns the unit where a text is nothing else than the usual sign of one.
func unitAlone(text string) string {
	switch strings.TrimSpace(text) {
	case "mi", "miles":
		return "mi"
	case "km":
		return "km"
	}
	return ""
}

// statements are phrases of an odometer statement. Source: doc.go [4]; the short ones common practice, no source.
var statements = map[string]string{
	"actual": "actual", "act": "actual", "actual mileage": "actual", "true": "actual", "not actual": "not_actual",
	"not act": "not_actual", "not actual mileage": "not_actual",
	"true mileage unknown": "not_actual", "tmu": "not_actual", "exceeds mechanical limits": "exceeds_limits",
	"exceeds limits": "exceeds_limits", "eml": "exceeds_limits",
	"exempt": "exempt", "echt": "actual", "nicht echt": "not_actual", "reel": "actual", "non reel": "not_actual",
	"not the actual mileage": "not_actual", "unknown": "unknown",
	"real": "actual", "no real": "not_actual", "reale": "actual", "non reale": "not_actual", "rzeczywisty": "actual",
	"nierzeczywisty": "not_actual",
	"unwarranted":    "not_actual", "not warranted": "not_actual", "nicht garantiert": "not_actual", "non garanti": "not_actual",
	"no garantizado": "not_actual", "niet nap": "not_actual", "non garantito": "not_actual",
	"broken": "unknown", "inop": "unknown", "unverified": "unknown", "no key": "unknown", "no keys": "unknown", "not working": "unknown",
	"inoperable": "unknown", "unreadable": "unknown", "not readable": "unknown",
	"no power": "unknown", "digital": "unknown", "digital dash": "unknown", "defekt": "unknown", "nicht ablesbar": "unknown",
	"illisible": "unknown", "ilegible": "unknown", "nieczytelny": "unknown", "onleesbaar": "unknown", "illeggibile": "unknown",
	"werkelijk": "actual", "niet werkelijk": "not_actual", "unbekannt": "unknown", "inconnu": "unknown", "desconocido": "unknown",
	"nieznany": "unknown", "onbekend": "unknown", "sconosciuto": "unknown",
}

// letters behind a reading are short for a statement of it. Common practice, no source. E is not among them: to some it is exempt, to
// others in excess of the mechanical limits.
var letters = map[string]string{"a": "actual", "n": "not_actual"}

// StatusByLetter returns the odometer statement that a letter alone is short for, empty for none.
func StatusByLetter(text string) string { return letters[strings.ToLower(strings.TrimSpace(text))] }

// letter takes a letter that ends what stands behind a reading, and returns the rest.
func (l *Length) letter(after string) string {
	for letter, status := range letters {
		if rest, ends := strings.CutSuffix(strings.ToLower(strings.TrimRight(after, " .)")), letter); ends &&
			(rest == "" || strings.HasSuffix(rest, " ") || strings.HasSuffix(rest, "(")) {
			l.Status = status
			return rest
		}
	}
	return after
}

// StatusOf returns the odometer statement that words make, empty for none.
func StatusOf(words string) string { return of(statements, words) }

// ReadLength returns the odometer reading or distance that a cell says; decimal is the stated mark, 0 for none.
// Errors: a word that is not understood, a second number, a negative one.
func ReadLength(cell string, decimal byte) (Length, error) {
	before, digits, after := parted(cell)
	if digits == "" {
		said := Length{Status: StatusOf(cell)}
		if said.Status == "" && (said.beside(cell) != nil || said.Status == "") {
			return Length{}, errNumber
		}
		return Length{Status: said.Status}, nil
	}
	n, err := numberOf(digits, decimal)
	if err != nil {
		return Length{}, err
	}
	l := Length{Number: n, Known: true}
	if before == "" && after == "" {
		return l, nil
	}
	if l.Unit = unitAlone(after); l.Unit != "" && before == "" {
		return l, nil
	}
	l.Unit = ""
	if strings.ContainsAny(after, "0123456789") {
		return l, errSecond
	}
	if strings.ContainsAny(before, "-−") {
		return l, errors.New("below zero")
	}
	after = l.letter(after)
	return l, l.beside(before + " " + after)
}

// beside takes the words beside a length.
func (l *Length) beside(text string) error {
	var rest []string
	for _, word := range Words(text) {
		switch unit := UnitOf(word); {
		case word == "tkm":
			l.Number, l.Unit = l.TimesThousand(), "km"
		case thousands[word] && l.Scale < 3:
			l.Number = l.TimesThousand()
		case unit != "" && l.Unit != "" && unit != l.Unit:
			return errors.New("miles and kilometers stand in one cell")
		case unit != "":
			l.Unit = unit
		case !fillers[word]:
			rest = append(rest, word)
		}
	}
	if len(rest) == 0 {
		return nil
	}
	says := strings.Join(rest, " ")
	switch status := StatusOf(says); {
	case status == "" && says == "e":
		return errors.New("an E can be exempt or in excess of the limits: write which")
	case status == "":
		return fmt.Errorf("%q beside a reading is not understood", says)
	case l.Status != "" && l.Status != status:
		return errors.New("two odometer statements stand in one cell")
	default:
		l.Status = status
	}
	return nil
}
