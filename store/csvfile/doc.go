// Package csvfile answers one question: which comparables, or past buys, does somebody's CSV file hold, and what is wrong with the rest?
//
// An import goes in four steps, so that each can be shown before the next. [Read] takes bytes to a [Table]: it settles
// encoding, delimiter and quoting and knows the true line of every row. [Propose] matches columns to fields by name;
// the user may change the [Match] and keep it as a [Profile]. [ProposeOptions] works out from whole columns how numbers
// and dates are written and says, as a [Doubt], where the file alone can't tell. [Parse] turns rows into comparables;
// a row with any bad cell is refused whole, with its line, column, value and reason. [Merge] joins the rows with those
// there are already: read = new + same + changed + refused, always. [Write] and [WriteRefused] go the other way; what
// they write can be read again.
//
// Each cell passes two gates. Its notation (marks, date order, currency sign) is undone as the stated [Options] say,
// never guessed per row; then gocsv maps the plain values into a struct whose field types refuse bad values themselves.
//
// A table of past buys goes the same way with fields of its own: [PastTemplate] is an empty one, [ProposePast] matches its
// columns, [ParsePast] turns its rows into builds. Every cell may be empty, which leaves it unknown; what names a buy is its
// id, else its day, price and vehicle.
//
// Units: prices become minor units of the stated currency; mileage stays in its stated unit; distance becomes miles.
//
// Assumptions: the first line names the columns; one notation holds for the whole file. Text is UTF-8, UTF-16, or
// Windows-1252 when the user says so. A byte order mark and a "sep=;" line are understood.
//
// Rows are the same vehicle when their ids are equal or, without ids, when everything that names the vehicle (year,
// make, model, trim, mileage, title, source) is equal and the mileage is known. A cell that a file leaves empty says
// nothing: it never erases what is kept. So a row without id and mileage that comes back at another price, and one
// without id whose vehicle was renamed here, come in as new.
//
// Sources: [1] RFC 4180, CSV. [2] The Unicode Standard, UTF-16 and its byte order mark. [3] OWASP, "CSV Injection": the
// characters that start a formula (from memory).
//
// It opens no file and keeps nothing: bytes in, rows out. It reads no workbooks of spreadsheet programs.
package csvfile
