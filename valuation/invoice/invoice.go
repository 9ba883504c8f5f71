package invoice

import (
	"github.com/shopspring/decimal"

	"walkline/valuation/money"
)

// Terms is what a sale charges on top of the hammer price.
type Terms struct {
	Fees      []Schedule      `json:"fees"`
	Fixed     []Fixed         `json:"fixed"`
	Surcharge decimal.Decimal `json:"payment_surcharge"` // fraction of hammer + fees + fixed + tax
	Tax       Tax             `json:"tax"`
}

// Schedule is one buyer's fee table.
type Schedule struct {
	Name string `json:"name"`
	Mode string `json:"mode"` // whole: the price takes the last row reached; slice: each slice takes its own row
	Rows []Row  `json:"rows"`
}

// Row is the rate from a hammer price upwards.
type Row struct {
	From    money.Amount    `json:"from"`
	Flat    money.Amount    `json:"flat"`
	Percent decimal.Decimal `json:"percent"` // fraction
	Minimum *money.Amount   `json:"minimum"`
	Maximum *money.Amount   `json:"maximum"`
}

// Fixed is a fee that does not depend on the price.
type Fixed struct {
	Name   string       `json:"name"`
	Amount money.Amount `json:"amount"`
}

// Tax is sales tax on the purchase; rate 0 for a resale certificate.
type Tax struct {
	Rate decimal.Decimal `json:"rate"` // fraction
	Base string          `json:"base"` // hammer | hammer_and_fees
}

// Step is one tier of bid steps: from this price on, bids rise by Step.
type Step struct {
	From money.Amount `json:"from"`
	Step money.Amount `json:"step"`
}

// Line is one line of an invoice.
type Line struct {
	Name   string       `json:"name"`
	Amount money.Amount `json:"amount"`
}

// Invoice is what is paid at a hammer price; the lines add up to Total exactly.
type Invoice struct {
	Hammer money.Amount
	Lines  []Line
	Total  money.Amount
}

// Total returns the invoice at that hammer price. Units: minor units of c. Limits: t has passed Check.
func (t Terms) Total(hammer money.Amount, c money.Currency) Invoice {
	inv := Invoice{Hammer: hammer}
	inv.add("Hammer price", hammer)
	for _, s := range t.Fees {
		inv.add(s.Name, s.fee(hammer, c))
	}
	for _, f := range t.Fixed {
		inv.add(f.Name, f.Amount)
	}
	if !t.Tax.Rate.IsZero() {
		base := hammer
		if t.Tax.Base == "hammer_and_fees" {
			base = inv.Total
		}
		inv.add("Sales tax", share(base, t.Tax.Rate, c))
	}
	if !t.Surcharge.IsZero() {
		inv.add("Payment surcharge", share(inv.Total, t.Surcharge, c))
	}
	return inv
}

// add appends a line and keeps the total.
func (i *Invoice) add(name string, a money.Amount) {
	i.Lines = append(i.Lines, Line{name, a})
	i.Total += a
}

// share returns rate times a, rounded once.
func share(a money.Amount, rate decimal.Decimal, c money.Currency) money.Amount {
	return c.Round(c.Decimal(a).Mul(rate))
}

// fee returns what one schedule charges, rounded once; a price below its first row is not charged.
func (s Schedule) fee(hammer money.Amount, c money.Currency) money.Amount {
	sum := decimal.Zero
	for i, r := range s.Rows {
		if hammer < r.From {
			break
		}
		last := i == len(s.Rows)-1 || hammer < s.Rows[i+1].From
		switch {
		case s.Mode == "slice" && last:
			sum = sum.Add(r.charge(hammer-r.From, c))
		case s.Mode == "slice":
			sum = sum.Add(r.charge(s.Rows[i+1].From-r.From, c))
		case last:
			sum = r.charge(hammer, c)
		}
	}
	return c.Round(sum)
}

// charge returns flat + percent of base, held between the row's own minimum and maximum.
func (r Row) charge(base money.Amount, c money.Currency) decimal.Decimal {
	d := c.Decimal(r.Flat).Add(c.Decimal(base).Mul(r.Percent))
	if r.Minimum != nil {
		d = decimal.Max(d, c.Decimal(*r.Minimum))
	}
	if r.Maximum != nil {
		d = decimal.Min(d, c.Decimal(*r.Maximum))
	}
	return d
}
