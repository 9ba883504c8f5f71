package casefile_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
)

// The answers to the demo's cases, and one that refuses, come back as they were written, byte by byte.
func TestAnswersRoundTrip(t *testing.T) {
	k, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, name := range assets.DemoCases() {
		data, err := assets.Demo(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, document := range []string{string(data), strings.Replace(string(data), `"document": "salvage"`, `"document": "junk"`, 1)} {
			c, faults := casefile.Read([]byte(document))
			if len(faults) > 0 {
				t.Fatal(name, faults)
			}
			c.Resale.Comparables, c.Run.Scenarios = "", 512
			a, err := valuation.Value(c, k)
			if err != nil {
				t.Fatal(err)
			}
			written := casefile.WriteAnswer(a)
			back, faults := casefile.ReadAnswer(written)
			if len(faults) > 0 || !bytes.Equal(casefile.WriteAnswer(back), written) {
				t.Errorf("%s: the answer does not come back: %v", name, faults)
			}
			if len(back.Waterfall) != len(a.Waterfall) || back.Acquisition.Total != a.Acquisition.Total ||
				(back.WalkAway == nil) != (a.WalkAway == nil) {
				t.Errorf("%s: the answer came back as another", name)
			}
			for i, c := range a.Ceilings {
				if c.Any != back.Ceilings[i].Any {
					t.Errorf("%s: %s holds at every bid: %v, and came back as %v", name, c.Rule, c.Any, back.Ceilings[i].Any)
				}
			}
		}
	}
}

func TestAnswersAreReadStrictly(t *testing.T) {
	const right = `{"format":"walkline-answer/1","currency":"USD","decision":"bid","walk_away":"6300.00",` +
		`"ceilings":{"min_profit":"6900.00","max_cash":null},"days":{"mean":null}}`
	a, faults := casefile.ReadAnswer([]byte(right))
	if len(faults) > 0 || *a.WalkAway != 630000 || *a.Ceilings[0].Bid != 690000 || a.Ceilings[1].Bid != nil || !math.IsNaN(a.Days.Mean) {
		t.Errorf("%+v, %v", a, faults)
	}
	for wrong, key := range map[string]string{
		strings.Replace(right, "walk_away", "walk_awey", 1):       "walk_awey",
		strings.Replace(right, "answer/1", "answer/9", 1):         "format",
		strings.Replace(right, "6300.00", "6300.005", 1):          "walk_away",
		strings.Replace(right, "max_cash", "max_gold", 1):         "ceilings.max_gold",
		strings.Replace(right, `"USD"`, `"usd"`, 1):               "currency",
		strings.Replace(right, `{"mean":null}`, `{"mean":{}}`, 1): "days.mean",
		"[]": "file",
	} {
		if _, faults := casefile.ReadAnswer([]byte(wrong)); len(faults) != 1 || faults[0].Key != key {
			t.Errorf("%s: faults %v, want one of %s", wrong, faults, key)
		}
	}
}
