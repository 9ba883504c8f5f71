package assets_test

import (
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/money"
)

// TestABeginnersLimitsLeaveABidOnMostWrecksThatPay holds the house rules that a new shop begins with against the invented wrecks: of those
// that leave the least profit of those rules at some bid, three in four at least get a bid, and what is refused is heavy: a pillar, a
// floor, a traction battery. That a beginner's limits are to do so is ours, no source.
func TestABeginnersLimitsLeaveABidOnMostWrecksThatPay(t *testing.T) {
	data, err := assets.Demo(assets.DemoCases()[0])
	if err != nil {
		t.Fatal(err)
	}
	demo, faults := casefile.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	pays, gets, memory := 0, 0, valuation.NewMemory()
	for _, name := range wreckNames(t) {
		c, k := wreck(t, name), starter(t)
		c.Run.Scenarios = 2048
		walk := func(rules bid.Rules) *money.Amount {
			c.Rules = rules
			a, err := memory.Value(c, k)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			return a.WalkAway
		}
		if walk(bid.Rules{MinProfit: demo.Rules.MinProfit}) == nil {
			continue
		}
		pays++
		if walk(demo.Rules) != nil {
			gets++
		} else {
			t.Logf("%s pays and gets no bid", name)
		}
	}
	t.Logf("%d wrecks leave the least profit, %d of them get a bid", pays, gets)
	if pays < 18 || 4*gets < 3*pays {
		t.Errorf("of %d wrecks that pay %d get a bid", pays, gets)
	}
}
