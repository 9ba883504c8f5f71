package widgets

import (
	"testing"

	"walkline/valuation/prob"
)

// TestACommaStandsBeforeDecimals reads and writes every kind of number with the marks of a shop that writes 1.200,50.
// Source of the notation: CLDR, decimal and group of the locale "de".
func TestACommaStandsBeforeDecimals(t *testing.T) {
	DecimalComma(true)
	defer DecimalComma(false)
	money, miles := Spec{Kind: Money, Unit: "EUR", Digits: 2}, Spec{Kind: Whole, Unit: "km"}
	for _, c := range []struct {
		typed string
		spec  Spec
		want  string
	}{
		{"1.200,50", money, "1.200,50"}, {"1200,5", money, "1.200,50"}, {"EUR 1.200", money, "1.200"}, {"84.000 km", miles, "84.000"},
		{"1,5", Spec{}, "1,5"}, {"2,5k", miles, "2.500"}, {"12,5 %", Spec{Kind: Percent}, "12,5 %"}, {"1 200", miles, "1.200"},
	} {
		n, err := Parse(c.typed, c.spec)
		if err != nil || c.spec.Show(n) != c.want {
			t.Errorf("%q: %q, %v, want %q", c.typed, c.spec.Show(n), err, c.want)
			continue
		}
		if again, err := Parse(c.spec.Show(n), c.spec); err != nil || !again.Equal(n) {
			t.Errorf("%q does not read back: %v, %v", c.spec.Show(n), again, err)
		}
	}
	for _, c := range []struct {
		typed string
		spec  Spec
		want  string
	}{
		{"84,000", miles, "write 84.000 or 84"}, {"12.5", money, "write 12,5 for decimals"}, {"1,5", miles, "whole numbers only"},
		{"1,2,3", money, `"1,2,3" is not a number`}, {"-1", Spec{Least: Bound(1000)}, "at least 1.000"},
	} {
		if _, err := Parse(c.typed, c.spec); err == nil || err.Error() != c.want {
			t.Errorf("%q: %v, want %q", c.typed, err, c.want)
		}
	}
}

// TestFieldsTakeTheNewMark refills the fields that are there once they are shown the same value again.
func TestFieldsTakeTheNewMark(t *testing.T) {
	n := NewNumberEntry(Spec{Kind: Money, Unit: "EUR", Digits: 2}, nil)
	three := NewThreeEntry(Spec{}, nil)
	put := func() { n.SetValue(Known(1234.5)); three.SetValue(prob.Three{Low: 1, Likely: 1.5, High: 1000}) }
	put()
	DecimalComma(true)
	defer DecimalComma(false)
	put()
	if n.field.Text != "1.234,50" || three.fields[1].Text != "1,5" || three.fields[2].Text != "1.000" {
		t.Errorf("%q, %q, %q", n.field.Text, three.fields[1].Text, three.fields[2].Text)
	}
}
