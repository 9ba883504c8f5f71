package donor

import (
	"fmt"
	"slices"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Fault is one thing wrong with the catalogue.
type Fault struct{ Key, Value, Want string }

// Check returns every fault of the catalogue: an id given twice, words that are none, figures out of their bounds.
func (c Catalogue) Check() []Fault {
	var out []Fault
	unless := func(ok bool, key string, value any, want string) {
		if !ok {
			out = append(out, Fault{key, fmt.Sprint(value), want})
		}
	}
	unless(c.Format == Format, "format", c.Format, Format)
	out = append(out, c.Terms.Check()...)
	seen := map[string]bool{}
	for i, a := range c.Assemblies {
		at := fmt.Sprintf("assemblies[%d].", i)
		unless(a.ID != "" && !seen[a.ID], at+"id", a.ID, "an id of its own")
		seen[a.ID] = true
		for _, f := range a.Check() {
			out = append(out, Fault{at + f.Key, f.Value, f.Want})
		}
	}
	return out
}

// Check returns every fault of the terms: figures out of their bounds or their order.
func (c Terms) Check() []Fault {
	var out []Fault
	unless := func(ok bool, key string, value any, want string) {
		if !ok {
			out = append(out, Fault{key, fmt.Sprint(value), want})
		}
	}
	unless(c.Selling >= 0 && c.Selling < 1, "selling", c.Selling, "a share from 0 to below 1")
	unless(c.Common >= 0 && c.Common < 1, "common", c.Common, "a share from 0 to below 1")
	for key, t := range map[string]prob.Three{"hours": c.Overhead, "days": c.Days, "scrap": c.Scrap} {
		unless(t.Ordered() && t.Low >= 0, key, t, "three figures from 0 on, in their order")
	}
	unless(c.Runs != (Running{}), "runs", "nothing", "the chance that what must run does, by running state")
	for key, r := range map[string]Running{"runs": c.Runs, "runs_after_a_hit": c.AfterHit} {
		for _, chance := range []float64{r.Drives, r.Starts, r.TurnsOver, r.Dead, r.Unknown} {
			unless(chance >= 0 && chance <= 1, key, chance, "chances from 0 to 1")
		}
	}
	return out
}

// Check returns every fault of the assembly but of its id: no name, words that are none, figures out of their bounds.
func (a Assembly) Check() []Fault {
	var out []Fault
	unless := func(ok bool, key string, value any, want string) {
		if !ok {
			out = append(out, Fault{key, fmt.Sprint(value), want})
		}
	}
	unless(a.Name != "", "name", a.Name, "a name")
	a.figures("", unless)
	a.words("", unless)
	return out
}

func (a Assembly) figures(at string, unless func(bool, string, any, string)) {
	for key, t := range map[string]prob.Three{"share": a.Share, "price": a.Price} {
		unless(t.Ordered() && t.Low >= 0, at+key, t, "three figures from 0 on, in their order")
	}
	unless(a.Share.Zero() != a.Price.Zero() && a.Share.High < 1, at+"share", a.Share, "a share below 1 or a price, one of the two")
	unless(a.Chance > 0 && a.Chance <= 1, at+"chance", a.Chance, "above 0, at most 1")
	unless(a.Hours >= 0, at+"hours", a.Hours, "from 0 on")
	unless(!a.Restricted || a.Caution != "", at+"caution", a.Caution, "a caution: what may be forbidden says so")
}

func (a Assembly) words(at string, unless func(bool, string, any, string)) {
	for area, extent := range a.Near {
		unless(slices.Contains(lot.Areas, area) && (extent == Marks || slices.Contains(lot.Extents, extent)), at+"near", area+": "+extent,
			"an area and an extent")
	}
	unless(a.Depth == "" || slices.Contains(lot.Depths, a.Depth), at+"depth", a.Depth, "a depth")
	for _, list := range []struct {
		key          string
		words, known []string
	}{{"missing", a.Missing, lot.MissingKeys}, {"airbags_deployed", a.Bags, lot.AirbagPositions}, {"mechanical", a.Causes, lot.Causes},
		{"powertrains", a.Powertrains, lot.Powertrains}, {"kinds", a.Kinds, lot.Kinds}} {
		for _, word := range list.words {
			unless(slices.Contains(list.known, word), at+list.key, word, "one of the words of the case file")
		}
	}
}
