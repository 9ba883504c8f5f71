package view

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// vinLength is how many characters a VIN has. Source: 49 CFR 565.13(b), ISO 3779.
const vinLength = 17

// VIN returns what the VIN of a lot says of itself and against the facts, as it is typed, and whether something does not agree; nothing
// where there is none. Sources: 49 CFR 565.15 (characters, check digit, year), ISO 3780 (region, from memory). The check digit is the law
// for vehicles made for the United States and Canada; others may have any character there.
func VIN(l lot.Lot) (words string, wrong bool) {
	typed := strings.ToUpper(strings.TrimSpace(l.VIN))
	if typed == "" {
		return "", false
	}
	letters := []rune(typed)
	for i, c := range letters {
		if i < vinLength && !lot.InVIN(c) {
			return fmt.Sprintf("Character %d, %c, is in no VIN: letters I, O and Q and signs are not used.", i+1, c), true
		}
	}
	switch n := len(letters); {
	case n < vinLength:
		return joined(" ", fmt.Sprintf("%d of %d characters.", n, vinLength), region(typed)), false
	case n > vinLength:
		return fmt.Sprintf("%d characters, %d too many.", n, n-vinLength), true
	}
	digit, wrongDigit := checkDigit(typed)
	year, wrongYear := vinYear(lot.ReadVIN(typed), l.ModelYear)
	return joined(" ", digit, year, region(typed)), wrongDigit || wrongYear
}

// checkDigit says whether the check digit is right, and where a swap would make it so.
func checkDigit(vin string) (string, bool) {
	v := lot.ReadVIN(vin)
	if v.Digit {
		return "Check digit right.", false
	}
	words := fmt.Sprintf("Check digit wrong: character 9 is %c, the others call for %c.", vin[8], v.Check)
	if at := lot.Swaps(vin); len(at) > 0 {
		words += " Swapped: " + lot.Pair(vin, at[0]) + "?"
	}
	return words, true
}

// vinYear says the model year of the VIN against that of the facts.
func vinYear(v lot.VIN, entered int) (string, bool) {
	switch {
	case v.Years == [2]int{}:
		return "Character 10 is no year.", true
	case entered == 0:
		return fmt.Sprintf("Its year: %d or %d.", v.Years[1], v.Years[0]), false
	case slices.Contains(v.Years[:], entered):
		return fmt.Sprintf("Year %d fits.", entered), false
	}
	return fmt.Sprintf("It says year %d or %d, the facts say %d.", v.Years[1], v.Years[0], entered), true
}

func region(vin string) string {
	if r := lot.Region(vin); r != "" {
		return "Maker's region: " + r + "."
	}
	return ""
}
