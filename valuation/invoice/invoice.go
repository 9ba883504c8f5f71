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
