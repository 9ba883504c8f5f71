// Package grid answers one question: which rows of cells do the bytes of a table hold, whatever wrote them?
//
// It reads delimited text (comma, semicolon, tab or bar), cells that were copied from a spreadsheet or a web page, and workbooks of
// spreadsheet programs (.xlsx: the first sheet or the one named, dates by their cell style, formulas by their last value). Every row
// knows the line of the file, or the row of the sheet, in which it starts. Nothing is taken for a heading here.
//
// Text is UTF-8 or UTF-16 as its bytes show. An 8-bit file is decoded where the bytes settle how: an encoding that would give control
// characters, or letters where a sign of money stands, is out, and where those that are left give the same text it is that text. Else
// [Unsettled] shows what each would give.
//
// Bounds: 64 MB, 200,000 rows, 500 columns; a workbook is refused by the sizes that its directory states before anything is unpacked,
// and archive/zip gives up on a part that is longer than stated.
//
// Sources: [1] RFC 4180, CSV. [2] The Unicode Standard, UTF-16 and its byte order mark. [3] ISO/IEC 8859-2 and -15 and the code pages 1250
// and 1252, as golang.org/x/text has them. [4] ECMA-376, SpreadsheetML: serial days from 1900 and
// 1904; part 1, 12.3.20: a workbook may have no part of styles.
package grid
