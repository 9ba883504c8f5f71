// Package runlist answers one question: which lots does a sale's run list hold, and what is wrong with the rest?
//
// An import goes in steps, so that each can be shown before the next. The bytes become a table in package csvfile. [Propose] matches
// columns to facts of a lot by their names; the user may change that. [ProposeOptions] works out from whole columns how numbers and
// dates are written, and says where the file alone can't tell. [Parse] turns rows into lots; a row with any bad cell is refused whole,
// with its line, column, value and reason, and so is one that is the same lot as an earlier line. [Meet] holds the lots against those
// there are: read = new + same + changed + refused, always.
//
// Lots are the same when their VINs are equal or, where one of them has none, when number, sale and sale day are. A list fills in what a lot
// does not say yet, and moves it to another number, sale or day; what it says otherwise of the vehicle is told and left, because the
// buyer may have looked since. So the same list twice changes nothing.
//
// Units: an odometer stays in its stated unit.
//
// Assumptions: those of package csvfile. The words for losses, conditions and statements are common practice, no source.
//
// It opens no file and keeps nothing: bytes in, lots out. It reads no damage codes of any sale.
package runlist
