package view

import (
	"fmt"
	"slices"
	"strings"

	"walkline/ui/damage"
	"walkline/ui/desk"
	"walkline/valuation"
)

// Missing is something that a bid still needs: its key in the case file, its name in a word or two, and what to do.
type Missing struct{ Key, Name, Words string }

// faultNames name in a word or two what a new lot's faults are about.
var faultNames = map[string]string{"resale": "resale price", "lot.model_year": "model year", "rules": "a house rule"}

// StillMissing returns what the open lot still needs for a bid, in the order in which it is entered; none: there is an answer. Every page
// names this list and no other.
func StillMissing(o desk.Open) []Missing {
	var all []Missing
	add := func(m Missing) {
		if !slices.ContainsFunc(all, func(x Missing) bool { return x.Key == m.Key }) {
			all = append(all, m)
		}
	}
	needs := append(o.Case.Missing(), o.Needs...)
	if o.Valued != nil && o.Fresh {
		needs = o.Valued.Answer.Needs
	}
	for _, n := range needs {
		add(Missing{n.Key, needName(n.Key), n.Text})
	}
	for _, f := range o.Faults {
		m := Missing{f.Key, faultNames[f.Key], Fault(f)}
		if m.Name == "" {
			m.Name = Words(f.Key)
		}
		add(m)
	}
	return all
}

// Marks returns the damaged areas of a case in words, with how far and how deep; nothing where none is marked.
func Marks(c valuation.Case) string {
	var all []string
	for _, d := range c.Damage {
		all = append(all, damage.Words(d))
	}
	return strings.Join(all, "; ")
}

// PricesThere says how many comparables the open lot has.
func PricesThere(o desk.Open) string {
	counts := 0
	for _, r := range o.Case.Resale.Rows {
		if !r.Excluded {
			counts++
		}
	}
	if counts == 0 {
		return "no comparables yet"
	}
	return Count(counts, "comparable")
}

// Answered names the step that answers a check: no to "Is the trunk floor rippled?".
func Answered(c Check, answer string) string {
	if c.Ask == "" {
		return "finding " + Words(c.ID)
	}
	return fmt.Sprintf("%s to %q", answer, c.Ask)
}
