package checks

import (
	"fmt"

	"walkline/valuation/lot"
)

// odometer asks for the statement of the mileage, by what the law asks of a vehicle of this age on the day of the sale.
func odometer(s Subject) Item {
	i := Item{ID: "odometer_statement_missing", Kind: "title", Minutes: 3, Source: "49 CFR 580.5, 580.17 (read)",
		Text: "Is the odometer statement missing, unsigned, or not marked \"actual\"?"}
	from := lot.ExemptFrom(s.Lot.ModelYear)
	exempt, known := lot.OdometerExempt(s.Lot.ModelYear, s.On)
	switch {
	case !known:
		i.Why = "Federal law asks for it until ten years after a model year to 2010, twenty years from 2011 on."
	case exempt:
		i.Text = "Is the mileage doubtful: no statement, not marked \"actual\", or other records that differ?"
		i.Why = fmt.Sprintf("Model year %d is exempt from the federal statement since %s, so nobody has to answer for the reading. A state "+
			"may ask for more.", s.Lot.ModelYear, from)
	default:
		i.Why = fmt.Sprintf("Model year %d needs the federal statement until %s: reading without tenths, day, both names and addresses, VIN, "+
			"signatures. Not above 16,000 lb gross rating.", s.Lot.ModelYear, from)
	}
	if s.Lot.Misread() {
		i.Text = "Is the odometer statement missing or unsigned?"
	}
	switch s.Lot.OdometerStatus {
	case "not_actual":
		i.Why += " Entered as not actual: the statement must read \"is NOT the actual mileage. WARNING - ODOMETER DISCREPANCY\"."
	case "exceeds_limits":
		i.Why += " Entered as beyond its limits: the statement says that the reading is the mileage in excess of the mechanical limits."
	}
	return i
}

// strangeBrands asks about each brand that the standard vocabulary does not know: agencies word their own.
func strangeBrands(l lot.Lot) []Item {
	var items []Item
	for n, word := range l.Title.Brands {
		if _, known := lot.BrandOf(word); !known {
			items = append(items, Item{ID: fmt.Sprintf("brand_strange_%d", n+1), Kind: "title", Minutes: 5,
				Source: "AAMVA D20 as published in NIEM 6.0 (read)",
				Text:   fmt.Sprintf("Does the brand %q carry over where it will be registered, or forbid it?", word),
				Why:    "It is none of the standard brand words, so each agency reads it its own way. Ask the agency."})
		}
	}
	return items
}
