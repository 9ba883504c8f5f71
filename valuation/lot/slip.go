package lot

import (
	"fmt"
	"strings"
)

// Unseen returns the neighboring positions of a readable VIN (the first of each pair, from 1) whose characters differ but
// could stand swapped with the check digit staying right: those that share a value. Source: 49 CFR 565.15(c), derived:
// neighbors weigh differently by 1 to 10, values differ by at most 9, and 11 is prime.
func Unseen(vin string) []int {
	vin = plainVIN(vin)
	var at []int
	for i := range len(vin) - 1 {
		if i+1 != digitAt && i != digitAt && vin[i] != vin[i+1] && vinValue[rune(vin[i])] == vinValue[rune(vin[i+1])] {
			at = append(at, i+1)
		}
	}
	return at
}

// Swaps returns the neighboring positions (the first of each pair, from 1) that would make the check digit of a readable
// VIN right if their characters changed places: the usual slip of a pen.
func Swaps(vin string) []int {
	vin = plainVIN(vin)
	if v := ReadVIN(vin); v.Problem != "" || v.Digit {
		return nil
	}
	var at []int
	for i := range len(vin) - 1 {
		swapped := []byte(vin)
		swapped[i], swapped[i+1] = swapped[i+1], swapped[i]
		if v := ReadVIN(string(swapped)); vin[i] != vin[i+1] && v.Digit {
			at = append(at, i+1)
		}
	}
	return at
}

// regions are the parts of the world by the first character of a VIN. Source: ISO 3780, from memory; later editions give
// a few to others. A hint, never a check.
var regions = []struct{ first, name string }{
	{"ABCDEFGH", "Africa"}, {"JKLMNPR", "Asia"}, {"STUVWXYZ", "Europe"}, {"12345", "North America"}, {"67", "Oceania"},
	{"89", "South America"},
}

// Region returns the part of the world that a VIN's first character hints at, empty where it hints at none.
func Region(vin string) string {
	vin = plainVIN(vin)
	for _, r := range regions {
		if vin != "" && strings.Contains(r.first, vin[:1]) {
			return r.name
		}
	}
	return ""
}

// Pair says two neighboring positions in words.
func Pair(vin string, at int) string {
	vin = plainVIN(vin)
	return fmt.Sprintf("%c and %c at positions %d and %d", vin[at-1], vin[at], at, at+1)
}
