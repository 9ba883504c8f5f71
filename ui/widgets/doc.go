// Package widgets answers: how do the figures of the program look, and how does one touch them?
//
// Every widget here works by mouse and by keyboard, shows a ring when it has the keyboard, takes its colours from
// walkline/ui/theme when it draws, and says the same facts in words through Facts, for lists beside pictures and for tests. Setting
// a value from code never calls a handler: a page can render what it was just told.
//
//   - [Plan]: the damage plan. A ring of twelve clock points (01-12 of the Model Minimum Uniform Crash Criteria, 12 = front, clockwise seen
//     from above) round a plain vehicle, and tiles for the other areas. Extent shows as fill, hatch and word, depth as
//     border and word.
//   - [Scatter], [Curve], [Waterfall], [ShareBars]: plots. What the pointer or the keyboard is on stands in words in a line
//     that never moves.
//   - [NumberEntry], [ThreeEntry]: fields that read numbers as people type them ([Parse]) and say beside them what they understood or what
//     is wrong. Text that is wrong is told to no one.
//   - [Table]: rows, selected and lit whole, on widget.Table with cells of canvas.Text.
//   - [Suggest], [Tip], [Layer]: what lies over a page for a moment, without taking the keyboard.
//   - [Note], [KeyFigure], [Words], [NewSection]: words and room.
//
// Units: money in major units, shares 0..1, sizes in points. Pictures without a primitive in Fyne are drawn into a canvas.Raster
// with golang.org/x/image/vector: an alpha mask for each shape, hatch blended by hand, the picture kept until something in
// it changes.
//
// What it does not do: it knows no case and no store, decides nothing, sorts nothing, and starts no goroutine (the tips wait
// through walkline/ui/task).
package widgets
