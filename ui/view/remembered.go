package view

import (
	"maps"
	"slices"

	"walkline/ui/desk"
)

// RememberedWords says how tables of a shape are read, a line for each column and for what is stated of the whole.
func RememberedWords(r desk.Remembered) []string {
	lines := []string{"A table of " + r.What + " with these columns is read so:"}
	if r.What == "run list" {
		lines[0] = "A run list with these columns is read so:"
	}
	for i, name := range r.Columns {
		if i < len(r.Stated.Match) {
			lines = append(lines, name+": "+Words(r.Stated.Match[i]))
		}
	}
	for _, s := range []struct{ what, says string }{{"Numbers like", r.Stated.Marks}, {"Dates", r.Stated.Dates},
		{"Mileage in", r.Stated.Unit}, {"Distance in", r.Stated.Distance}, {"Prices", r.Stated.Kind}, {"Sale", r.Stated.Sale}} {
		if s.says != "" {
			lines = append(lines, s.what+" "+s.says)
		}
	}
	for _, word := range slices.Sorted(maps.Keys(r.Stated.Titles)) {
		lines = append(lines, "The title \""+word+"\" means "+r.Stated.Titles[word])
	}
	return lines
}
