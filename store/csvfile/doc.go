// Package csvfile answers one question: which comparables, or past buys, does somebody's table hold, and what becomes of them beside those
// that are there?
//
// [Comparables] and [PastBuys] are the kinds of table that package table reads: the fields of a row, each with the plain words that
// name its column, how it is put into the row, printed and joined to an older one. A row with any bad cell is refused whole, with its
// line, column, value and reason. [Merge] joins the rows with those there are already: read = new + same + changed + refused, always.
// [RowsOf] reads a table that must be usable whole, as a case file names it.
//
// What a table leaves open is asked by its reader; [Settle] answers with the first way and says so, for callers that can't ask.
//
// A table of past buys has fields of its own: [PastTemplate] is an empty one. Every cell may be empty, which leaves it unknown; what names
// a buy is its id, else its day, price and vehicle.
//
// Units: prices become minor units of the table's currency; mileage stays in its stated unit; distance becomes miles. An odometer reading
// that its cell calls not actual counts as an unknown mileage and stands in the note ([Comparable.Known]).
//
// Rows are the same vehicle when their ids are equal or, without ids, when everything that names the vehicle (year, make, model, trim,
// mileage, title, source) is equal and the mileage is known. A cell that a file leaves empty says nothing: it never erases what is kept. So
// a row without id and mileage that comes back at another price, and one without id whose vehicle was renamed here, come in as new.
//
// The words of headings are plain ones of seven languages: common practice, no source. It opens no file and keeps nothing.
package csvfile
