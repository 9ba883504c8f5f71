package sheet

import "slices"

// Paper is a size of paper.
type Paper struct {
	Name          string
	Width, Height float64 // mm
}

// The sizes that are printed.
var (
	A4     = Paper{"A4", 210, 297}         // ISO 216
	Letter = Paper{"Letter", 215.9, 279.4} // ANSI/ASME Y14.1 size A, 8.5 x 11 in
)

// letterCurrencies are those of the regions that use Letter (from memory of the Unicode CLDR's measurement data).
var letterCurrencies = []string{"USD", "CAD", "MXN", "PHP", "CLP", "COP", "CRC", "GTQ", "NIO", "PAB", "VES", "BZD"}

// PaperFor returns the paper that is usual where a currency is: Letter in most of the Americas, else A4.
func PaperFor(currency string) Paper {
	if slices.Contains(letterCurrencies, currency) {
		return Letter
	}
	return A4
}

// PaperNamed returns the paper of a name and whether there is one: "a4" or "letter", "A4" or "Letter".
func PaperNamed(name string) (Paper, bool) {
	switch name {
	case "a4", "A4":
		return A4, true
	case "letter", "Letter":
		return Letter, true
	}
	return Paper{}, false
}

// or returns the paper, or the one that is usual for a currency when none was chosen.
func (p Paper) or(currency string) Paper {
	if p == (Paper{}) {
		return PaperFor(currency)
	}
	return p
}
