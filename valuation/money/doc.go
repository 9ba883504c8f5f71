// Package money answers one question: how is an exact amount of a currency held, read, rounded and shown?
//
// An [Amount] is a whole number of the currency's minor units (cents), so sums are exact and two ways to one number
// agree. Arithmetic with rates goes through shopspring/decimal and comes back with [Currency.Round], half up, once.
// Uncertain figures (simulated costs, prices) are float64 in major units; [Currency.Major] and [Currency.FromMajor]
// are the only bridges.
//
// Units: Amount is minor units; decimal.Decimal and float64 are major units.
// Assumptions: a currency has a fixed number of minor digits (ISO 4217 table A.1); currencies without a minor unit
// (precious metals, test codes) are not listed and are refused.
//
// Sources: [1] ISO 4217 table A.1, minor units, as published by the maintenance agency.
//
// It does not convert between currencies: rates are the importer's business.
package money
