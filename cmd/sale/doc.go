// Command sale plays seasons of sales and holds the plan against rules of thumb.
//
//	go run ./cmd/sale [-seasons 20] [-sales 12] [-lots 10,40,150] [-seed 1]
//
// Each season is a shop's sales at one length of the run list. Each sale's lots, cash, hours and bays are drawn, and then its
// hammer prices; every buyer meets the same. The buyers are the plan; the plan with the exact program put out of reach, so that the
// grid stands in for it; the bids of the first printed list kept all day; walk-away bids in order until the cash is gone; and the
// best return on cash first (both common practice, no source). It prints what each earns as a ratio to the plan, with the standard
// error over the seasons, and the time that the plan takes.
//
// Random: one seed for everything. Units: money in major units.
// Assumptions: what the lots are worth and how their prices lie is known and the lots are independent, so that nothing but the plan
// is judged.
//
// It is a measure of invented sales, not of a market.
package main
