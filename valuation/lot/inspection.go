package lot

import (
	"slices"
	"strings"
)

// Inspection is whether a title waits for the rebuilt inspection before the finished vehicle may be registered.
type Inspection int

// The answers to that.
const (
	InspectionOpen Inspection = iota // the title does not tell: it is counted, and asked
	Inspected                        // the title waits for none
	Uninspected                      // it does
)

// Brands by whether they bring the inspection: those that ask for it, those that say it was passed, those that speak of use or mileage
// alone. The words are those of AAMVA D20 ([Brands]); what they bring is common practice, no source: the agency decides.
var (
	askCodes    = []string{"11", "16", "31"}
	passedCodes = []string{"09", "10", "13", "21"}
	plainCodes  = []string{"00", "12", "17", "18", "19", "20", "24", "25", "68", "69", "70", "71", "72", "73", "74", "75", "76", "78"}
)

// Inspection reads a title for it. A rebuilt title has passed where it was issued; another agency may ask anew.
func (t Title) Inspection() Inspection {
	words := slices.DeleteFunc(append([]string{t.Document}, t.Brands...), func(w string) bool { return len(wordsOf(w)) == 0 })
	read, home := Inspected, t.IssuedIn != "" && strings.EqualFold(strings.TrimSpace(t.IssuedIn), strings.TrimSpace(t.RegisterIn))
	for _, w := range words {
		switch one := inspection(w, home); {
		case one == Uninspected && !t.passed():
			return Uninspected
		case one != Inspected && !(home && t.passed()):
			read = InspectionOpen
		}
	}
	if len(wordsOf(t.Document)) == 0 {
		return InspectionOpen
	}
	return read
}

// passed reports whether the title says anywhere that the vehicle was rebuilt.
func (t Title) passed() bool {
	return slices.ContainsFunc(append([]string{t.Document}, t.Brands...), func(w string) bool {
		return slices.Contains(passedCodes, codeOf(w))
	})
}

// inspection reads one word; home says that it will be registered where it was issued.
func inspection(word string, home bool) Inspection {
	said := wordsOf(word)
	code := codeOf(word)
	switch {
	case slices.Contains(plainCodes, code) || code == "" && plainPaper(said):
		return Inspected
	case slices.Contains(passedCodes, code) && home:
		return Inspected
	case slices.Contains(askCodes, code):
		return Uninspected
	}
	return InspectionOpen
}

// codeOf returns the code of a standard brand, or of the kind of document that the words name: rebuilt before salvage, as "rebuilt
// salvage" has passed.
func codeOf(word string) string {
	if b, known := BrandOf(word); known {
		return b.Code
	}
	said := wordsOf(word)
	if ReadPaper(word) != Known {
		return ""
	}
	for _, kind := range [][2]string{{"rebuilt", "09"}, {"reconstructed", "10"}, {"refurbished", "13"}, {"salvage", "11"}} {
		if slices.Contains(said, kind[0]) {
			return kind[1]
		}
	}
	return ""
}

// plainPaper reports whether the words name an ordinary title and nothing else.
func plainPaper(said []string) bool {
	plain := []string{"a", "certificate", "of", "title", "vehicle", "clear", "clean", "original", "duplicate", "regular", "standard"}
	return len(said) > 0 && !slices.ContainsFunc(said, func(w string) bool { return !slices.Contains(plain, w) })
}
