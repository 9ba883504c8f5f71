// Package build answers one question: what came of a lot?
//
// A [Build] is the diary of a bought lot: what the sale's invoice said, every bill with the line of work that it belongs to, own
// hours by trade, which hidden damage was found and which was not, the days on which something happened, and the sale.
// [Build.Bills], [Build.Worked] and their kin add it up; [Build.Check] names what cannot be. A lot that another bidder took has
// a Build too: all it holds is the hammer price. Who won is not kept.
//
// Units: money in minor units of the lot's currency, except judgements, which are in major units; hours of one person.
// Signs: what was paid is positive; a deposit that came back is negative.
// Assumptions: a bill belongs to one line of work at most; a bill for several is entered as several.
//
// It foretells nothing and learns nothing: see valuation.Foresee and package learn.
package build
