package resale_test

import (
	"math"
	"os"
	"testing"

	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// A price with a digit short is named in the warnings, and is not taken for what this vehicle may bring.
func TestASlipOfThePenIsNoOutcome(t *testing.T) {
	data, err := os.ReadFile("../../assets/priors/resale.json")
	if err != nil {
		t.Fatal(err)
	}
	p, err := resale.ParsePrior(data)
	if err != nil {
		t.Fatal(err)
	}
	var rows []resale.Row
	for i := range 30 {
		miles := 40000 + 2000*float64(i)
		price := 18000 * math.Exp(-0.05*miles/10000+0.08*math.Sin(float64(7*i)))
		rows = append(rows, resale.Row{Price: money.Amount(100 * price), Kind: "sold", ModelYear: 2019, Mileage: &miles, Title: "clear"})
	}
	rows[10].Price /= 10
	at := 70000.0
	m := resale.Fit(rows, resale.Subject{Brand: "clear", ModelYear: 2019, Mileage: &at, Unit: "mi"},
		resale.Beliefs{AskedToSold: prob.Certain(1), Today: "2026-11-20", Currency: money.Currency{Code: "USD", Digits: 2}}, p)
	if chance := m.Distribution().CDF(0.5 * m.Price().P50); chance > 0.003 {
		t.Errorf("half the likely price has a chance of %.4f", chance)
	}
	if len(m.Warnings()) == 0 {
		t.Error("the slip is not named")
	}
}
