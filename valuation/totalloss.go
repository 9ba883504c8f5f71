package valuation

import (
	"slices"

	"walkline/valuation/checks"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// totalLoss returns what the rules of the places of issue and of registration, and those of their country, would call the
// vehicle. The value before the damage is not entered anywhere: the price of the finished vehicle with a clear title
// stands for it, from the comparables, or from the guess by way of the brand's discount. The guess of the hammer price stands
// for the salvage value, which is not known without one.
func (w *work) totalLoss() *TotalLoss {
	packs := checks.Choose(w.k.Packs, w.c.Lot.Title.RegisterIn)
	for _, p := range checks.Choose(w.k.Packs, w.c.Lot.Title.IssuedIn) {
		if !slices.ContainsFunc(packs, func(q checks.Pack) bool { return q.ID == p.ID }) {
			packs = append(packs, p)
		}
	}
	t := TotalLoss{Repair: w.currency.FromMajor(prob.Mean(w.played.Repair) + prob.Mean(w.played.Hidden)), Value: w.before()}
	if g := w.c.Market.HammerGuess; g != nil {
		salvage := w.currency.FromMajor(g.Likely)
		t.Salvage = &salvage
	}
	t.Callings = checks.TotalLoss(checks.Damaged{Repair: t.Repair, Value: t.Value, Salvage: t.Salvage}, packs...)
	if len(t.Callings) == 0 {
		return nil
	}
	return &t
}

// before returns what stands for the value just before the damage.
func (w *work) before() money.Amount {
	clear := w.c.subject()
	branded := clear.Brand
	clear.Brand = "clear"
	price := w.market.model.At(clear).Quantile(.5)
	if w.market.price.RowsUsed == 0 && branded != clear.Brand {
		price /= 1 - w.c.Resale.BrandDiscount.Likely
	}
	return w.currency.FromMajor(price)
}
