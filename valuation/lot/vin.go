package lot

import "strings"

// vinValue transliterates VIN characters. Source: 49 CFR 565.15(c)(1), table III.
var vinValue = map[rune]int{
	'A': 1, 'B': 2, 'C': 3, 'D': 4, 'E': 5, 'F': 6, 'G': 7, 'H': 8, 'J': 1, 'K': 2, 'L': 3, 'M': 4, 'N': 5, 'P': 7, 'R': 9,
	'S': 2, 'T': 3, 'U': 4, 'V': 5, 'W': 6, 'X': 7, 'Y': 8, 'Z': 9,
	'0': 0, '1': 1, '2': 2, '3': 3, '4': 4, '5': 5, '6': 6, '7': 7, '8': 8, '9': 9,
}

// vinWeight weighs positions 1-17; the check digit itself weighs nothing. Source: 49 CFR 565.15(c)(2), table IV.
var vinWeight = [17]int{8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2}

// vinYears are the model-year codes from 1980, thirty to a round. Source: 49 CFR 565.15(d), table VII.
const vinYears = "ABCDEFGHJKLMNPRSTVWXY123456789"

// VIN is what a vehicle identification number tells.
type VIN struct {
	Problem string // why it cannot be read; empty when it can
	Check   byte   // the check digit that the other characters call for
	Digit   bool   // position 9 is that digit
	Years   [2]int // the two model years that position 10 may mean; 0, 0 when it is no year code
	Likely  int    // the one that position 7 points to; for passenger cars and trucks up to 10,000 lb only (565.15(b))
	Small   bool   // of a maker of fewer than 1,000 vehicles a year, who shares its first three characters (565.15(a))
}

// digitAt is the place of the check digit, from 0.
const digitAt = 8

// InVIN reports whether a VIN may hold a character: a digit or a capital letter but I, O and Q. Source: 49 CFR 565.15, table III.
func InVIN(c rune) bool {
	_, known := vinValue[c]
	return known
}

func plainVIN(s string) string { return strings.ToUpper(strings.TrimSpace(s)) }

// ReadVIN returns what s tells. Source: 49 CFR 565.15. The remainder is whole-number arithmetic; the regulation's printed
// decimal table has 7/11 as .634.
func ReadVIN(s string) VIN {
	s = plainVIN(s)
	if n := len([]rune(s)); n != 17 {
		return VIN{Problem: "a VIN has 17 characters"}
	}
	sum := 0
	for i, c := range s {
		v, ok := vinValue[c]
		if !ok {
			return VIN{Problem: "a VIN has no " + string(c) + " (letters I, O and Q and signs are not used)"}
		}
		sum += v * vinWeight[i]
	}
	v := VIN{Check: "0123456789X"[sum%11]}
	v.Digit = s[digitAt] == v.Check
	v.Small = s[2] == '9'
	if at := strings.IndexByte(vinYears, s[9]); at >= 0 {
		v.Years = [2]int{1980 + at, 2010 + at}
		v.Likely = v.Years[0]
		if s[6] > '9' {
			v.Likely = v.Years[1]
		}
	}
	return v
}
