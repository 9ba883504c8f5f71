package lot_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/valuation/lot"
)

const vinLetters = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ"

// weights of 49 CFR 565.15(c)(2), table IV, written apart from the program.
var weights = [17]int{8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2}

// classes of characters that share a value, 49 CFR 565.15(c)(1), table III, written apart from the program.
var classes = []string{"0", "1AJ", "2BKS", "3CLT", "4DMU", "5ENV", "6FW", "7GPX", "8HY", "9RZ"}

func valueOf(c byte) int {
	return slices.IndexFunc(classes, func(s string) bool { return strings.IndexByte(s, c) >= 0 })
}

// Every substitution of one character in the published examples: the digit catches it exactly when the two characters
// have different values, and any change of the digit itself. No other class goes unseen.
func TestEverySubstitution(t *testing.T) {
	caught, unseen := 0, 0
	for _, r := range records(t, "vin_examples.csv") {
		for i := range 17 {
			for _, c := range []byte(vinLetters) {
				if c == r[0][i] {
					continue
				}
				other := r[0][:i] + string(c) + r[0][i+1:]
				right := lot.ReadVIN(other).Digit
				if want := i != 8 && valueOf(c) == valueOf(r[0][i]); right != want {
					t.Errorf("%s for %s: digit right %v", other, r[0], right)
				}
				if right {
					unseen++
				} else {
					caught++
				}
			}
		}
	}
	if caught < 3000 || unseen < 100 {
		t.Errorf("%d caught, %d unseen: the examples no longer show both", caught, unseen)
	}
}

// Every swap of two characters, near or far: outside position 9 it stays unseen exactly when value difference times
// weight difference is a multiple of 11, which leaves equal values and the places that weigh the same.
func TestEveryTransposition(t *testing.T) {
	near, far := 0, 0
	for _, r := range records(t, "vin_examples.csv") {
		vin := r[0]
		for i := range 17 {
			for j := i + 1; j < 17; j++ {
				if vin[i] == vin[j] || i == 8 || j == 8 {
					continue
				}
				b := []byte(vin)
				b[i], b[j] = b[j], b[i]
				right := lot.ReadVIN(string(b)).Digit
				want := valueOf(vin[i]) == valueOf(vin[j]) || weights[i] == weights[j]
				if right != want {
					t.Errorf("%s for %s: digit right %v", b, vin, right)
				}
				switch {
				case right && j == i+1:
					near++
					if !slices.Contains(lot.Unseen(vin), i+1) {
						t.Errorf("%s: the swap at %d is not named", vin, i+1)
					}
				case right:
					far++
				case j == i+1 && !slices.Contains(lot.Swaps(string(b)), i+1):
					t.Errorf("%s: the swap at %d would put it right and is not named", b, i+1)
				}
			}
		}
		for _, at := range lot.Unseen(vin) {
			if valueOf(vin[at-1]) != valueOf(vin[at]) {
				t.Errorf("%s: the swap at %d would be caught", vin, at)
			}
		}
	}
	if near+far == 0 {
		t.Error("no example holds an unseen swap")
	}
}

// Swapping position 9 with a neighbor changes both the digit and the sum: enumerated against the plain rule.
func TestSwapsWithTheDigit(t *testing.T) {
	for _, r := range records(t, "vin_examples.csv") {
		for _, i := range []int{7, 8} {
			b := []byte(r[0])
			b[i], b[i+1] = b[i+1], b[i]
			sum := 0
			for k, c := range b {
				sum += valueOf(c) * weights[k]
			}
			if want := "0123456789X"[sum%11] == b[8]; lot.ReadVIN(string(b)).Digit != want {
				t.Errorf("%s: digit right, want %v", b, want)
			}
		}
	}
}

// The printed remainder table has 7/11 as .634 where it is .636: a remainder of 7 must give the digit 7.
func TestRemainderSeven(t *testing.T) {
	if v := lot.ReadVIN("1FAPP64R7LH123456"); v.Check != '7' || !v.Digit { // sum 403, remainder 7, vin_examples.csv
		t.Errorf("%+v", v)
	}
}

// Source: ISO 3780, from memory. Position 3: 49 CFR 565.15(a).
func TestRegionAndSmallMakers(t *testing.T) {
	for vin, want := range map[string]string{"1G4": "North America", "JH2": "Asia", "LJC": "Asia", "WXX": "Europe", "9AA": "South America",
		"6AA": "Oceania", "AAA": "Africa", "0HF": "", "": ""} {
		if got := lot.Region(vin); got != want {
			t.Errorf("%q: %q, want %q", vin, got, want)
		}
	}
	if v := lot.ReadVIN("1A9H59H045G118341"); v.Problem != "" || !v.Small {
		t.Errorf("%+v", v)
	}
}
