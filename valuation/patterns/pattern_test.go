package patterns_test

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/patterns"
)

func sum(all []patterns.Pattern, is func(patterns.Pattern) bool) float64 {
	s := 0.0
	for _, p := range all {
		if is(p) {
			s += p.Chance
		}
	}
	return s
}

// Airbags deploy more often in frontal crashes than in others, by about as much as NASS-CDS 1997-2002 counts (testdata/reference): the
// patterns lie between what the counts say of all frontal crashes and of those that disable.
func TestAirbagsAsCounted(t *testing.T) {
	file, err := os.Open("../../testdata/reference/airbag_by_frontal.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	counted := map[string]float64{}
	at := slices.Index(rows[0], "rate")
	for _, r := range rows[1:] {
		counted[r[0]], _ = strconv.ParseFloat(r[at], 64)
	}
	for areas, key := range map[string]string{"12": "1", "06": "0"} {
		all := patterns.Likely(patterns.Row{Loss: []string{"collision"}, Areas: []string{areas}, Age: -1}, patterns.Counts{})
		got := sum(all, func(p patterns.Pattern) bool { return len(p.Airbags) > 0 })
		if math.Abs(got-counted[key]) > .1 {
			t.Errorf("area %s: airbags in %.2f, counted %.2f", areas, got, counted[key])
		}
	}
}

// The patterns of a row that says less are those of the rows that say more, in their shares: total probability.
func TestAVagueRowIsTheMixtureOfExactOnes(t *testing.T) {
	vague := patterns.Row{Loss: []string{"collision"}, Age: 6, Ratio: .4}
	mixed := map[string]float64{}
	for _, p := range patterns.Likely(vague, patterns.Counts{}) {
		mixed[p.Words+p.Condition+strconv.FormatBool(p.Keys)] += p.Chance
	}
	for _, state := range lot.Conditions[:4] {
		exact := vague
		exact.Condition = state
		share := sum(patterns.Likely(vague, patterns.Counts{}), func(p patterns.Pattern) bool { return p.Condition == state })
		for _, p := range patterns.Likely(exact, patterns.Counts{}) {
			mixed[p.Words+p.Condition+strconv.FormatBool(p.Keys)] -= share * p.Chance
		}
	}
	for of, left := range mixed {
		if math.Abs(left) > 1e-12 {
			t.Errorf("%s: %g is left over", of, left)
		}
	}
}

// Every row of the vocabularies has patterns that sum to 1, in words of the vocabularies; none of them is "no damage".
func TestEveryRowHasPatterns(t *testing.T) {
	keys := false
	for _, loss := range append(slices.Clone(lot.Losses), "") {
		for _, areas := range [][]string{nil, {"03"}, {"water"}, {"top", "interior"}} {
			r := patterns.Row{Areas: areas, Condition: "dead", Keys: &keys, Airbags: []string{"side"}, Age: 3, Ratio: .9}
			if loss != "" {
				r.Loss = []string{loss, "hail"}
			}
			all := patterns.Likely(r, patterns.Counts{})
			if s := sum(all, func(patterns.Pattern) bool { return true }); math.Abs(s-1) > 1e-9 {
				t.Errorf("%s %v: chances sum to %g", loss, areas, s)
			}
			for _, p := range all {
				if len(p.Damage) == 0 && !p.Survey.Hurt() || len(p.Loss) == 0 {
					t.Errorf("%s %v: %q has no damage", loss, areas, p.Words)
				}
			}
		}
	}
}

// Units are systematic: each pattern has as many as its chance asks for, one more or one fewer at most.
func TestUnitsFollowTheChances(t *testing.T) {
	all := patterns.Likely(patterns.Row{Age: 8}, patterns.Counts{})
	units := patterns.Units(all, 64)
	count := map[int]float64{}
	for _, u := range units {
		count[u]++
	}
	for i, p := range all {
		if math.Abs(count[i]-64*p.Chance) > 1+1e-9 {
			t.Errorf("%q: %g units of %g", p.Words, count[i], 64*p.Chance)
		}
	}
	if !slices.IsSorted(units) {
		t.Error("units fall")
	}
}

// A repair estimate that is a large share of the value before speaks for heavy damage, a lot that drives against it.
func TestWhatTheListSaysMovesThePatterns(t *testing.T) {
	cost := func(r patterns.Row) float64 {
		s := 0.0
		for _, p := range patterns.Likely(r, patterns.Counts{}) {
			s += p.Chance * p.Cost
		}
		return s
	}
	r := patterns.Row{Loss: []string{"collision"}, Age: -1}
	plain := cost(r)
	low, high, drives, dead := r, r, r, r
	low.Ratio, high.Ratio, drives.Condition, dead.Condition = .15, .9, "drives", "dead"
	if !(cost(low) < plain && plain < cost(high) && cost(drives) < plain && plain < cost(dead)) {
		t.Errorf("plain %.2f, low estimate %.2f, high %.2f, drives %.2f, dead %.2f", plain, cost(low), cost(high), cost(drives), cost(dead))
	}
}
