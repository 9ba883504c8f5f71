package book

import (
	"slices"

	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// Comparable is one row on the shop's shelf of comparables. Its price is in minor units of its currency.
type Comparable struct {
	ID       int64      `json:"-"` // its place: given by the store, never used again
	Row      resale.Row `json:"row"`
	Currency string     `json:"currency"`
	From     string     `json:"from"`              // the table that it came in; empty: typed
	On       lot.Date   `json:"on"`                // the day on which it came
	Lot      int64      `json:"lot,omitempty"`     // the lot that it was taken in for; 0: none
	Earlier  []Earlier  `json:"earlier,omitempty"` // what the same advertisement said before, oldest first
}

// Earlier is a price that an advertisement had before.
type Earlier struct {
	Price money.Amount `json:"price"`
	Kind  string       `json:"kind"`
	Date  lot.Date     `json:"date"`
}

// After returns the comparable once its advertisement says r: what it said before is kept beside it.
func (c Comparable) After(r resale.Row) Comparable {
	c.Earlier = append(slices.Clip(c.Earlier), Earlier{Price: c.Row.Price, Kind: c.Row.Kind, Date: c.Row.Date})
	c.Row = r
	return c
}

// Sold returns what was last asked for the vehicle and what it was then sold for, and whether both are known.
func (c Comparable) Sold() (p resale.Pair, known bool) {
	for _, e := range slices.Backward(c.Earlier) {
		if c.Row.Kind == "sold" && e.Kind != "sold" && e.Price > 0 {
			return resale.Pair{Asked: e.Price, Sold: c.Row.Price}, true
		}
	}
	return p, false
}

// Drawn returns the row as a lot has it, with its place.
func (c Comparable) Drawn() resale.Row {
	r := c.Row
	r.Shelf = c.ID
	return r
}
