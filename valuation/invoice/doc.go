// Package invoice answers one question: what does a lot cost at a hammer price, and which hammer prices can be bid?
//
// [Total] turns a hammer price into an itemised invoice: the hammer, each fee schedule, each fixed fee, sales tax and the
// payment surcharge, every line rounded half up to the minor unit once, so that the lines add up to the total to the cent.
// A schedule reads "whole" (the price takes the row that it reached last) or "slice" (each slice of the price takes the
// row that it lies in); a row's own minimum and maximum bound what that row charges. [Next] gives the legal bids:
// from nothing, add each time the step of the tier in which the bid stands. [Reach] finds those that come to no more than a sum, however
// many there are.
//
// Units: money.Amount, minor units; rates are fractions.
// Assumptions: rows and tiers are ordered by From; [Terms.Check] and [CheckSteps] say where they are not. A schedule may
// jump and may even fall at an edge, so nothing here assumes that a higher bid costs more.
//
// Sources: rounding to ISO 4217 minor units, half up, is the trade's habit on invoices (common practice, no source).
//
// It knows no uncertain cost: freight and storage are simulated elsewhere.
package invoice
