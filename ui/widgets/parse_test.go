package widgets

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"
)

func TestParseReadsWhatPeopleType(t *testing.T) {
	plain, whole := Spec{}, Spec{Kind: Whole}
	money := Spec{Kind: Money, Unit: "USD", Digits: 2}
	percent := Spec{Kind: Percent}
	miles := Spec{Kind: Whole, Unit: "mi"}
	for _, c := range []struct {
		typed string
		spec  Spec
		want  string
	}{
		{"1200", plain, "1200"}, {"1,200", plain, "1200"}, {"1 200", plain, "1200"}, {"1\u00a0200", plain, "1200"},
		{"1\u202f200", plain, "1200"}, {"1'200", plain, "1200"}, {"1’200", plain, "1200"}, {" 1200 ", plain, "1200"},
		{"1,234,567", plain, "1234567"}, {"1 234 567.89", plain, "1234567.89"},
		{"1.2k", plain, "1200"}, {"1.2K", plain, "1200"}, {"1.2 k", plain, "1200"}, {"12k", whole, "12000"},
		{"0.5m", plain, "500000"}, {"1,200k", plain, "1200000"},
		{"1.5", plain, "1.5"}, {".5", plain, "0.5"}, {"0.125", plain, "0.125"}, {"-5", plain, "-5"}, {"−5", plain, "-5"},
		{"- 5", plain, "-5"}, {"30%", plain, "0.3"}, {"30 %", plain, "0.3"}, {"12.5%", plain, "0.125"},
		{"30", percent, "0.3"}, {"30%", percent, "0.3"}, {"0.3", percent, "0.003"}, {"100", percent, "1"},
		{"$1,200", money, "1200"}, {"1,200 $", money, "1200"}, {"€1.50", money, "1.5"}, {"USD 1,200.50", money, "1200.5"},
		{"1200usd", money, "1200"}, {"1.2k", money, "1200"}, {"-$5", money, "-5"}, {"0", money, "0"},
		{"120,000 mi", miles, "120000"}, {"120k mi", miles, "120000"}, {"120k", miles, "120000"}, {"120k MI", miles, "120000"},
		{"84,000", miles, "84000"}, {"84.0", miles, "84"}, {"1.250k", plain, "1250"}, {"0.125%", plain, "0.00125"},
		{"12.125", percent, "0.12125"},
		{"1.205", Spec{Kind: Money, Unit: "KWD", Digits: 3}, "1.205"}, {"1234.567", plain, "1234.567"}, {"1.1250", plain, "1.125"},
		{"00012", plain, "12"}, {"1,200.000", whole, "1200"},
	} {
		got, err := Parse(c.typed, c.spec)
		if err != nil || !got.Known || !got.Value.Equal(decimal.RequireFromString(c.want)) {
			t.Errorf("%q as %+v: %v, %v, want %s", c.typed, c.spec, got, err, c.want)
		}
	}
}

// refusal is a text that is refused, with the reason; an empty reason means that it is taken.
type refusal struct {
	typed string
	spec  Spec
	want  string
}

func refusals() []refusal {
	plain, whole := Spec{}, Spec{Kind: Whole}
	money, yen := Spec{Kind: Money, Unit: "USD", Digits: 2}, Spec{Kind: Money, Unit: "JPY"}
	share := Spec{Kind: Percent, Least: Bound(0), Most: Bound(1)}
	return []refusal{
		{"", plain, "a number is needed"}, {"  ", money, "a number is needed"}, {"%", Spec{Optional: true}, "a number is needed"},
		{"abc", plain, `"abc" is not a number`}, {"1.2.3", plain, `"1.2.3" is not a number`}, {"1e5", plain, `"1e5" is not a number`},
		{"NaN", plain, `"NaN" is not a number`}, {"Inf", plain, `"Inf" is not a number`}, {"--5", plain, `"--5" is not a number`},
		{".", plain, `"." is not a number`}, {"5.", plain, `"5." is not a number`}, {"-", plain, `"-" is not a number`},
		{"0x10", plain, `"0x10" is not a number`}, {"१२", plain, `"१२" is not a number`}, {"1_000", plain, `"1_000" is not a number`},
		{"5 apples", plain, `"5 apples" is not a number`}, {"twelve hundred and fifty", plain, `"twelve h…" is not a number`},
		{"k", plain, `"k" is not a number`},
		{",5", plain, `",5" is not a number`}, {"1,,200", plain, `"1,,200" is not a number`}, {"1, 200", plain, `"1, 200" is not a number`},
		{"12,5", plain, "write 12.5 for decimals"}, {"1,50", money, "write 1.50 for decimals"}, {"12,5000", plain, "write 12.5000 for decimals"},
		{"1,20,000", plain, "group digits by three"}, {"1 20", plain, "group digits by three"},
		{"1200,000", plain, "group digits by three"},
		{"1.5", whole, "whole numbers only"}, {"30%", money, "a percentage does not fit"}, {"30%", whole, "a percentage does not fit"},
		{"1.200", money, "write 1,200 or 1.2"}, {"11.2050", money, "at most 2 decimals"}, {"1.5", yen, "no decimals here"},
		{"84.000", Spec{Kind: Whole, Unit: "mi"}, "write 84,000 or 84"}, {"84.000 mi", Spec{Kind: Whole, Unit: "mi"}, "write 84,000 or 84"},
		{"1.250", plain, "write 1,250 or 1.25"}, {"-1.005", plain, "write 1,005 or 1.0050"}, {"1.500", yen, "write 1,500 or 1.5"},
		{"-1", share, "at least 0 %"}, {"101", share, "at most 100 %"},
		{"-1", Spec{Kind: Money, Digits: 2, Least: Bound(0)}, "at least 0"},
		{"99999999999999999999999999", plain, "too many digits"}, {"9999999m", plain, "too large"},
		{"99999999999m", money, "too large"}, {"9007199254740993", yen, "too large"},
	}
}

