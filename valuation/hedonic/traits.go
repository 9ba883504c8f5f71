package hedonic

import (
	"math"
	"strconv"
	"strings"
)

// Traits is what a row and a subject have in common, in the units of the fit.
type Traits struct {
	Year       int     // model year
	Age        float64 // years from the start of the model year to the day of the sale
	Miles      float64
	MilesKnown bool
	Trim       string
	Model      string // make and model
	Brand      string // empty: clear
	Asked      bool
	Back       float64 // years from the row's day to the subject's sale, at least 0
	Condition  float64
	CondKnown  bool
	Distance   float64
	More       map[string]string

	cells  []cell // of the columns that the subject states too
	within string // the trim within its model
}

// MonthsColumn is the column that states the age to the month, where nearly all rows and the subject have it.
const MonthsColumn = "age_months"

// Key returns s in small letters with single spaces.
func Key(s string) string {
	if isKey(s) {
		return s
	}
	return strings.Join(strings.Fields(strings.ToLower(s)), " ")
}

// isKey reports whether s is a key already, as most cells are: plain letters, no space at an end or doubled.
func isKey(s string) bool {
	space := true
	for i := range len(s) {
		c := s[i]
		if c == ' ' && space || c < ' ' || c >= 0x7f || 'A' <= c && c <= 'Z' {
			return false
		}
		space = c == ' '
	}
	return s == "" || !space
}

// Number returns the finite number that s states, if it does.
func Number(s string) (float64, bool) {
	s = strings.TrimSpace(s)
	if s == "" || s[0] > '9' { // a word, which ParseFloat refuses at the cost of an error
		return 0, false
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	return x, true
}
