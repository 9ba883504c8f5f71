package view

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation"
)

// StarterChange is what the Bench says of an entry in which the starter that ships differs.
type StarterChange struct {
	Key   valuation.EntryKey
	Title string
	Lines []string // what differs, key by key
}

// mostDiffering is how many differing keys of one entry are said.
const mostDiffering = 8

// StarterChanges returns what the Bench says of the entries in which the starter that ships differs, and nothing is decided.
func StarterChanges(s desk.State) []StarterChange {
	var all []StarterChange
	for _, c := range s.StarterChanges {
		all = append(all, StarterChange{Key: c.Key, Title: starterTitle(s, c), Lines: differing(c.Was, c.Is)})
	}
	return all
}

func starterTitle(s desk.State, c desk.StarterChange) string {
	was, is := leaves(c.Was), leaves(c.Is)
	name := c.Key.ID
	for _, key := range []string{"jobs 1 job", "risks 1 name", "findings 1 text", "assemblies 1 name"} {
		if words := joined("", is[key]); words != "" {
			name = words
		} else if words := was[key]; words != "" {
			name = words
		}
	}
	kind, how := map[string]string{valuation.KindJob: "Repair job", valuation.KindRisk: "Hidden risk", valuation.KindFinding: "Look",
		valuation.KindAssembly: "Assembly",
		valuation.KindParting:  "Parting out",
		valuation.KindScales:   "What the vehicle does to the cost of all"}[c.Key.Kind], "changed"
	switch {
	case len(was) == 0:
		how = "new"
	case len(is) == 0:
		how = "no longer there"
	}
	title := fmt.Sprintf("%s, %s: %s", kind, how, name)
	if slices.Contains(s.Own.Keys(), c.Key) {
		title += " (yours is in its place)"
	}
	return title
}

// differing says each key whose value differs between two documents of an entry; of one that is new or gone it says nothing.
func differing(was, is []byte) []string {
	a, b := leaves(was), leaves(is)
	if len(a) == 0 || len(b) == 0 {
		return nil
	}
	keys := maps.Clone(a)
	maps.Copy(keys, b)
	var lines []string
	for _, key := range slices.Sorted(maps.Keys(keys)) {
		if a[key] == b[key] {
			continue
		}
		_, short, _ := strings.Cut(key, " 1 ")
		lines = append(lines, fmt.Sprintf("%s: %s, was %s", Words(short), orNone(b[key]), orNone(a[key])))
	}
	if more := len(lines) - mostDiffering; more > 0 {
		lines = append(lines[:mostDiffering], fmt.Sprintf("and %d more", more))
	}
	return lines
}

func orNone(words string) string {
	if words == "" {
		return "nothing"
	}
	return words
}

// leaves returns the values of a document by their paths, list entries counted from 1; nothing for no document.
func leaves(document []byte) map[string]string {
	all := map[string]string{}
	var tree any
	if json.Unmarshal(document, &tree) != nil {
		return all // there is no such entry
	}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			if v["likely"] != nil { // a judgement is one value
				all[path] = fmt.Sprintf("%v (%v to %v)", v["likely"], v["low"], v["high"])
				return
			}
			for k, x := range v {
				walk(joined(" ", path, k), x)
			}
		case []any:
			for i, x := range v {
				walk(fmt.Sprintf("%s %d", path, i+1), x)
			}
		default:
			all[path] = fmt.Sprint(v)
		}
	}
	walk("", tree)
	return all
}

// StarterSum says how many entries wait for a decision.
func StarterSum(s desk.State) string {
	n := len(s.StarterChanges)
	if n == 0 {
		return "The starter catalogues of this version are those that you work with; what you left out stays out."
	}
	return fmt.Sprintf("This version's starter catalogues differ from those that you work with in %s. Nothing changes until you take it.",
		entries(n))
}

func entries(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return fmt.Sprintf("%d entries", n)
}
