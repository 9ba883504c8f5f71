// Package saleday answers one question: how high today on each lot, with the cash, hours and bays there are?
//
// The page takes what there is from a sale day on and shows the plan over that day's lots and those of later days that are marked
// as bid. It follows results as they are recorded. It computes nothing: the plan is that of valuation/sale, through ui/desk.
package saleday
