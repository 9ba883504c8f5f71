package csvfile

import (
	"walkline/store/table"
)

// Entry is one movement of money or some own hours of a build, in plain notation.
type Entry struct {
	Date     string `csv:"date"`
	Lot      string `csv:"lot"`
	Vehicle  string `csv:"vehicle"`
	VIN      string `csv:"vin"`
	Wreck    string `csv:"kind_of_wreck"`
	Entry    string `csv:"entry"` // purchase | charge | bill | hours | sale
	Kind     string `csv:"kind"`  // of a bill, or the trade of hours
	What     string `csv:"what"`
	Seller   string `csv:"seller"`
	Number   string `csv:"receipt_number"`
	Out      string `csv:"money_out"`
	In       string `csv:"money_in"`
	Hours    string `csv:"my_hours"`
	Currency string `csv:"currency"`
	Files    string `csv:"files"`
}

// Ledger returns entries as CSV: a row for each, in their order. Cells that a spreadsheet would run are defused.
func Ledger(entries []Entry) []byte {
	return table.Marshal(entries, nil)
}
