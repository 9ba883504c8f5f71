package view_test

import (
	"strings"
	"testing"

	"walkline/ui/view"
	"walkline/valuation/lot"
)

// The VIN is ours. Source of what is said of it: 49 CFR 565.15, whose own example of the check digit is that of package lot.
func TestTheVINSaysItsStateAsItIsTyped(t *testing.T) {
	for _, x := range []struct {
		vin   string
		year  int
		says  string
		wrong bool
	}{
		{"", 0, "", false},
		{"0HKDN", 0, "5 of 17 characters.", false},
		{"0HKDO", 0, "Character 5, O, is in no VIN", true},
		{"0HKD-N", 0, "Character 5, -, is in no VIN", true},
		{"0HKDN2SB0JH0002711", 0, "18 characters, 1 too many.", true},
		{"0HKDN2SB0JH000271", 2018, "Check digit right. Year 2018 fits.", false},
		{"0hkdn2sb0jh000271", 2017, "It says year 2018 or 1988, the facts say 2017.", true},
		{"0HKDN2SB0JH000271", 0, "Its year: 2018 or 1988.", false},
		{"0HKDN2SB1JH000271", 2018, "Check digit wrong: character 9 is 1, the others call for 0.", true},
		{"0HKDN2SB0HJ000271", 2018, "Swapped: H and J at positions 10 and 11?", true},
		{"WHKDN", 0, "Maker's region: Europe.", false},
	} {
		words, wrong := view.VIN(lot.Lot{VIN: x.vin, ModelYear: x.year})
		if !strings.Contains(words, x.says) || wrong != x.wrong || x.says == "" && words != "" {
			t.Errorf("%q says %q, %v; want %q, %v", x.vin, words, wrong, x.says, x.wrong)
		}
	}
}
