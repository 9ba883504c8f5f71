package listing

import (
	"fmt"
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/store/runlist"
	"walkline/valuation/lot"
)

// Found is what a text says.
type Found struct {
	Lot                lot.Lot
	Damage             []lot.Damage
	Driven, Powertrain string // codes of the survey
	Doors              int    // 2 to 5; 0: not said
	Facts              []Fact // what was understood, in the order of the text
	Left               []string

	sign string     // of the money that it names
	days []lot.Date // that every word of the sale's day can mean; none beside a fact of it: they differ
}

// Fact is one thing that was understood: the field that it belongs to, what it says, and the code of the area that it is about, if any.
type Fact struct{ Field, Words, Area string }

// The bounds of a listing's text. Ours: a listing is a page at most.
const (
	mostText  = 8_000
	mostLines = 400
)

// Read returns what a text says. Errors: it is longer than a listing can be.
func Read(text string) (Found, error) {
	lines := strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' })
	if len(text) > mostText || len(lines) > mostLines {
		return Found{}, fmt.Errorf("a listing has at most %d lines and %d letters: paste the part that describes one vehicle", mostLines,
			mostText)
	}
	r := &reading{}
	for i := 0; i < len(lines); i++ {
		line := strings.Trim(lines[i], " \t•*·–-")
		if label := strings.TrimSuffix(line, ":"); i+1 < len(lines) && known(label) && !known(lines[i+1]) {
			line = label + ": " + strings.TrimSpace(lines[i+1]) // a label on a line of its own
			i++
		}
		for _, piece := range parted(line) {
			r.take(piece)
		}
	}
	r.settle()
	return r.Found, nil
}

func known(label string) bool { return fieldOf(strings.TrimSpace(label)) != "" }

// ownLabels are the labels of a listing that no run list has a column for. Common practice, no source.
var ownLabels = map[string]string{"vehicle": "vehicle", "engine": "engine", "fuel": "engine", "engine type": "engine", "drive": "driven",
	"drive type": "driven", "driven wheels": "driven", "drivetrain": "driven", "airbags": "airbags", "start": "condition", "key": "keys",
	"brands": "document", "lot": "number", "fuel type": "engine", "doors": "doors", "number of doors": "doors", "body": "doors",
	"body style": "doors", "primary": "areas", "secondary": "areas", "sec": "areas", "also damaged": "areas", "value": "value_before",
	"worth": "value_before", "retail value": "value_before", "sale day": "sale_date", "sells on": "sale_date"}

// fieldOf returns what a label names, empty for none. Any label that speaks of damage names damaged areas.
func fieldOf(label string) string {
	words := cell.Words(label)
	if len(words) == 0 || len(words) > 4 {
		return ""
	}
	if own := ownLabels[strings.Join(words, " ")]; own != "" {
		return own
	}
	if field := runlist.FieldOf(label); field != "" {
		return field
	}
	if last := words[len(words)-1]; len(words) > 1 && last == "damage" {
		if _, rest := runlist.Named(label); rest {
			return "areas"
		}
	}
	return ""
}

// piece is a part of a text that says one thing or a few: with a label where there is one.
type piece struct{ field, label, text string }

// parted parts a line at what stands between things that are listed. A year after a comma belongs to the day before it.
func parted(line string) []piece {
	var out []piece
	start := 0
	cut := func(end, next int) {
		if text := strings.TrimSpace(line[start:end]); text != "" {
			out = append(out, labelled(text))
		}
		start = next
	}
	for i := 0; i < len(line); i++ {
		switch c := line[i]; {
		case c == ';', c == '|':
			cut(i, i+1)
		case (c == ',' || c == '.') && i+1 < len(line) && line[i+1] == ' ' && !(c == ',' && yearNext(line[i+1:])):
			cut(i, i+1)
		}
	}
	cut(len(line), len(line))
	return out
}

// yearNext reports whether nothing but a year stands before the next mark.
func yearNext(text string) bool {
	if at := strings.IndexAny(text, ",;|"); at >= 0 {
		text = text[:at]
	}
	text = strings.TrimSpace(text)
	return len(text) == 4 && cell.YearIn(text) > 0
}

func labelled(text string) piece {
	if at := strings.IndexAny(text, ":\t"); at > 0 {
		if field := fieldOf(text[:at]); field != "" {
			return piece{field, strings.TrimSpace(text[:at]), strings.Trim(text[at+1:], " \t.")}
		}
	}
	return piece{text: strings.Trim(text, " .")}
}

// reading is a text on its way in.
type reading struct {
	Found
	words int // of the piece in hand
}

// fact notes what was understood.
func (r *reading) fact(field, words string) {
	r.Facts = append(r.Facts, Fact{Field: field, Words: words})
}

// take takes one piece; what is not understood of it is left.
func (r *reading) take(p piece) {
	if p.field != "" {
		if !cell.Nothing(p.text) && !r.byLabel(p) {
			r.Left = append(r.Left, p.label+": "+p.text+unplaced(p))
		}
		return
	}
	for run := range slices.Chunk(strings.FieldsFunc(p.text, func(c rune) bool { return c == ' ' || c == '\t' }), mostWords) {
		r.look(run)
	}
}

// unplaced says what is missing of damage that names no area.
func unplaced(p piece) string {
	if p.field != "areas" || denies(p.text) {
		return ""
	}
	return " (names no area by itself: mark it under What's damaged)"
}

// mostWords is how many words are looked at together. Ours: a longer piece is no longer one thing.
const mostWords = 40

// look looks for facts in words that no label explains.
func (r *reading) look(w words) {
	before := len(r.Facts)
	r.words = len(w)
	for _, find := range finders {
		find(r, &w)
	}
	if len(r.Facts) > before {
		w = w.telling()
	}
	if len(w) > 0 {
		r.Left = append(r.Left, strings.Join(w, " "))
	}
}
