package valuation_test

import (
	"os"
	"testing"

	"walkline/valuation/resale"
)

// prior reads the market's prior that the program ships.
func prior(t testing.TB) resale.Prior {
	t.Helper()
	data, err := os.ReadFile("../assets/priors/resale.json")
	if err != nil {
		t.Fatal(err)
	}
	p, err := resale.ParsePrior(data)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
