package main

import (
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
)

// TestANewShopBeginsAsItsPlaceCounts reads locales. Sources: ISO 4217 list one (currencies by country), CLDR (decimal marks), Directive
// 80/181/EEC with its derogation for road miles in the United Kingdom.
func TestANewShopBeginsAsItsPlaceCounts(t *testing.T) {
	for _, c := range []struct {
		locale string
		want   region
	}{
		{"en-US", region{"USD", "mi", ""}}, {"de-DE", region{"EUR", "km", ","}}, {"en-GB", region{"GBP", "mi", ""}},
		{"fr-CA", region{"CAD", "km", ","}}, {"en_CA", region{"CAD", "km", ""}}, {"en-AU", region{"AUD", "km", ""}},
		{"pl-PL", region{"", "km", ","}}, {"ja-JP", region{"", "km", ""}}, {"es-PR", region{"USD", "mi", ""}},
		{"de", region{"", "", ","}}, {"C", region{}}, {"", region{}}, {"no such thing", region{}},
	} {
		if got := regionOf(c.locale); got != c.want {
			t.Errorf("%q: %+v, want %+v", c.locale, got, c.want)
		}
	}
}

// TestOnlyWhatThePlaceSaysIsTaken leaves what is not known as it is.
func TestOnlyWhatThePlaceSaysIsTaken(t *testing.T) {
	d := &desk.Desk{Starter: valuation.Defaults()}
	d.Starter.Currency = "USD"
	regionOf("pl-PL").settle(d)
	if d.Starter.Currency != "USD" || d.Starter.Lot.OdometerUnit != "km" || d.DecimalMark != "," {
		t.Errorf("%s, %s, %q", d.Starter.Currency, d.Starter.Lot.OdometerUnit, d.DecimalMark)
	}
	regionOf("en-NZ").settle(d)
	if d.Starter.Currency != "NZD" || d.DecimalMark != "" {
		t.Errorf("%s, %q", d.Starter.Currency, d.DecimalMark)
	}
}