func TestParseRefusesWithAReason(t *testing.T) {
	for _, c := range refusals() {
		_, err := Parse(c.typed, c.spec)
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%q: refused: %v", c.typed, err)
		case c.want != "" && (err == nil || err.Error() != c.want):
			t.Errorf("%q: %v, want %q", c.typed, err, c.want)
		}
	}
}

func TestParseKeepsUnknownApartFromZero(t *testing.T) {
	empty, err := Parse(" ", Spec{Optional: true})
	if err != nil || empty.Known {
		t.Errorf("empty: %v, %v", empty, err)
	}
	zero, err := Parse("0", Spec{Optional: true})
	if err != nil || !zero.Known || zero.Equal(empty) {
		t.Errorf("zero: %v, %v", zero, err)
	}
}

func TestShowIsReadBackAsItself(t *testing.T) {
	specs := map[string]Spec{"plain": {}, "whole": {Kind: Whole}, "money": {Kind: Money, Digits: 2}, "percent": {Kind: Percent}}
	for name, s := range specs {
		for _, typed := range []string{"0", "5", "999", "1000", "1,234,567", "-45,000"} {
			first, err := Parse(typed, s)
			if err != nil {
				t.Fatal(err)
			}
			again, err := Parse(s.Show(first), s)
			if err != nil || !again.Equal(first) {
				t.Errorf("%s %q: shown as %q, read as %v, %v", name, typed, s.Show(first), again, err)
			}
		}
	}
}

func TestKnownRefusesWhatIsNoNumber(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if Known(x).Known {
			t.Errorf("%v is known", x)
		}
	}
}

func TestShow(t *testing.T) {
	for _, c := range []struct {
		spec Spec
		n    Number
		want string
	}{
		{Spec{}, Known(1.125), "1.1250"}, {Spec{}, Known(-84.125), "-84.1250"}, {Spec{}, Known(0.125), "0.125"},
		{Spec{}, Known(1234.125), "1,234.125"},
		{Spec{}, Number{}, ""}, {Spec{}, Known(1234.5), "1,234.5"}, {Spec{Digits: 1}, Known(2.25), "2.3"},
		{Spec{Kind: Money, Digits: 2}, Known(1200), "1,200"}, {Spec{Kind: Money, Digits: 2}, Known(1200.5), "1,200.50"},
		{Spec{Kind: Percent}, Known(0.3), "30 %"}, {Spec{Kind: Percent}, Known(0.125), "12.5 %"}, {Spec{}, Known(-1000), "-1,000"},
	} {
		if got := c.spec.Show(c.n); got != c.want {
			t.Errorf("%+v of %v: %q, want %q", c.spec, c.n, got, c.want)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"1.2k", "1,200", "30%", "1 200", "-5", "12,5", "USD 5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		s := Spec{Kind: Money, Unit: "USD", Digits: 2}
		n, err := Parse(typed, s)
		if err != nil {
			return
		}
		again, err := Parse(s.Show(n), s)
		if err != nil || !again.Equal(n) {
			t.Errorf("%q: shown as %q, read as %v, %v", typed, s.Show(n), again, err)
		}
	})
}
