// Package sheet answers one question: what does a buyer hold in the hand when the laptop stays in the truck?
//
// [Decision] prints a lot's decision sheet: on the first page the lot, the damage plan, the verdict, the way from the resale
// price down to the bid, stops, the first checks, cautions and the factors that were used; from the second page on every check
// with boxes to tick. [RebuiltFile] prints the file for the rebuilt inspection: vehicle, forms, statement of work, bills with
// donor VINs, photographs before and after. Both return a PDF as bytes.
//
// How: what is printed is first laid out into columns that go on to the next page by themselves ([column]); every stroke is
// kept as an order for its page ([press]) and the pages are played in their order at the end. Long words are broken, nothing is
// cut, pages are numbered. Wording comes from ui/view, the words, shapes and hatches of the damage from ui/damage, so that
// the paper reads as the window does. Everything is told apart in grey: extents by fill, hatch and word, depths by border and word.
//
// Units: millimetres on paper, x to the right and y down from the top left corner; type in points. Money as in ui/view.
// The same input gives the same bytes: the date printed is an input, and so is all else; no clock is read.
//
// Fonts: Go Regular and Go Bold, from golang.org/x/image (BSD licence, as Go itself), subset into the file. They come with a
// module that the program has anyway, hold Latin, Greek and Cyrillic (the WGL4 set) and keep 0 O, 1 l I apart, which VINs and lot
// numbers need. A character that they lack prints as an empty square, and the foot of the page says so.
//
// Sources: paper sizes ISO 216 (A4) and ANSI/ASME Y14.1 (Letter).
//
// It reads and writes no file, knows no window, and decides nothing about a lot.
package sheet
