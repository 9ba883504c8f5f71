package cell

import (
	"strings"
	"unicode"
)

// folds are the letters of the seven languages without their marks.
var folds = strings.NewReplacer("ä", "a", "à", "a", "á", "a", "â", "a", "ã", "a", "ą", "a", "ç", "c", "ć", "c", "è", "e", "é", "e",
	"ê", "e", "ë", "e", "ę", "e",
	"ì", "i", "í", "i", "î", "i", "ï", "i", "ł", "l", "ñ", "n", "ń", "n", "ò", "o", "ó", "o", "ô", "o", "ö", "o", "ś", "s", "ù", "u",
	"ú", "u", "û", "u",
	"ü", "u", "ź", "z", "ż", "z", "ß", "ss", "œ", "oe", "æ", "ae")

// Fold returns a text in small letters without marks on them.
func Fold(text string) string {
	for i := range len(text) {
		if c := text[i]; c >= 0x80 {
			return folds.Replace(strings.ToLower(text))
		}
	}
	return strings.ToLower(text)
}

// Words returns the folded words of a text: its runs of letters and of digits, parted too where a small letter meets a capital one.
func Words(text string) []string {
	var parted strings.Builder
	before := ' '
	for _, r := range text {
		if unicode.IsUpper(r) && unicode.IsLower(before) {
			parted.WriteByte(' ')
		}
		parted.WriteRune(r)
		before = r
	}
	return strings.FieldsFunc(Fold(parted.String()), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// Set is a set of folded words or phrases.
type Set map[string]bool

// SetOf returns the phrases of a list, parted by bars.
func SetOf(list string) Set {
	s := Set{}
	for _, phrase := range strings.Split(list, "|") {
		s[strings.Join(Words(phrase), " ")] = true
	}
	return s
}

// Has reports whether a cell is one of the phrases, whatever its marks and letters' case.
func (s Set) Has(cell string) bool { return of(s, cell) }

// of returns what a map holds for the folded words of a text.
func of[V any](m map[string]V, text string) V {
	var words [48]byte
	if n, plain := plainWords(words[:], text); plain {
		return m[string(words[:n])]
	}
	return m[strings.Join(Words(text), " ")]
}

// plainWords writes the [Words] of a text into a buffer, parted by spaces, and returns how many bytes they are. It can't where a letter is
// beyond ASCII, or the buffer too small.
func plainWords(into []byte, text string) (n int, can bool) {
	parts, before := false, byte(' ')
	for i := range len(text) {
		c := text[i]
		capital, small := 'A' <= c && c <= 'Z', 'a' <= c && c <= 'z'
		switch {
		case c >= 0x80 || n+1 >= len(into):
			return 0, false
		case !capital && !small && !isDigit(c):
			parts = true
		default:
			if n > 0 && (parts || capital && 'a' <= before && before <= 'z') {
				into[n], n = ' ', n+1
			}
			if parts = false; capital {
				c |= 0x20
			}
			into[n], n = c, n+1
		}
		before = text[i]
	}
	return n, true
}

// nothing are the words and marks that stand where nothing is known.
var nothing = SetOf("n/a|na|k.A.|unknown|not known|unbekannt|inconnu|desconocido|nieznany|nieznane|brak danych|onbekend|sconosciuto|" +
	"n.c.|not said|none given|nb|tbd|not yet|not sold|unsold|still here|noch da|noch nicht|staat nog|nog niet|pas encore|todavia no|" +
	"jeszcze nie|non ancora")

// failed is what a spreadsheet shows of a formula that it could not work out, in some languages; where the column is too narrow, it shows
// "####". Source: ECMA-376 part 1, 18.17.3 (English); the others common practice, no source.
var failed = map[string]bool{"#DIV/0!": true, "#N/A": true, "#NAME?": true, "#NULL!": true, "#NUM!": true, "#REF!": true, "#VALUE!": true,
	"#WERT!": true, "#BEZUG!": true, "#NV": true, "#VALEUR!": true, "#N/D": true, "#ARG!": true, "#ADR!": true, "#VALOR!": true,
	"#WAARDE!": true}

// Nothing reports whether a cell says nothing: it is empty, a dash, a question mark, a failed formula or a word for not known.
func Nothing(cell string) bool {
	if cell == "" {
		return true
	}
	switch c := cell[0] | 0x20; {
	case c >= 'a' && c <= 'z':
		return len(cell) < 16 && strings.IndexByte("nkuidbostpj", c) >= 0 && nothing.Has(cell)
	case '0' <= c && c <= '9', c == '$':
		return false
	case c == '#':
		return failed[strings.ToUpper(cell)] || strings.Trim(cell, "#") == ""
	}
	return strings.Trim(cell, "-–—?. ") == ""
}

// Begins reports whether the first word of a text is in the set.
func (s Set) Begins(text string) bool {
	var word [16]byte
	n := 0
	for n < len(text) && n < len(word) {
		c := text[n] | 0x20
		if text[n] >= 0x80 {
			words := Words(text)
			return len(words) > 0 && s[words[0]]
		}
		if c < 'a' || c > 'z' {
			break
		}
		word[n] = c
		n++
	}
	return s[string(word[:n])]
}

var (
	yes = SetOf("yes|y|true|1|x|present|there|ja|j|oui|o|si|s|sí|tak|t|vorhanden|présent|aanwezig|presente|jest|are")
	no  = SetOf("no|n|false|0|missing|none|not there|nein|non|nie|nee|fehlt|keine|manque|aucun|falta|brak|ontbreekt|geen|manca|" +
		"mancanti|ninguna")
)

// YesNo returns what a cell says, and whether it says either. A count above zero is a yes.
func YesNo(cell string) (says, known bool) {
	switch {
	case yes.Has(cell):
		return true, true
	case no.Has(cell):
		return false, true
	}
	words := Words(cell)
	if len(words) > 0 && strings.Trim(words[0], "0123456789") == "" {
		return strings.Trim(words[0], "0") != "", true
	}
	return false, false
}
