package valuation_test

import (
	"math"
	"slices"
	"testing"

	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// In another currency the catalogue's money is converted at the case's rate, or the lot is refused by name. Every figure of the catalogue
// is money here, so at a rate of 2 the work costs twice as much, own hours apart.
func TestTheCataloguesMoneyIsConverted(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	c.Currency, c.Labour.Rates = "EUR", nil
	a := value(t, c, k)
	if a.WalkAway != nil || !slices.Equal(keysOf(a.Needs), []string{"market.exchange_rates.USD"}) || a.Repair.Mean != 0 {
		t.Errorf("without a rate: walk-away bid %v, needs %v, repair %.0f", a.WalkAway, a.Needs, a.Repair.Mean)
	}
	at := func(rate float64) valuation.Answer {
		c.Market.ExchangeRates = map[string]float64{"USD": rate}
		return value(t, c, k)
	}
	c.Time.HoldingPerDay = 0 // a day's cost orders the sources, and is the case's money
	one, two := at(1), at(2)
	if one.Repair.Mean == 0 || math.Abs(two.Repair.Mean-2*one.Repair.Mean) > 1e-6*one.Repair.Mean ||
		math.Abs(two.Hidden.Mean-2*one.Hidden.Mean) > 1e-6*one.Hidden.Mean {
		t.Errorf("repair %.2f and %.2f, hidden %.2f and %.2f", one.Repair.Mean, two.Repair.Mean, one.Hidden.Mean, two.Hidden.Mean)
	}
	c.Currency, c.Market.ExchangeRates = "USD", nil
	if plain := value(t, c, k); plain.Repair.Mean != one.Repair.Mean {
		t.Errorf("repair %.2f in USD, %.2f at a rate of 1", plain.Repair.Mean, one.Repair.Mean)
	}
	c.Market.ExchangeRates = map[string]float64{"ZZZ": 1, "USD": -1}
	if faults := c.Check(); len(faults) != 2 {
		t.Errorf("a currency that is none and a rate below nothing: %v", faults)
	}
}

// A shop's own entry is in the shop's money, beside a catalogue in another.
func TestOwnEntriesKeepTheirCurrency(t *testing.T) {
	k := smallKnowledge()
	k.Jobs.Currency, k.Risks.Currency = "USD", "USD"
	k = k.With(valuation.Own{Currency: "EUR", Jobs: []repair.Job{ownHood(140)}})
	c := small(1)
	c.Currency, c.Repair.UseCatalogue, c.Repair.Lines = "EUR", true, nil
	c.Damage = []lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}}
	c.Market.ExchangeRates = map[string]float64{"USD": .5}
	if a := value(t, c, k); a.Repair.Mean != 140 {
		t.Errorf("the shop's own hood of 140 costs %.2f", a.Repair.Mean)
	}
}
