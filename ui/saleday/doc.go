// Package saleday answers one question: how high today on each lot, with the cash, hours and bays there are?
//
// The page takes what there is from a sale day on, the money that comes in later with its days, and what bays, hours and cash kept for
// the next sale count for. It shows the plan over that day's lots and those of later days that are marked
// as bid. It follows results as they are recorded. It computes nothing: the plan is that of valuation/sale, through ui/desk.
package saleday
