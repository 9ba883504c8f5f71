package checks

import (
	"fmt"
	"strings"

	"walkline/valuation/lot"
)

// readAgain says what to do about a doubtful number.
const readAgain = "Read it again at two places (windshield and door)"

// vinItems returns what the VIN says against the facts: stops where it cannot be read or names another model year.
func vinItems(l lot.Lot) []Item {
	if strings.TrimSpace(l.VIN) == "" {
		return []Item{{ID: "vin_missing", Kind: "title", State: "open", Fixed: true, Minutes: 2,
			Text: "Read the VIN at the windshield and the door, and enter it.",
			Why:  "It is the only tie between this vehicle and its papers."}}
	}
	v := lot.ReadVIN(l.VIN)
	if v.Problem != "" {
		return []Item{vinStop("The VIN cannot be read: "+v.Problem+".", readAgain+"; until it reads, nothing ties this vehicle to its papers.")}
	}
	items := yearItems(l, v)
	if !v.Digit {
		items = append(items, digitItem(l.VIN, v))
	}
	return append(items, compareItem(l.VIN, v))
}

// Donor returns what is wrong with the VIN of a vehicle that parts come from, read as the lot's own is: its length, its letters and its
// check digit. Empty: nothing is, or none is entered.
func Donor(vin string) string {
	if strings.TrimSpace(vin) == "" {
		return ""
	}
	for _, i := range vinItems(lot.Lot{VIN: vin}) {
		switch i.ID {
		case "stop_vin":
			return i.Text
		case "vin_digit":
			return i.Text + " " + i.Why
		}
	}
	return ""
}

func vinStop(text, why string) Item {
	return Item{ID: "stop_vin", Kind: "stop", State: "bad", Fixed: true, Text: text, Why: why}
}

// foreign reports whether a VIN need not follow the US rule: its check digit is not right and it does not begin as those
// of North America do.
func foreign(vin string, v lot.VIN) bool { return !v.Digit && lot.Region(vin) != "North America" }

// yearItems compares the model year of the VIN with the facts.
func yearItems(l lot.Lot, v lot.VIN) []Item {
	switch {
	case l.ModelYear == 0 || l.ModelYear == v.Likely:
		return nil
	case foreign(l.VIN, v):
		return []Item{{ID: "vin_year", Kind: "title", State: "bad", Fixed: true, Minutes: 3,
			Text: fmt.Sprintf("The VIN's tenth character does not say model year %d; the papers must.", l.ModelYear),
			Why:  "A vehicle not made for the US market need not carry its year there (49 CFR 565)."}}
	case v.Years == [2]int{}:
		return []Item{vinStop(fmt.Sprintf("The VIN's tenth character is no model year; the facts say %d.", l.ModelYear),
			readAgain+"; U, Z and 0 never stand there (49 CFR 565.15).")}
	case l.ModelYear == v.Years[0] || l.ModelYear == v.Years[1]:
		return []Item{{ID: "vin_cycle", Kind: "title", State: "bad", Fixed: true, Minutes: 3,
			Text: fmt.Sprintf("The VIN's seventh character says model year %d, the facts say %d. Look which is right.", v.Likely, l.ModelYear),
			Why: "The codes come round every thirty years. For cars, and for trucks up to 10,000 lb gross rating, a digit there means 1980 to " +
				"2009 and a letter 2010 to 2039; heavier ones don't follow it (49 CFR 565.15(b))."}}
	}
	return []Item{vinStop(fmt.Sprintf("The VIN says model year %d, the facts say %d.", v.Likely, l.ModelYear),
		"Clear up which is wrong before any bid (49 CFR 565.15).")}
}

// digitItem tells of a wrong check digit. It warns and does not stop: 49 CFR 565 is for vehicles sold in the US.
func digitItem(vin string, v lot.VIN) Item {
	why := "One wrong character is the usual cause."
	if swaps := lot.Swaps(vin); len(swaps) > 0 {
		var pairs []string
		for _, at := range swaps {
			pairs = append(pairs, lot.Pair(vin, at))
		}
		why += " It would be right with these two swapped: " + strings.Join(pairs, ", or ") + "."
	}
	why += " A vehicle not made for the US market may have no check digit"
	if r := lot.Region(vin); r != "" && r != "North America" {
		why += "; the first character hints at " + r
	}
	return Item{ID: "vin_digit", Kind: "title", State: "bad", Fixed: true, Minutes: 3, Why: why + ".",
		Text: fmt.Sprintf("The VIN's ninth character should be %c. %s.", v.Check, readAgain)}
}

// compareItem asks for the VIN to be compared with the title, and names what the check digit cannot tell.
func compareItem(vin string, v lot.VIN) Item {
	why := "A right check digit proves little: A, J and 1 count alike, and so do B, K, S and 2, and more."
	if pairs := lot.Unseen(vin); len(pairs) > 0 {
		var words []string
		for _, at := range pairs {
			words = append(words, lot.Pair(vin, at))
		}
		why += " Here it would not see these swapped: " + strings.Join(words, "; ") + "."
	}
	if v.Small {
		why += " The 9 in third place says a small maker, who is named by positions 12 to 14 too."
	}
	return Item{ID: "vin_differs", Kind: "title", Minutes: 3, Why: why,
		Text: "Does the VIN on the windshield, the door or the title differ in any character from what is entered?"}
}
