package cell

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// Parts are what stands in a cell that names a vehicle.
type Parts struct {
	Year              int
	Make, Model, Trim string
	Length            Length
	Unsure            error // two words could be the year: Year is the first
}

// leastReading is the least number that stands for an odometer reading beside a vehicle. Starter value, ours: above it no engine size and
// no count of doors.
const leastReading = 1000

// Vehicle parts a cell that names a vehicle. make and model are those of the lot, empty where there is none: they are looked for first;
// else the first word after the year is the make and the second the model.
func Vehicle(text, make, model string) (v Parts) {
	var words []string
	for i, part := range strings.Split(strings.ReplaceAll(text, ", ", "|"), "|") {
		part = strings.TrimSpace(part)
		l, err := ReadLength(part, 0)
		year := l.Unit == "" && YearIn(part) > 0
		if i > 0 && err == nil && l.Known && !v.Length.Known && !year && l.Float() >= leastReading {
			v.Length = l
			continue
		}
		words = append(words, strings.Fields(part)...)
	}
	words = slices.DeleteFunc(words, func(w string) bool { return strings.Trim(w, "-–—:,;") == "" })
	v.reading(&words)
	if i := slices.IndexFunc(words, func(w string) bool { return yearOf(w) > 0 }); i >= 0 {
		v.Year, v.Unsure = yearOf(words[i]), twoYears(words, make+" "+model)
		from := i
		if i > 0 && builtIn.Has(words[i-1]) {
			from--
		}
		words = slices.Delete(words, from, i+1)
	}
	if v.Year == 0 && len(words) > 1 && TwoDigits(words[0]) > 0 && !isDigit(words[1][0]) && UnitOf(words[1]) == "" {
		v.Year, words = TwoDigits(words[0]), words[1:]
	}
	if len(words) > 0 && makeModel.MatchString(words[0]) {
		words = slices.Concat(strings.Split(words[0], "/"), words[1:])
	}
	found := Cut(&words, model)
	switch has := Cut(&words, make); {
	case found:
		v.Make, v.Model = make, model
	case has:
		v.Make = make
		v.Model, words = next(words)
	default:
		for n := len(words); n > 1 && !unicode.IsLetter([]rune(words[0])[0]); n-- {
			words = append(words[1:], words[0]) // an engine's size is no make
		}
		v.Make, words = next(words)
		v.Model, words = next(words)
	}
	v.Trim = strings.Join(words, " ")
	return v
}

// twoYears returns which two years stand among the words of a vehicle, nil where one does. Those of the name that is looked for, and those
// behind a word that says what they are, are told from it.
func twoYears(words []string, name string) error {
	first := 0
	for i, w := range words {
		year := YearIn(w)
		if year == 0 || i > 0 && builtIn.Has(words[i-1]) || slices.Contains(strings.Fields(Fold(name)), Fold(w)) {
			continue
		}
		if first > 0 && year != first {
			return fmt.Errorf("it says %d and %d: give the model year a column of its own", first, year)
		}
		first = year
	}
	return nil
}

// builtIn are words that stand before the year of a vehicle. Common practice, no source.
var builtIn = SetOf("bj|baujahr|ez|year|built|annee|ano|rok|rocznik|bouwjaar|anno")

// makeModel finds a make and a model that a slash parts: "Ostrane/Pell".
var makeModel = regexp.MustCompile(`^\pL{2,}/[\pL\pN]{2,}$`)

// reading takes an odometer reading out of the words, where one that says its unit stands among them.
func (v *Parts) reading(words *[]string) {
	for at := 0; at < len(*words) && !v.Length.Known; at++ {
		for n := min(3, len(*words)-at); n > 0; n-- {
			text := strings.Join((*words)[at:at+n], " ")
			if l, err := ReadLength(text, 0); err == nil && l.Known && l.Unit != "" && l.Float() >= leastReading && YearIn(text) == 0 {
				v.Length, *words = l, slices.Delete(slices.Clone(*words), at, at+n)
				break
			}
		}
	}
}

func next(words []string) (string, []string) {
	if len(words) == 0 {
		return "", nil
	}
	return words[0], words[1:]
}

// Cut takes the words of a name out of others, whatever their letters' case, and reports whether they stood there.
func Cut(words *[]string, name string) bool {
	parts := strings.Fields(name)
	for at := 0; len(parts) > 0 && at+len(parts) <= len(*words); at++ {
		if slices.EqualFunc((*words)[at:at+len(parts)], parts, func(a, b string) bool { return Fold(a) == Fold(b) }) {
			*words = slices.Delete(slices.Clone(*words), at, at+len(parts))
			return true
		}
	}
	return false
}

func yearOf(word string) int {
	if year := YearIn(word); year > 0 {
		return year
	}
	return ShortYear(word)
}

// firstShort is the first year that two digits behind an apostrophe stand for: '40 is 1940, '39 is 2039. Ours.
const firstShort = 1940

// ShortYear returns the year of an apostrophe and two digits, as in '15, 0 for anything else.
func ShortYear(text string) int {
	for _, mark := range []string{"'", "\u2019", "\u2018", "`"} {
		d, before := strings.CutPrefix(text, mark)
		d, after := strings.CutSuffix(d, mark)
		if before != after {
			return TwoDigits(d)
		}
	}
	return 0
}

// TwoDigits returns the year of two digits, 0 for anything else.
func TwoDigits(text string) int {
	if len(text) != 2 || !isDigit(text[0]) || !isDigit(text[1]) {
		return 0
	}
	year := 1900 + int(text[0]-'0')*10 + int(text[1]-'0')
	if year < firstShort {
		year += 100
	}
	return year
}

// YearIn returns the first model year that stands alone in a text, 0 for none.
func YearIn(text string) int {
	for _, w := range Words(text) {
		w = strings.TrimSuffix(w, "r") // "2016r.", as in Polish
		if len(w) == 4 && (w[0] == '1' && w[1] == '9' || w[0] == '2' && w[1] == '0') && isDigit(w[2]) && isDigit(w[3]) {
			return int(w[0]-'0')*1000 + int(w[1]-'0')*100 + int(w[2]-'0')*10 + int(w[3]-'0')
		}
	}
	return 0
}
