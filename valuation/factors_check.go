package valuation

import (
	"fmt"

	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// Learned factors beyond these are slips of the pen: no shop is ten times off.
const (
	mostFactor = 10
	mostLogSD  = 2
	mostSpread = 5
)

// factors adds the faults of the learned factors.
func (f *faults) factors(x *learn.Factors) {
	if x == nil {
		return
	}
	for _, trade := range sortedKeys(x.Hours) {
		f.word("factors.hours", trade, lot.Trades)
		f.ratio("factors.hours."+trade, x.Hours[trade])
	}
	for _, source := range sortedKeys(x.Parts) {
		f.ratio("factors.parts."+source, x.Parts[source])
	}
	single := map[string]*learn.Ratio{"materials": x.Materials, "outside": x.Outside, "hidden": x.Hidden,
		"asked_to_sold": x.AskedToSold, "brand_discount": x.BrandDiscount, "days_to_sell": x.DaysToSell}
	for _, key := range sortedKeys(single) {
		if r := single[key]; r != nil {
			f.ratio("factors."+key, *r)
		}
	}
	if r := x.Resale; r != nil {
		f.between("factors.resale.factor", r.Factor, 1.0/mostFactor, mostFactor)
		f.between("factors.resale.spread", r.Spread, 1.0/mostSpread, mostSpread)
	}
	for _, id := range sortedKeys(x.Risks) {
		c := x.Risks[id]
		f.unless(c.A >= 0 && c.B >= 0 && c.A+c.B > 0, "factors.risks."+id, fmt.Sprintf("a %g, b %g", c.A, c.B),
			"counts a and b, not below 0 and not both 0")
	}
	if x.Loading != nil {
		f.between("factors.shared_loading.value", x.Loading.Value, 0, maxLoading)
	}
	if x.OwnShare != nil {
		f.between("factors.own_share.value", x.OwnShare.Value, 0, 1)
	}
	f.between("factors.half_life_days", x.HalfLife, 0, 36500)
}

func (f *faults) ratio(key string, r learn.Ratio) {
	f.between(key+".factor", r.Factor, 1.0/mostFactor, mostFactor)
	f.between(key+".log_sd", r.LogSD, 0, mostLogSD)
	f.between(key+".known", r.Known, 0, 1)
}
