// Package table answers one question: which rows of a kind does a grid of cells hold, and what is wrong, skipped or open in the rest?
//
// A [Kind] lists its columns once: name, plain words of headings, how cells are written, and how a value is put into a row, given back
// and joined to an older one. [Read] does the rest for every kind: it finds the headings (captions above them, two lines, repeated, none),
// matches them by the words in them, settles the notation of whole columns, and reads every row. The first rows, what each column became
// and why, every refusal with line, column, value and reason, every row that was passed over and every open question come back together.
//
// Where two headings name one field as well (a price asked and one paid), the reader asks which; a sign of money picks a column only where
// the kind has one field of money. An odometer reading of 10 to 999 without a unit, on a vehicle two years old, is doubted and refused.
//
// Nothing is guessed a row at a time. What a cell itself says (its unit, its currency) is a fact of that cell and stands above the
// column. Where cells of a column prove two notations, nine of ten settle it and the others are refused; else it is asked. Rows that add
// up others, captions, blank lines and headings met again are passed over and said, never taken.
//
// Units: money in minor units of the table's one currency; an odometer in its stated unit; a distance as it is put by its column.
//
// It knows no file and keeps nothing.
package table
