package casefile

import (
	"reflect"
	"strings"
)

// field is one key of a struct: its name, whether it holds money, and where it is.
type field struct {
	key   string
	money bool
	index []int
}

// fields lists the keys of a struct type in order, embedded structs laid flat; a field tagged "-" is no key.
func fields(t reflect.Type) []field {
	var fs []field
	for i := range t.NumField() {
		f := t.Field(i)
		key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous && key == "":
			for _, inner := range fields(f.Type) {
				inner.index = append([]int{i}, inner.index...)
				fs = append(fs, inner)
			}
		case key != "-" && f.IsExported():
			if key == "" {
				key = f.Name
			}
			fs = append(fs, field{key, f.Tag.Get("unit") == "money", []int{i}})
		}
	}
	return fs
}

// nearest returns the known key that differs least from an unknown one, and whether it is near enough to be meant.
func nearest(key string, known []field) (string, bool) {
	best, least := "", 1+max(2, len(key)/2)
	for _, f := range known {
		if d := distance(strings.ToLower(key), f.key); d < least {
			best, least = f.key, d
		}
	}
	return best, best != ""
}

// distance is the number of single-character edits between a and b (Levenshtein 1966).
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		diagonal := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := diagonal
			if a[i-1] != b[j-1] {
				change++
			}
			diagonal = row[j]
			row[j] = min(change, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(b)]
}
