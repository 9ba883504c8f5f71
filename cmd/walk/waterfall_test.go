package main

import (
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/money"
)

// A bar that adds to the price is a loss, and called one; one that takes from it is the profit.
func TestALossIsNotCalledAProfit(t *testing.T) {
	usd, _ := money.Lookup("USD")
	for name, amount := range map[string]money.Amount{"Expected loss": 189200, "Expected profit": -189200} {
		p := page{currency: "USD", cur: usd}
		p.waterfall(valuation.Answer{Waterfall: []valuation.Bar{{Name: "Expected profit", Amount: amount}}})
		if !strings.Contains(p.String(), name+" ") {
			t.Errorf("%d: %s", amount, p.String())
		}
	}
}
