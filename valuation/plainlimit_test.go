package valuation_test

import (
	"regexp"
	"testing"

	"walkline/valuation"
	"walkline/valuation/bid"
)

// A limit and what the next bid comes to never read as one figure: "at most 15.0 %; at 560 it would be 15.0 %".
func TestTheNextBidDoesNotReadAsTheLimit(t *testing.T) {
	same := regexp.MustCompile(`at most ([0-9.]+ %), sets this bid; at [0-9,.]+ it would be ([0-9.]+ %)\.`)
	seen := 0
	for _, most := range []float64{.05, .08, .1, .12, .15, .2, .25, .3, .35, .4} {
		c := small(1)
		c.Rules = bid.Rules{MaxLossChance: &most}
		a, err := valuation.Value(c, valuation.Knowledge{})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range a.Reasons {
			seen++
			if m := same.FindStringSubmatch(r); m != nil && m[1] == m[2] {
				t.Errorf("%q", r)
			}
		}
	}
	if seen == 0 {
		t.Error("no reason was given")
	}
}
