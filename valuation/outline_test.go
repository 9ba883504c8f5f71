package valuation_test

import (
	"reflect"
	"slices"
	"testing"

	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// An outline says of work, hidden damage, days and looks what the valuation says once a price is there, to the bit but for what a look
// is worth; of price, profit and bid it says nothing.
func TestAnOutlineIsTheValuationWithoutItsPrice(t *testing.T) {
	k, c := shipped(t), valuation.Defaults()
	c.Currency, c.ValuedOn, c.Run.Scenarios = "USD", "2026-11-20", 512
	c.Lot.ModelYear, c.Lot.Make, c.Lot.Title.Document = 2019, "Kettrick", "salvage"
	c.Damage = []lot.Damage{{Area: "12", Extent: "disabling", Depth: "structure"}, {Area: "01", Extent: "minor", Depth: "skin"}}
	if faults := c.Check(); !valuation.Outlined(faults) || len(faults) == 0 {
		t.Fatal("a case without a price can't be outlined: ", faults)
	}
	a, err := valuation.NewMemory().Outline(t.Context(), c, k)
	if err != nil {
		t.Fatal(err)
	}
	c.Resale.Guess = &prob.Three{Low: 11000, Likely: 13000, High: 15000}
	least := money.Amount(100000)
	c.Buying.BidSteps, c.Rules.MinProfit = []invoice.Step{{From: 0, Step: 25}}, &least
	want, err := valuation.Value(c, k)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(a.Repair, want.Repair) || !reflect.DeepEqual(a.Hidden, want.Hidden) || a.Days != want.Days || a.Hours != want.Hours {
		t.Error("the outline's work or hidden damage is not the valuation's")
	}
	if len(a.Repair.Lines) < 10 || len(a.Hidden.Risks) < 5 {
		t.Errorf("%d lines and %d risks of a heavy front", len(a.Repair.Lines), len(a.Hidden.Risks))
	}
	ids := func(a valuation.Answer) (out []string) {
		for _, i := range a.Checklist {
			out = append(out, i.ID)
		}
		slices.Sort(out) // the order is that of the worth
		return out
	}
	if !reflect.DeepEqual(ids(a), ids(want)) {
		t.Errorf("looks %q, want %q", ids(a), ids(want))
	}
	if a.WalkAway != nil || a.Decision != "do_not_bid" || a.Resale.P50 != 0 || len(a.Needs) == 0 {
		t.Errorf("an outline bids: %v, %s, price %v, needs %v", a.WalkAway, a.Decision, a.Resale.P50, a.Needs)
	}
	c.Resale.Guess, c.ValuedOn = nil, ""
	if valuation.Outlined(c.Check()) {
		t.Error("a case without a day is outlined")
	}
}
