package resale

import (
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Row is one comparable: a vehicle offered or sold. Its price is in minor units of the table's currency.
type Row struct {
	ID         string            `json:"id"`
	Price      money.Amount      `json:"price"`
	Kind       string            `json:"kind"` // asked | sold; empty: asked
	Date       lot.Date          `json:"date"` // of the sale or the advertisement
	ModelYear  int               `json:"model_year"`
	Make       string            `json:"make"`
	Model      string            `json:"model"`
	Trim       string            `json:"trim"`
	Mileage    *float64          `json:"mileage"`      // nil: not known
	Unit       string            `json:"mileage_unit"` // mi | km; empty: mi
	Title      string            `json:"title"`        // clear, rebuilt, salvage, ...; empty: not known, read as clear
	DistanceMi *float64          `json:"distance"`     // miles from the buyer; nil: not known
	Condition  *float64          `json:"condition"`    // 1 poor .. 5 as new; nil: not known
	Note       string            `json:"note"`
	Source     string            `json:"source"`
	More       map[string]string `json:"more"`            // every other column: engine_l, fuel, transmission, doors, equipment ...
	Excluded   bool              `json:"excluded"`        // the user unticked it
	Shelf      int64             `json:"shelf,omitempty"` // where it lies on the shop's shelf; 0: nowhere
}

// Subject is the vehicle as it will stand when finished.
type Subject struct {
	Trim      string            `json:"trim"`
	Upkeep    string            `json:"upkeep"`    // one of Upkeeps; empty: usual, or what Condition says
	Condition *float64          `json:"condition"` // as files of before said it, 1 to 5; nil: nothing. Upkeep stands above it
	Brand     string            `json:"brand"`     // title brand when sold: rebuilt, clear, ...; empty: rebuilt
	SaleMonth lot.Date          `json:"sale_date"` // any day of the month of the sale; empty: the day of valuation
	More      map[string]string `json:"more"`
	// Filled from the lot by the front door:
	Make, Model string   `json:"-"`
	ModelYear   int      `json:"-"`
	Mileage     *float64 `json:"-"`
	Unit        string   `json:"-"`
}

// Beliefs is what the buyer holds about the market beside the rows.
type Beliefs struct {
	BrandDiscount prob.Three  // fraction off a clear title's price
	AskedToSold   prob.Three  // factor from asked to sold prices
	Guess         *prob.Three // 10th, 50th and 90th percentile of the price in major units, used when there are no rows
	Today         lot.Date    // day of valuation
	Currency      money.Currency
}
