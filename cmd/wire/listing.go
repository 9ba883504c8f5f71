package wire

import (
	"walkline/store/listing"
	"walkline/ui/desk"
	"walkline/valuation"
)

// Listing reads the text of a listing for the desk.
func Listing(text string, c valuation.Case) (desk.Listed, error) {
	filled, found, err := listing.Fill(c, text)
	l := desk.Listed{Case: filled, Left: found.Left}
	for _, f := range found.Facts {
		l.Facts = append(l.Facts, [2]string{f.Field, f.Words})
	}
	return l, err
}
