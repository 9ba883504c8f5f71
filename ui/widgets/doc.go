// Package widgets answers: how do the figures of the program look, and how does one touch them?
//
// Every widget here works by mouse and by keyboard, shows a ring when it has the keyboard, takes its colours from
// walkline/ui/theme when it draws, and says the same facts in words through Facts, for lists beside pictures and for tests. Setting
// a value from code never calls a handler: a page can render what it was just told.
//
//   - [NumberEntry], [ThreeEntry]: fields that read numbers as people type them ([Parse]) and say beside them what they understood or what
//     is wrong. Text that is wrong is told to no one.
//   - [Suggest], [Tip], [Layer]: what lies over a page for a moment, without taking the keyboard.
//   - [Zoomed]: a picture that can be looked at closely.
//   - [Reply]: a question's answers side by side, one stop of the keyboard.
//   - [Note], [KeyFigure], [Words], [NewSection]: words and room.
//
// The damage plan is walkline/ui/widgets/plan, the plots are walkline/ui/widgets/plot, tables walkline/ui/widgets/table; all
// draw with walkline/ui/widgets/draw. Tests read windows with walkline/ui/widgets/seen.
//
// Units: money in major units, shares 0..1, sizes in points.
//
// What it does not do: it knows no case and no store, decides nothing, sorts nothing, and starts no goroutine (the tips wait
// through walkline/ui/task).
package widgets
