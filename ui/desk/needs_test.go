package desk_test

import (
	"testing"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
)

// A lot with faults names what a bid needs beside them in the same list: price, title, and the rate for a catalogue in other money.
func TestAllThatIsMissingStandsInOneList(t *testing.T) {
	u := newUser(t)
	c := sound("14")
	c.Currency, c.Resale.Guess, c.Lot.Title.Document, c.Repair.UseCatalogue = "EUR", nil, "", true
	u.Know.Jobs.Currency = "USD"
	u.start()
	u.well(desk.OpenLot(u.add(c)[0]))
	named := func() map[string]int {
		keys := map[string]int{}
		for _, m := range view.StillMissing(*u.s.Open) {
			keys[m.Key]++
		}
		return keys
	}
	keys := named()
	for _, key := range []string{"resale", "lot.title.document", "market.exchange_rates.USD"} {
		if keys[key] != 1 {
			t.Errorf("%s is named %d times: %v", key, keys[key], keys)
		}
	}
	u.well(desk.EditLot("rate", func(c *valuation.Case) { c.Market.ExchangeRates = map[string]float64{"USD": .9} }))
	if keys := named(); keys["market.exchange_rates.USD"] != 0 || keys["resale"] != 1 {
		t.Errorf("with a rate: %v", keys)
	}
}
