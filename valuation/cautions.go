package valuation

import "strings"

// Cautions returns the cautions of the answer's work and of its hidden damage, each sentence once: one that says no more than those
// before it is left out, one that says more keeps only that.
func (a Answer) Cautions() []string {
	said := map[string]bool{}
	var out []string
	add := func(caution string) {
		var fresh []string
		for _, s := range strings.SplitAfter(caution, ". ") {
			if plain := strings.TrimSpace(s); plain != "" && !said[plain] {
				said[plain] = true
				fresh = append(fresh, plain)
			}
		}
		if len(fresh) > 0 {
			out = append(out, strings.Join(fresh, " "))
		}
	}
	for _, l := range a.Repair.Lines {
		add(l.Caution)
	}
	for _, r := range a.Hidden.Risks {
		add(r.Caution)
	}
	return out
}
