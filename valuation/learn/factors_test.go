package learn

import (
	"encoding/json"
	"reflect"
	"testing"

	"walkline/valuation/money"
)

func TestClonedFactorsShareNothing(t *testing.T) {
	f := Factors{Hours: map[string]Ratio{"body": {Factor: 1.2}}, Resale: &Bias{Factor: 1}}
	c := f.Clone()
	c.Hours["body"], c.Resale.Factor = Ratio{Factor: 2}, 2
	if f.Hours["body"].Factor != 1.2 || f.Resale.Factor != 1 {
		t.Errorf("the clone changed its model: %+v", f)
	}
	if (Factors{HalfLife: 90}).Empty() != true || f.Empty() {
		t.Error("a half-life alone changes no forecast; a ratio does")
	}
}

func TestABuildSurvivesItsJSON(t *testing.T) {
	paid, nothing, days := money.Amount(123456), money.Amount(0), 12.5
	b := Build{ID: 7, Ending: Sold, Bought: "2026-01-02", Hammer: &paid,
		Foretold: &Prediction{Risks: []Risk{{ID: "r", Base: 0.2, Chance: 0.4}}},
		Came:     Came{Freight: &nothing, Risks: map[string]Seen{"r": Found}, Days: Days{Sell: &days}, Sale: &Sale{Price: 1}}}
	text, err := json.Marshal(b)
	if err != nil {
		t.Fatal(err)
	}
	var back Build
	if err := json.Unmarshal(text, &back); err != nil || !reflect.DeepEqual(b, back) {
		t.Errorf("back %+v, %v", back, err)
	}
	if back.Came.Storage != nil || *back.Came.Freight != 0 {
		t.Error("unknown and zero are told apart")
	}
}

func TestWhatIsLeftOfALedgerIsProfit(t *testing.T) {
	l := Ledger{Resale: 1000, Selling: 10, Repair: 100, Hidden: 50, Labour: 80, Freight: 20, Storage: 5, Holding: 6, Capital: 7, Allowance: 8,
		Fees: 40}
	if got := l.Profit(300); got != 374 {
		t.Errorf("profit %d, want 374", got)
	}
}
