package main

import (
	"slices"
	"strings"

	"golang.org/x/text/currency"
	"golang.org/x/text/language"
	"golang.org/x/text/message"

	"walkline/ui/desk"
	"walkline/ui/form"
)

// region is how the system's place writes and counts; what it doesn't say is empty.
type region struct{ currency, distance, mark string }

// near are the currencies whose unit is worth about a dollar, within a factor of two: the starter amounts hold in them as first values.
// From memory. In any other currency they would be absurd, and no rate is known: there a new shop stays in dollars until it says otherwise.
var near = []string{"USD", "EUR", "GBP", "CAD", "AUD", "NZD", "CHF", "SGD"}

// byMiles are the places that count roads in miles. Source: CLDR 44, measurementSystem of US and UK kind.
var byMiles = []string{"US", "GB", "LR", "MM", "PR"}

// regionOf reads a locale such as "de-DE". Sources: CLDR by golang.org/x/text, currencies by region and decimal marks by language.
func regionOf(locale string) (r region) {
	tag, err := language.Parse(strings.ReplaceAll(locale, "_", "-"))
	if err != nil {
		return r
	}
	if mark := message.NewPrinter(tag).Sprintf("%.1f", 1.5); strings.Contains(mark, ",") {
		r.mark = ","
	}
	_, _, land := tag.Raw()
	if land.String() == "ZZ" {
		return r
	}
	r.distance = "km"
	if slices.Contains(byMiles, land.String()) {
		r.distance = "mi"
	}
	if unit, ok := currency.FromRegion(land); ok && slices.Contains(near, unit.String()) {
		r.currency = unit.String()
	}
	return r
}

// ownRegion reads how this system's place writes and counts, on Unix by the locale of each: a system in English may well write numbers as
// its place does. LC_MEASUREMENT is the GNU C library's.
func ownRegion() region {
	return region{regionOf(form.LocaleOf("LC_MONETARY")).currency, regionOf(form.LocaleOf("LC_MEASUREMENT")).distance,
		regionOf(form.LocaleOf("LC_NUMERIC")).mark}
}

// settle has a new shop begin as the system's place writes and counts. A shop that kept its own terms is not touched.
func (r region) settle(d *desk.Desk) {
	d.DecimalMark = r.mark
	if r.distance != "" {
		d.Starter.Lot.OdometerUnit = r.distance
	}
	if r.currency != "" {
		d.Starter.Currency = r.currency
	}
}
