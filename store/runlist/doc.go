// Package runlist answers one question: which lots does a sale's run list hold, and what is wrong with the rest?
//
// [Lists] is the kind of table that package table reads: the facts of a lot, each with the plain words that name its column. A row with any
// bad cell is refused whole, with its line, column, value and reason, and so is one that is the same lot as an earlier line. [Meet] holds
// the lots against those there are: read = new + same + changed + refused, always.
//
// A number that counts within a lane is put behind its lane: "B-1". Words for damage or for how it runs that tell no code go to the note.
//
// Lots are the same when their VINs are equal or, where one of them has none, when number, sale and sale day are. A list fills in what a
// lot does not say yet, and moves it to another number, sale or day; what it says otherwise of the vehicle is told and left, because the
// buyer may have looked since. What a list says beside the facts (areas, value before, repair estimate, note, order) stays the list's own
// word, see lot.Listed: a later list stands above an earlier one. Each known lot is met by one row of a list at most. So the same list
// twice changes nothing.
//
// Units: an odometer stays in its stated unit, money in minor units of the list's currency.
//
// The words for losses, conditions and statements are plain ones: common practice, no source. It opens no file and keeps nothing. It reads
// no codes of any sale.
package runlist
