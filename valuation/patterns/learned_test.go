package patterns_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/patterns"
)

func seen(p patterns.Pattern) patterns.Seen {
	return patterns.Seen{Loss: p.Loss, Damage: p.Damage, Survey: p.Survey}
}

func many(n int, s patterns.Seen) []patterns.Seen {
	all := make([]patterns.Seen, n)
	for i := range all {
		all[i] = s
	}
	return all
}

// kindOf is a pattern whether or not airbags went off.
func kindOf(p patterns.Pattern) string { return strings.TrimSuffix(p.Words, ", airbags deployed") }

// Without surveys, and with none that say anything, the starter weights stand to the bit.
func TestWithoutSurveysTheStarterWeightsStand(t *testing.T) {
	mute := []patterns.Seen{{}, {Loss: []string{"other"}, Damage: []lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}}},
		{Loss: []string{"flood"}}, {Loss: []string{"theft"}, Survey: &lot.Survey{Kind: "car"}},
		{Loss: []string{"collision"}, Damage: []lot.Damage{{Area: "interior", Extent: "minor", Depth: "skin"}}}}
	for _, r := range []patterns.Row{{Age: -1}, {Loss: []string{"collision", "hail"}, Age: 5, Ratio: .4}, {Areas: []string{"06"}, Age: 2}} {
		plain := patterns.Likely(r, patterns.Counts{})
		for _, c := range []patterns.Counts{patterns.Count(nil), patterns.Count(mute)} {
			if !reflect.DeepEqual(plain, patterns.Likely(r, c)) || c.Lots(r) != 0 {
				t.Errorf("%+v: moved by nothing, %d lots", r, c.Lots(r))
			}
		}
	}
}

// Of 10 and 40 lots of one kind the weight is the mean of a Dirichlet distribution with the starter weights times 20 before them:
// (20 p + n) / (20 + n), whatever the kind. Source: Gelman et al., Bayesian Data Analysis, ch. 3.4 (from memory). Each kind is found again
// in its own survey, or the counts would go elsewhere.
func TestWeightsAreDirichletMeans(t *testing.T) {
	for _, loss := range slices.DeleteFunc(slices.Clone(lot.Losses), func(l string) bool { return l == "other" }) {
		row := patterns.Row{Loss: []string{loss}, Age: -1}
		plain := patterns.Likely(row, patterns.Counts{})
		done := map[string]bool{}
		for _, p := range plain {
			if done[p.Words] {
				continue
			}
			done[p.Words] = true
			is := func(q patterns.Pattern) bool { return kindOf(q) == kindOf(p) }
			for _, n := range []int{10, 40} {
				c := patterns.Count(many(n, seen(p)))
				want := (20*sum(plain, is) + float64(n)) / (20 + float64(n))
				if got := sum(patterns.Likely(row, c), is); math.Abs(got-want) > 1e-9 || c.Lots(row) != n {
					t.Errorf("%s, %d lots: %.4f, want %.4f (%d counted)", p.Words, n, got, want, c.Lots(row))
				}
			}
		}
	}
}

// After a thousand lots of one kind a row of that cause is that kind, and a row that names no cause is of that cause; other causes stay.
func TestManyOfOneKindDominate(t *testing.T) {
	roof := patterns.Seen{Loss: []string{"flood"}, Survey: &lot.Survey{Water: &lot.Water{Height: "roof", Kind: "salt"}}}
	c := patterns.Count(many(1000, roof))
	is := func(p patterns.Pattern) bool {
		return p.Survey != nil && p.Survey.Water != nil && p.Survey.Water.Height == "roof"
	}
	flood := sum(patterns.Likely(patterns.Row{Loss: []string{"flood"}, Age: -1}, c), is)
	vague := sum(patterns.Likely(patterns.Row{Age: -1}, c), is)
	if flood < .97 || vague < .95 {
		t.Errorf("water to the roof: %.3f of floods, %.3f of all", flood, vague)
	}
	hail := patterns.Row{Loss: []string{"hail"}, Age: -1}
	if !reflect.DeepEqual(patterns.Likely(hail, c), patterns.Likely(hail, patterns.Counts{})) || c.Lots(hail) != 0 {
		t.Error("floods moved hail")
	}
}

// With the areas named, only what was seen in that zone counts: (20 p + n) / (20 P + n) with P the starter weight of the zone, which is
// the Dirichlet distribution given the zone.
func TestAreasTakeTheirZonesCounts(t *testing.T) {
	row := patterns.Row{Loss: []string{"collision"}, Areas: []string{"06"}, Age: -1}
	light := patterns.Seen{Loss: row.Loss, Damage: []lot.Damage{{Area: "06", Extent: "minor", Depth: "skin"}}}
	front := patterns.Seen{Loss: row.Loss, Damage: []lot.Damage{{Area: "12", Extent: "disabling", Depth: "structure"}}}
	is := func(p patterns.Pattern) bool { return kindOf(p) == "rear, minor, skin" }
	all := patterns.Likely(patterns.Row{Loss: row.Loss, Age: -1}, patterns.Counts{})
	zone := sum(all, func(p patterns.Pattern) bool { return strings.HasPrefix(p.Words, "rear, ") })
	want := (20*sum(all, is) + 15) / (20*zone + 15)
	got := sum(patterns.Likely(row, patterns.Count(append(many(15, light), many(50, front)...))), is)
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%.4f, want %.4f", got, want)
	}
}
