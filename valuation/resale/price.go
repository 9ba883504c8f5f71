package resale

import (
	"walkline/valuation/hedonic"
	"walkline/valuation/money"
)

// Price is what the finished vehicle is expected to bring, in major units of the case's currency.
type Price struct {
	Mean     float64    `json:"mean"`
	P10      float64    `json:"p10"`
	P50      float64    `json:"p50"`
	P90      float64    `json:"p90"`
	RowsUsed int        `json:"rows_used"`
	Adjusted []Adjusted `json:"adjusted"`
	Warnings []Warning  `json:"warnings"`
}

// Adjusted is one comparable brought to the subject: its adjustments add up exactly to adjusted less price.
type Adjusted struct {
	Row         int          `json:"row"` // position in the table, from 0
	ID          string       `json:"id,omitempty"`
	Price       money.Amount `json:"price"`
	AskedToSold money.Amount `json:"asked_to_sold"`
	Date        money.Amount `json:"date"`
	Mileage     money.Amount `json:"mileage"`
	Age         money.Amount `json:"age"`
	Trim        money.Amount `json:"trim"`
	Brand       money.Amount `json:"brand"`
	Engine      money.Amount `json:"engine"`
	Place       money.Amount `json:"place"`
	Other       money.Amount `json:"other"`
	Adjusted    money.Amount `json:"adjusted"`  // Price plus every adjustment
	Weight      float64      `json:"weight"`    // 0..1: against a row just like the subject whose price fits in
	Influence   float64      `json:"influence"` // major units by which the row moves the subject's median
	Used        bool         `json:"used"`
	Why         string       `json:"why,omitempty"` // why it isn't used
}

// changes returns where the adjustment for each cause stands in a.
func (a *Adjusted) changes() [hedonic.Causes]*money.Amount {
	return [hedonic.Causes]*money.Amount{hedonic.CauseAsked: &a.AskedToSold, hedonic.CauseDate: &a.Date, hedonic.CauseMileage: &a.Mileage,
		hedonic.CauseAge:  &a.Age,
		hedonic.CauseTrim: &a.Trim, hedonic.CauseBrand: &a.Brand, hedonic.CauseOther: &a.Other,
		hedonic.CauseEngine: &a.Engine, hedonic.CausePlace: &a.Place}
}
