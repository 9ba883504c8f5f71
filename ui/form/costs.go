package form

import (
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// The kinds of figures of the costs.
var (
	Amounts  = widgets.Spec{Kind: widgets.Money, Digits: 2, Least: widgets.Bound(0)}
	Optional = widgets.Spec{Kind: widgets.Money, Digits: 2, Least: widgets.Bound(0), Optional: true}
	Percents = widgets.Spec{Kind: widgets.Percent, Digits: 3, Least: widgets.Bound(0), Most: widgets.Bound(1)}
	Days     = widgets.Spec{Unit: "days", Least: widgets.Bound(0)}
)

// CurrencyOf returns the currency of a case.
func CurrencyOf(c valuation.Case) money.Currency { return view.NewPurse(c.Currency).Currency }

// Rules adds the fields of house rules; an empty field turns its rule off.
func Rules(f *Form) {
	amount := func(name string, at func(*bid.Rules) **money.Amount) {
		f.Number(Sentence(valuation.RuleWords[name]), Optional,
			func(c *valuation.Case) any { return at(&c.Rules) })
	}
	fraction := func(name string, spec widgets.Spec, at func(*bid.Rules) **float64) {
		f.Number(Sentence(valuation.RuleWords[name]), spec, func(c *valuation.Case) any { return at(&c.Rules) })
	}
	off := Percents
	off.Optional = true
	amount(bid.MinProfit, func(r *bid.Rules) **money.Amount { return &r.MinProfit })
	fraction(bid.MinMargin, off, func(r *bid.Rules) **float64 { return &r.MinMargin })
	fraction(bid.MaxLossChance, off, func(r *bid.Rules) **float64 { return &r.MaxLossChance })
	amount(bid.MaxWorstTenthLoss, func(r *bid.Rules) **money.Amount { return &r.MaxWorstTenthLoss })
	amount(bid.MinPerHour, func(r *bid.Rules) **money.Amount { return &r.MinPerHour })
	amount(bid.MaxCash, func(r *bid.Rules) **money.Amount { return &r.MaxCash })
	fraction(bid.MaxDays, widgets.Spec{Unit: "days", Optional: true, Least: widgets.Bound(0)},
		func(r *bid.Rules) **float64 { return &r.MaxDays })
}

// Sentence makes the first letter a capital.
func Sentence(s string) string { return string(s[0]-'a'+'A') + s[1:] }

// Rivals adds the fields of who else bids.
func Rivals(f *Form) {
	f.Number("Other serious bidders", widgets.Spec{Kind: widgets.Whole, Least: widgets.Bound(0), Most: widgets.Bound(1000), Optional: true},
		func(c *valuation.Case) any { return &c.Market.Rivals })
	f.Tick("Winner's allowance", "count it", func(c *valuation.Case) *bool { return &c.Run.WinnersAllowance })
	f.Plain("Own share of the doubt", Percents, func(c *valuation.Case) *float64 { return &c.Market.OwnShare })
	f.Tick("Winning narrows the doubt", "count it", func(c *valuation.Case) *bool { return &c.Market.Narrowing })
}

// Home adds the fields of freight and storage.
func Home(f *Form) {
	f.Three("Freight", Amounts, func(c *valuation.Case) any { return &c.Buying.Freight })
	f.Plain("Yard storage a day", Amounts, func(c *valuation.Case) *float64 { return &c.Buying.Storage.PerDay })
	f.Plain("Free days", Days, func(c *valuation.Case) *float64 { return &c.Buying.Storage.FreeDays })
	f.Three("Days until it is fetched", Days, func(c *valuation.Case) any { return &c.Buying.Storage.Days })
}

// Time adds the fields of hours a week, waiting and holding.
func Time(f *Form) {
	f.Plain("My hours a week", widgets.Spec{Unit: "h", Least: widgets.Bound(0.5), Most: widgets.Bound(168)},
		func(c *valuation.Case) *float64 { return &c.Time.HoursPerWeek })
	f.Three("Waiting for inspection", Days, func(c *valuation.Case) any { return &c.Time.InspectionQueueDays })
	f.Three("Days to sell", Days, func(c *valuation.Case) any { return &c.Time.DaysToSell })
	f.Plain("Holding a day", Amounts, func(c *valuation.Case) *float64 { return &c.Time.HoldingPerDay })
	f.Plain("Capital cost a year", Percents, func(c *valuation.Case) *float64 { return &c.Time.CapitalRate })
}

// Selling adds the fields of what selling costs.
func Selling(f *Form) {
	below := Percents
	below.Most = widgets.Bound(0.99)
	f.Plain("Share of the price", below, func(c *valuation.Case) *float64 { return &c.Selling.Percent })
	f.Plain("And flat", Amounts, func(c *valuation.Case) *float64 { return &c.Selling.Flat })
	f.Number("Title, inspection, registration", Optional, func(c *valuation.Case) any { return &c.Selling.Papers })
}

// Labour adds the fields of the rate of an own hour, by trade.
func Labour(f *Form) {
	for _, trade := range lot.Trades {
		f.number(Sentence(trade)+", an hour", Amounts,
			func(c valuation.Case) widgets.Number { return widgets.Known(c.Labour.Rates[trade]) },
			func(c *valuation.Case, n widgets.Number) {
				if c.Labour.Rates == nil {
					c.Labour.Rates = map[string]float64{}
				}
				c.Labour.Rates[trade] = n.Float()
			})
	}
}

// catalogueCurrency is the currency of the starter catalogues.
const catalogueCurrency = "USD"

// Exchange adds the field of what the catalogues' money is in the case's.
func Exchange(f *Form) {
	f.number("One "+catalogueCurrency+" is", widgets.Spec{Optional: true, Least: widgets.Bound(1e-6), Most: widgets.Bound(1e6)},
		func(c valuation.Case) widgets.Number {
			rate, given := c.Market.ExchangeRates[catalogueCurrency]
			return widgets.Number{Known: given, Value: widgets.Known(rate).Value}
		},
		func(c *valuation.Case, n widgets.Number) {
			delete(c.Market.ExchangeRates, catalogueCurrency)
			if n.Known {
				c.Market.ExchangeRates = map[string]float64{catalogueCurrency: n.Float()}
			}
		})
}

// Plain adds a field for a figure that always has a value.
func (f *Of[T]) Plain(label string, spec widgets.Spec, at func(*T) *float64) *widgets.NumberEntry {
	return f.Number(label, spec, func(c *T) any { return at(c) })
}
