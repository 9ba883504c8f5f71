package wire

import (
	"walkline/store/listing"
	"walkline/ui/damage"
	"walkline/ui/desk"
	"walkline/valuation"
)

// Listing reads the text of a listing for the desk.
func Listing(text string, c valuation.Case) (desk.Listed, error) {
	filled, found, err := listing.Fill(c, text)
	l := desk.Listed{Case: filled, Left: found.Left}
	for _, f := range found.Facts {
		words := f.Words
		if f.Area != "" {
			words = damage.Area(f.Area) + ": " + words
		}
		l.Facts = append(l.Facts, [2]string{f.Field, words})
	}
	return l, err
}
