package view

import (
	"walkline/ui/desk"
	"walkline/valuation"
)

// PriceOdds is what the finished vehicle may bring, with a price that is asked about.
type PriceOdds struct {
	Slices     []valuation.Slice
	At         float64 // the price asked about, in major units
	Name       string
	Less, More string // the chances on either side, in words
	Words      string
}

// priceSlices is how finely the price is drawn.
const priceSlices = 60

// PriceShape returns the shape of the price, nothing before there is one.
func PriceShape(v *desk.Valued) []valuation.Slice {
	if v == nil || !v.Odds.Known() {
		return nil
	}
	return v.Odds.Price(priceSlices)
}

// NewPriceOdds returns the chances of a price over its shape; at 0 asks about the middle one.
func NewPriceOdds(o desk.Open, shape []valuation.Slice, at float64) (PriceOdds, bool) {
	if len(shape) == 0 || o.Valued == nil {
		return PriceOdds{}, false
	}
	r, p := o.Valued.Answer.Resale, NewPurse(o.Case.Currency)
	if at == 0 {
		at = r.P50
	}
	less := 0.0
	for _, s := range shape {
		less += s.Chance * min(max((at-s.From)/(s.To-s.From), 0), 1)
	}
	return PriceOdds{Slices: shape, At: at, Name: p.Code + " " + p.Whole(at), Less: "less " + Percent(less), More: "more " + Percent(1-less),
		Words: "8 in 10 bring " + p.Range(r.P10, r.P90)}, true
}
