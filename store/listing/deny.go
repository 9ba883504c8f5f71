package listing

import (
	"slices"
	"strings"

	"walkline/store/cell"
)

// denials are words that say of what follows that it is not so, in the languages that are read; after is where they stand behind it.
var (
	denials = cell.SetOf("no|not|never|without|non|isn|isnt|isn't|wasn't|doesn't|doesnt|won't|wont|can't|cant|cannot|nicht|kein|keine|ohne|" +
		"ne|n|pas|sans|sin|nie|bez|niet|geen|zonder|senza|anti|hardly|barely")
	after = cell.SetOf("not|nicht|pas|niet|free|frei")
)

// last and first return the word at an end, empty for none.
func (w words) last() string {
	if len(w) == 0 {
		return ""
	}
	return w[len(w)-1]
}

func (w words) first() string {
	if len(w) == 0 {
		return ""
	}
	return w[0]
}

// deny reports whether the words before a run deny it: what they deny can be longer than the run ("no heavy front damage").
func (w words) deny() bool { return slices.ContainsFunc(w, denials.Has) }

// denied reports whether the words on either side of a run say that it is not so: "rijdt niet", "runs? No".
func denied(before, behind words) bool {
	return before.deny() || after.Has(behind.first()) || len(behind) == 1 && cell.SetOf("no|nein|non|nee|nie").Has(behind[0])
}

// denies reports whether a text says anywhere that something is not so.
func denies(text string) bool {
	w := words(strings.Fields(text))
	return slices.ContainsFunc(w, denials.Has) || slices.ContainsFunc(w, after.Has) || slices.ContainsFunc(w, negations.Has) ||
		strings.HasSuffix(cell.Fold(text), "frei")
}
