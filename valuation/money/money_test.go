package money_test

import (
	"testing"

	"github.com/shopspring/decimal"

	"walkline/valuation/money"
)

func currency(t *testing.T, code string) money.Currency {
	t.Helper()
	c, ok := money.Lookup(code)
	if !ok {
		t.Fatalf("%s is not known", code)
	}
	return c
}

// Source: ISO 4217 table A.1, minor units, as built into datasets/currency-codes ab9b0ae8.
func TestMinorUnits(t *testing.T) {
	for digits, codes := range map[int32][]string{
		2: {"USD", "EUR", "GBP", "CAD", "MXN", "MGA", "MRU"}, 0: {"JPY", "KRW", "ISK"}, 3: {"KWD", "BHD", "JOD", "IQD", "LYD", "OMR"}, 4: {"CLF"},
	} {
		for _, code := range codes {
			if c := currency(t, code); c.Digits != digits || c.Code != code {
				t.Errorf("%s has %d digits, want %d", code, c.Digits, digits)
			}
		}
	}
	for _, code := range []string{"", "usd", "XAU", "XTS", "XXX", "US", "USDD", " US", "D E"} {
		if _, ok := money.Lookup(code); ok {
			t.Errorf("%q was taken for a currency", code)
		}
	}
}

// Source: arithmetic. Half up: 2.5 -> 3, 3.5 -> 4, 0.125 -> 0.13; half even would give 2, 4, 0.12. 1.005 in binary lies
// below the half, in decimals on it.
func TestTiesGoUp(t *testing.T) {
	for _, c := range []struct {
		code, in string
		want     money.Amount
	}{
		{"JPY", "2.5", 3}, {"JPY", "3.5", 4}, {"USD", "0.125", 13}, {"USD", "1.005", 101}, {"USD", "1.0049999999999999999", 100},
		{"KWD", "0.0005", 1}, {"CLF", "0.00015", 2}, {"USD", "-0.125", -13},
	} {
		if got := currency(t, c.code).Round(decimal.RequireFromString(c.in)); got != c.want {
			t.Errorf("%s %s rounds to %d minor units, want %d", c.code, c.in, got, c.want)
		}
	}
	for x, want := range map[float64]money.Amount{0.125: 13, 2.375: 238, 0: 0, 1250.5: 125050} { // exact in binary
		if got := currency(t, "USD").FromMajor(x); got != want {
			t.Errorf("%g is %d cents, want %d", x, got, want)
		}
	}
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		code, in string
		want     money.Amount
	}{
		{"USD", "1250", 125000}, {"USD", "1250.5", 125050}, {"USD", "-3.07", -307}, {"USD", "0.10", 10}, {"USD", "1.100", 110},
		{"JPY", "1250", 1250}, {"KWD", "1.005", 1005}, {"USD", "90071992547409.92", 1 << 53},
	} {
		got, err := currency(t, c.code).Parse(c.in)
		if err != nil || got != c.want {
			t.Errorf("%s %q: %d, %v, want %d", c.code, c.in, got, err, c.want)
		}
	}
	for _, c := range []struct{ code, in string }{
		{"USD", ""}, {"USD", "ten"}, {"USD", "1,250"}, {"USD", "1e3"}, {"USD", "1E3"}, {"USD", "1.005"}, {"JPY", "1.5"}, {"USD", "$5"},
		{"USD", "90071992547409.93"}, {"USD", "99999999999999999999"}, {"USD", "NaN"}, {"USD", "0x10"}, {"USD", "1 250"},
	} {
		if got, err := currency(t, c.code).Parse(c.in); err == nil {
			t.Errorf("%s %q was read as %d", c.code, c.in, got)
		}
	}
}

func TestGroup(t *testing.T) {
	for _, c := range []struct {
		code string
		in   money.Amount
		want string
	}{
		{"USD", 0, "0"}, {"USD", 5, "0.05"}, {"USD", 99900, "999"}, {"USD", 100000, "1,000"}, {"USD", 123456789, "1,234,567.89"},
		{"USD", -125050, "-1,250.50"}, {"USD", -50, "-0.50"}, {"JPY", 1234567, "1,234,567"}, {"KWD", 1250005, "1,250.005"},
		{"USD", 10000000, "100,000"},
	} {
		if got := currency(t, c.code).Group(c.in); got != c.want {
			t.Errorf("%s %d reads %q, want %q", c.code, c.in, got, c.want)
		}
	}
	usd := currency(t, "USD")
	if usd.Show(125000) != "USD 1,250" || usd.Text(125000) != "1250.00" || usd.Whole(-1249.5) != "-1,250" || usd.Whole(.2) != "0" {
		t.Errorf("%s, %s, %s, %s", usd.Show(125000), usd.Text(125000), usd.Whole(-1249.5), usd.Whole(.2))
	}
}

func TestTextReadsBack(t *testing.T) {
	for _, code := range []string{"USD", "JPY", "KWD", "CLF"} {
		c := currency(t, code)
		for _, a := range []money.Amount{0, 1, -1, 99, 123456789, 1 << 53} {
			if got, err := c.Parse(c.Text(a)); err != nil || got != a {
				t.Errorf("%s %d -> %s -> %d, %v", code, a, c.Text(a), got, err)
			}
			if got := c.FromMajor(c.Major(a)); got != a {
				t.Errorf("%s %d -> %g -> %d", code, a, c.Major(a), got)
			}
		}
	}
}
