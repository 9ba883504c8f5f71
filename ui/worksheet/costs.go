package worksheet

import (
	"fyne.io/fyne/v2/container"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// The kinds of figures of the costs.
var (
	amounts  = widgets.Spec{Kind: widgets.Money, Digits: 2, Least: widgets.Bound(0)}
	optional = widgets.Spec{Kind: widgets.Money, Digits: 2, Least: widgets.Bound(0), Optional: true}
	percents = widgets.Spec{Kind: widgets.Percent, Digits: 3, Least: widgets.Bound(0), Most: widgets.Bound(1)}
	days     = widgets.Spec{Unit: "days", Least: widgets.Bound(0)}
)

// newCosts returns the section of what the sale charges, the house rules, time, selling and labour.
func newCosts(p *Page) *section {
	rules, home, weeks, selling, labour, rivals := newForm(p.edit), newForm(p.edit), newForm(p.edit), newForm(p.edit), newForm(p.edit), newForm(p.edit)
	costsOfRules(rules)
	costsOfHome(home)
	costsOfTime(weeks)
	costsOfSelling(selling)
	costsOfLabour(labour)
	costsOfRivals(rivals)
	t := newTerms(p)
	left := container.NewVBox(
		heading("House rules", "The walk-away bid is the largest legal bid at which all of them hold. Leave a field empty to turn its rule off."), rules.rows,
		heading("Who else bids", "The one who wins has most likely overrated the lot; with more bidders, more so."), rivals.rows,
		heading("Bringing it home", ""), home.rows,
		heading("Time", "Holding is space, insurance and the like; capital cost is a year's interest on the money out."), weeks.rows,
		heading("Selling", ""), selling.rows,
		heading("Own labour", "An own hour is a cost at its rate, so that the profit is what is left after paying yourself."), labour.rows,
	)
	body := container.NewVScroll(container.NewVBox(t.body, left))
	return &section{name: "Costs", body: body, forms: []*form{rules, home, weeks, selling, labour, rivals},
		show: func(p *Page) { t.render(p.open.Case) }}
}

// currencyOf returns the currency of a case.
func currencyOf(c valuation.Case) money.Currency { return view.NewPurse(c.Currency).Currency }

func costsOfRules(f *form) {
	amount := func(name string, at func(*bid.Rules) **money.Amount) {
		f.number(sentence(valuation.RuleWords[name]), optional,
			func(c valuation.Case) widgets.Number { return amount(*at(&c.Rules), currencyOf(c)) },
			func(c *valuation.Case, n widgets.Number) { *at(&c.Rules) = toAmount(n, currencyOf(*c)) })
	}
	fraction := func(name string, spec widgets.Spec, at func(*bid.Rules) **float64) {
		f.number(sentence(valuation.RuleWords[name]), spec, func(c valuation.Case) widgets.Number { return share(*at(&c.Rules)) },
			func(c *valuation.Case, n widgets.Number) { *at(&c.Rules) = toShare(n) })
	}
	off := percents
	off.Optional = true
	amount(bid.MinProfit, func(r *bid.Rules) **money.Amount { return &r.MinProfit })
	fraction(bid.MinMargin, off, func(r *bid.Rules) **float64 { return &r.MinMargin })
	fraction(bid.MaxLossChance, off, func(r *bid.Rules) **float64 { return &r.MaxLossChance })
	amount(bid.MaxWorstTenthLoss, func(r *bid.Rules) **money.Amount { return &r.MaxWorstTenthLoss })
	amount(bid.MinPerHour, func(r *bid.Rules) **money.Amount { return &r.MinPerHour })
	amount(bid.MaxCash, func(r *bid.Rules) **money.Amount { return &r.MaxCash })
	fraction(bid.MaxDays, widgets.Spec{Unit: "days", Optional: true, Least: widgets.Bound(0)}, func(r *bid.Rules) **float64 { return &r.MaxDays })
}

// sentence makes the first letter a capital.
func sentence(s string) string { return string(s[0]-'a'+'A') + s[1:] }

func costsOfRivals(f *form) {
	f.number("Other serious bidders", widgets.Spec{Kind: widgets.Whole, Least: widgets.Bound(0), Most: widgets.Bound(1000)},
		func(c valuation.Case) widgets.Number { return widgets.Known(float64(c.Market.Rivals)) },
		func(c *valuation.Case, n widgets.Number) { c.Market.Rivals = n.Int() })
	f.tick("Winner's allowance", "count it", func(c valuation.Case) bool { return c.Run.WinnersAllowance },
		func(c *valuation.Case, on bool) { c.Run.WinnersAllowance = on })
}

func costsOfHome(f *form) {
	f.three("Freight", amounts, func(c valuation.Case) prob.Three { return c.Buying.Freight }, func(c *valuation.Case, t prob.Three) { c.Buying.Freight = t })
	f.plain("Yard storage a day", amounts, func(c *valuation.Case) *float64 { return &c.Buying.Storage.PerDay })
	f.plain("Free days", days, func(c *valuation.Case) *float64 { return &c.Buying.Storage.FreeDays })
	f.three("Days until it is fetched", days, func(c valuation.Case) prob.Three { return c.Buying.Storage.Days }, func(c *valuation.Case, t prob.Three) { c.Buying.Storage.Days = t })
}

func costsOfTime(f *form) {
	f.plain("Own hours a week", widgets.Spec{Unit: "h", Least: widgets.Bound(0.5), Most: widgets.Bound(168)}, func(c *valuation.Case) *float64 { return &c.Time.HoursPerWeek })
	f.three("Waiting for inspection", days, func(c valuation.Case) prob.Three { return c.Time.InspectionQueueDays }, func(c *valuation.Case, t prob.Three) { c.Time.InspectionQueueDays = t })
	f.three("Days to sell", days, func(c valuation.Case) prob.Three { return c.Time.DaysToSell }, func(c *valuation.Case, t prob.Three) { c.Time.DaysToSell = t })
	f.plain("Holding a day", amounts, func(c *valuation.Case) *float64 { return &c.Time.HoldingPerDay })
	f.plain("Capital cost a year", percents, func(c *valuation.Case) *float64 { return &c.Time.CapitalRate })
}

func costsOfSelling(f *form) {
	below := percents
	below.Most = widgets.Bound(0.99)
	f.plain("Share of the price", below, func(c *valuation.Case) *float64 { return &c.Selling.Percent })
	f.plain("And flat", amounts, func(c *valuation.Case) *float64 { return &c.Selling.Flat })
}

func costsOfLabour(f *form) {
	for _, trade := range lot.Trades {
		f.number(sentence(trade)+", an hour", amounts,
			func(c valuation.Case) widgets.Number { return widgets.Known(c.Labour.Rates[trade]) },
			func(c *valuation.Case, n widgets.Number) {
				if c.Labour.Rates == nil {
					c.Labour.Rates = map[string]float64{}
				}
				c.Labour.Rates[trade] = n.Float()
			})
	}
}

// plain adds a field for a figure that always has a value.
func (f *form) plain(label string, spec widgets.Spec, at func(*valuation.Case) *float64) {
	f.number(label, spec, func(c valuation.Case) widgets.Number { return widgets.Known(*at(&c)) },
		func(c *valuation.Case, n widgets.Number) { *at(c) = n.Float() })
}
