package valuation_test

import (
	"testing"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hammer"
	"walkline/valuation/prob"
)

// Wherever a bid stands its chance to win says what it goes by: the buyer's guess before all, past results by their number, starter values.
func TestTheChanceToWinSaysWhatItGoesBy(t *testing.T) {
	least := 1.0
	c := uncertain(1, bid.Rules{MinProfit: usd(1200), MaxLossChance: &least})
	k := valuation.Knowledge{}
	check := func(want string) {
		t.Helper()
		a, err := valuation.Value(c, k)
		if err != nil {
			t.Fatal(err)
		}
		if a.WinFrom != want || (a.WinChance != nil) != (want != "") || (a.ExpectedGain != nil) != (want != "") {
			t.Errorf("goes by %q, want %q; chance %v", a.WinFrom, want, a.WinChance)
		}
	}
	c.Market.HammerGuess = nil
	check("")
	model := hammer.Starter()
	k.Hammer = &model
	check("starter values")
	result := hammer.Result{Kind: hammer.Kind{Loss: []string{"collision"}}, Finished: 12000, Work: 3000, Price: 5000}
	model, _ = model.Learn([]hammer.Result{result, result, result})
	check("3 lots in your file")
	c.Market.HammerGuess = &prob.Three{Low: 2000, Likely: 3000, High: 5000}
	check("your guess of the hammer price")
}
