package view

import (
	"fmt"
	"maps"
	"slices"

	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// Learned returns the factors that the buyer's own past buys have taught and that are in force: what each is on, and its value
// with the buys and the day that it comes from. Without any it says so.
func Learned(f *learn.Factors) [][2]string {
	if f == nil {
		return [][2]string{{"Learned factors", "none, starter values stand"}}
	}
	var out [][2]string
	add := func(on, value string, from int, when lot.Date) {
		words := value + " from " + Count(from, "buy")
		if when != "" {
			words += ", " + Day(when)
		}
		out = append(out, [2]string{"Learned: " + on, words})
	}
	ratio := func(on string, r *learn.Ratio) {
		if r != nil {
			add(on, times(r.Factor), r.From, r.When)
		}
	}
	each := func(on string, ratios map[string]learn.Ratio) {
		for _, key := range slices.Sorted(maps.Keys(ratios)) {
			r := ratios[key]
			ratio(on+Words(key), &r)
		}
	}
	each("hours, ", f.Hours)
	each("price of parts, ", f.Parts)
	ratio("materials", f.Materials)
	ratio("sublet work", f.Outside)
	ratio("hidden damage", f.Hidden)
	if b := f.Resale; b != nil {
		add("resale price", times(b.Factor)+", spread "+times(b.Spread), b.From, b.When)
	}
	ratio("asked to sold", f.AskedToSold)
	ratio("left after a rebuilt title's discount", f.BrandDiscount)
	ratio("days to sell", f.DaysToSell)
	for _, risk := range slices.Sorted(maps.Keys(f.Risks)) {
		c := f.Risks[risk]
		add("chance of "+Words(risk), Percent(c.A/(c.A+c.B)), c.From, c.When)
	}
	if l := f.Loading; l != nil {
		add("shared loading", fmt.Sprintf("%.2f", l.Value), l.From, l.When)
	}
	if k := f.OwnShare; k != nil {
		add("own share of the doubt", Percent(k.Value), k.From, k.When)
	}
	if out == nil {
		return Learned(nil)
	}
	return out
}

// times writes a factor: "x 1.12".
func times(factor float64) string { return fmt.Sprintf("× %.2f", factor) }
