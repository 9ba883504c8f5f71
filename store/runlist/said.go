package runlist

import (
	"strings"
	"sync"

	"walkline/store/cell"
	"walkline/valuation/lot"
)

// FieldOf returns the column that a heading or a label names by exactly its words, empty for none.
func FieldOf(label string) string {
	return labels()[strings.Join(cell.Words(label), " ")]
}

// labels are the columns by the phrases that name them; of two columns with one phrase it is the first's.
var labels = sync.OnceValue(func() map[string]string {
	all := map[string]string{}
	for _, c := range columns {
		for phrase := range cell.SetOf(c.Words) {
			if all[phrase] == "" {
				all[phrase] = c.Name
			}
		}
	}
	return all
})

// Condition returns the code for whether a vehicle drives that words say, and whether they say one.
func Condition(words string) (string, bool) {
	code := conditions[strings.Join(cell.Words(strings.ReplaceAll(words, "_", " ")), " ")]
	return code, code != ""
}

// Runs is Condition for an answer to whether it runs, a sentence too. A plain yes means that it starts; a plain no leaves it unknown,
// because it does not
// say what was tried.
func Runs(answer string) (string, bool) {
	if code := conditionOf(answer); code != "" {
		return code, true
	}
	says, known := cell.YesNo(answer)
	if says {
		return "starts", known
	}
	return "unknown", known
}

// Told returns the codes of the losses that a text tells of by its words alone, none where it tells of none.
func Told(text string) []string { return lossParts.found(text) }

// Named returns the codes of the damaged areas that a text names, and whether words are left that name none.
func Named(text string) (codes []string, rest bool) { return areasOf(text) }

// Filled returns a lot with what a text adds to it, and in words what the text says otherwise of the vehicle, which is left as it is.
func Filled(have, says lot.Lot) (lot.Lot, []string) { return filled(have, says) }
