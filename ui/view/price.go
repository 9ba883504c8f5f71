package view

import "walkline/ui/desk"

// PricePoint is a price with the chance that the finished vehicle brings at least that.
type PricePoint struct{ Price, Chance float64 }

// priceSlices is how finely the price is drawn.
const priceSlices = 60

// PriceChances returns the chances of the price, the lowest price first; nothing before there is one.
func PriceChances(v *desk.Valued) []PricePoint {
	if v == nil || !v.Odds.Known() {
		return nil
	}
	slices, left := v.Odds.Price(priceSlices), 1.0
	out := []PricePoint{{slices[0].From, left}}
	for _, s := range slices {
		left = max(left-s.Chance, 0)
		out = append(out, PricePoint{s.To, left})
	}
	return out
}
