package hidden

import (
	"slices"
	"strings"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Risk is damage that may be there unseen. Money is in major units of the case's currency.
type Risk struct {
	ID       string                `json:"id"`
	Name     string                `json:"name"`
	Chance   Beta                  `json:"chance"`
	Cost     prob.Three            `json:"cost" unit:"money"` // parts, materials and outside work, own labour not included
	Hours    map[string]prob.Three `json:"hours"`
	Days     prob.Three            `json:"days"`    // that it adds to the build
	Loading  *float64              `json:"loading"` // on the lot's common factor; nil: the case's shared loading
	Findings []Evidence            `json:"findings"`
	Currency string                `json:"-"` // of a catalogue's entry; empty: that of the catalogue
	Why      string                `json:"why"`
	Caution  string                `json:"caution"` // where the damage can hurt someone
	Removed  bool                  `json:"removed"` // the user struck it out: the catalogue does not add it again
	Brings   []Work                `json:"brings"`  // jobs of the catalogue that come along where it comes true
}

// Work names a job of the catalogue that a risk brings along, and how likely.
type Work struct {
	ID     string   `json:"id"`
	Chance *float64 `json:"chance"` // nil: 1
}

// Beta is the chance of a risk as counts: A times present, B times absent, as if seen before.
type Beta struct {
	A float64 `json:"a"`
	B float64 `json:"b"`
}

// Mean returns the chance A / (A + B).
func (b Beta) Mean() float64 { return b.A / (b.A + b.B) }

// Evidence is how a finding informs a risk: the chance of the answer "yes" when the damage is there and when it is not.
type Evidence struct {
	Finding   string  `json:"finding"`
	IfPresent float64 `json:"if_present"`
	IfAbsent  float64 `json:"if_absent"`
}

// Entry is one risk of the catalogue with what brings it up.
type Entry struct {
	Risk
	Triggers []lot.Sign  `json:"triggers"` // any one is enough
	Moves    []lot.Move  `json:"moves"`    // how the lot changes its chance
	Never    []lot.Sign  `json:"never"`    // any one rules it out: no such vehicle has what it speaks of
	Scales   []lot.Scale `json:"scales"`   // how the lot changes what it costs
}

// Finding is one thing that a person can look at in a yard.
type Finding struct {
	ID      string  `json:"id"`
	Text    string  `json:"text"`  // the question, answered yes or no; yes means that it speaks for damage
	Look    string  `json:"look"`  // how to look
	Tools   string  `json:"tools"` // none, torch, magnet, tape, code reader
	Minutes float64 `json:"minutes"`
	Fee     float64 `json:"fee" unit:"money"` // what the look costs beside the time, such as a code read by somebody else
	Where   string  `json:"where"`            // area of the walk round the vehicle

	Needs []string `json:"needs"` // what the vehicle must be able to, see [lot.Abilities]; empty: nothing
}

// Stands reports whether a look can be taken at a vehicle that lacks these abilities, see [lot.Lot.Unable].
func (f Finding) Stands(unable []string) bool {
	return !slices.ContainsFunc(f.Needs, func(need string) bool { return slices.Contains(unable, need) })
}

// Catalogue is the list of risks and findings with a word on where its figures come from.
type Catalogue struct {
	Format   string `json:"format"` // walkline-risks/1
	Note     string `json:"note"`
	Currency string `json:"currency"`
	// Scales say how the vehicle changes what risks cost.
	Scales   []lot.Scale `json:"scales"`
	Risks    []Entry     `json:"risks"`
	Findings []Finding   `json:"findings"`
}

// ownMinutes is how long a look takes that no catalogue knows: a starter value.
const ownMinutes = 2

// Findings returns the findings of a catalogue followed by those that only the risks name, each once; these have no
// words but their id.
func Findings(known []Finding, risks []Risk) []Finding {
	all, seen := slices.Clone(known), map[string]bool{}
	for _, f := range known {
		seen[f.ID] = true
	}
	for _, r := range risks {
		for _, e := range r.Findings {
			if e.Finding != "" && !seen[e.Finding] {
				seen[e.Finding] = true
				text := strings.ReplaceAll(e.Finding, "_", " ")
				all = append(all, Finding{ID: e.Finding, Text: text + "?", Minutes: ownMinutes})
			}
		}
	}
	return all
}
