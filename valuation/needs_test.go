package valuation_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// keysOf are the keys of what is missing.
func keysOf(needs []valuation.Need) []string {
	var keys []string
	for _, n := range needs {
		keys = append(keys, n.Key)
	}
	return keys
}

// An empty lot gets no bid and no odds: what it needs is named, one after the other, and with all of it there is a bid, which is a first
// guess until somebody looks.
func TestAnEmptyLotGetsNoBid(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	full := c.Clone()
	c.Lot, c.Damage, c.Findings, c.Repair.Lines, c.Hidden.Risks = valuation.Defaults().Lot, nil, nil, nil, nil
	for _, step := range []struct {
		missing []string
		enter   func()
	}{
		{[]string{"lot", "lot.title.document", "damage"}, func() { c.Lot.Make = full.Lot.Make }},
		{[]string{"lot.title.document", "damage"}, func() { c.Lot.Title.Document = lot.NotYetKnown }},
		{nil, nil}, // a first guess of what the damage is
	} {
		a := value(t, c, k)
		keys := keysOf(a.Needs)
		if len(step.missing) > 0 {
			keys = append(keys, "damage")
		}
		if !slices.Equal(keys, step.missing) || a.FirstGuess == nil {
			t.Errorf("needs %v, want %v; first guess %v", keys, step.missing, a.FirstGuess)
		}
		if step.enter == nil {
			continue
		}
		if a.BindingRule != valuation.Unready || len(a.Reasons) != len(step.missing)-1 || !math.IsNaN(a.Profit.LossChance) || len(a.Ladder) > 0 {
			t.Errorf("%v: bound by %q, reasons %q, chance of a loss %g", step.missing, a.BindingRule, a.Reasons, a.Profit.LossChance)
		}
		for _, rung := range []int{len(a.Ceilings), len(a.NoCeiling), len(a.Plans), len(a.Waterfall), int(a.Acquisition.Bid),
			len(a.Acquisition.Lines)} {
			if rung != 0 {
				t.Errorf("%v: a bid is told in ceilings %v, plans %v or the invoice %v", step.missing, a.Ceilings, a.Plans, a.Acquisition)
				break
			}
		}
		if _, o, err := valuation.NewMemory().Weigh(t.Context(), c, k); err != nil || o.Known() {
			t.Errorf("%v: odds are known, %v", step.missing, err)
		}
		var written map[string]any
		if err := json.Unmarshal(casefile.WriteAnswer(a), &written); err != nil || written["profit"].(map[string]any)["loss_chance"] != nil {
			t.Errorf("%v: the written chance of a loss is %v, %v", step.missing, written["profit"], err)
		}
		if said, err := json.Marshal(written["needs"]); err != nil || strings.Count(string(said), `"key"`) != len(a.Needs) {
			t.Errorf("of %v is written %s, %v", a.Needs, said, err)
		}
		step.enter()
	}
	c.Findings = map[string]string{valuation.NothingSeen: "no"}
	if a := value(t, c, k); len(a.Needs) > 0 || a.WalkAway == nil || a.FirstGuess != nil {
		t.Errorf("looked at: needs %v, walk-away bid %v", a.Needs, a.WalkAway)
	}
	c.Resale = valuation.Defaults().Resale
	if got := keysOf(c.Needs()); !slices.Equal(got, []string{"resale"}) {
		t.Errorf("without a price: %v", got)
	}
}

// A lot that is figured by hand, without the catalogues, keeps its bid: what is missing is said.
func TestALotFiguredByHandKeepsItsBid(t *testing.T) {
	c := small(1)
	c.Lot = valuation.Defaults().Lot
	c.Resale.Guess = &prob.Three{Low: 12000, Likely: 14000, High: 16000}
	a := value(t, c, valuation.Knowledge{})
	said := 0
	for _, w := range a.Warnings {
		if strings.HasPrefix(w, "With the catalogues on") {
			said++
		}
	}
	if a.WalkAway == nil || said != 2 {
		t.Errorf("walk-away bid %v, %q", a.WalkAway, a.Warnings)
	}
}
