package main

import (
	"runtime"
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

// TestEachKindGoesByItsOwnLocale reads environments as POSIX orders them: LC_ALL, the variable of the kind, LANG.
func TestEachKindGoesByItsOwnLocale(t *testing.T) {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		t.Skip("the system is asked there, not the environment")
	}
	for _, c := range []struct {
		all, numeric, monetary, lang string
		want                         region
	}{
		{"", "", "", "de_DE.UTF-8", region{"EUR", "km", ","}}, {"", "de_DE.UTF-8", "", "en_US.UTF-8", region{"USD", "mi", ","}},
		{"", "", "en_GB@euro", "de_AT.UTF-8", region{"GBP", "km", ","}}, {"C", "de_DE", "de_DE", "de_DE", region{}},
		{"", "", "", "", region{}}, {"", "", "", "@.", region{}},
	} {
		for name, value := range map[string]string{"LC_ALL": c.all, "LC_NUMERIC": c.numeric, "LC_MONETARY": c.monetary, "LC_MEASUREMENT": "",
			"LANG": c.lang} {
			t.Setenv(name, value)
		}
		if got := ownRegion(); got != c.want {
			t.Errorf("%+v: %+v", c, got)
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
