// Package desk answers one question: what can the user do, and what does it need?
//
// A [Desk] turns a [State] and an action into the next state: the window shows states and never decides. What the desk
// needs from outside (a book that keeps the lots, an importer of tables, a valuer) are small interfaces declared here.
// An edit is saved as it is made; there is no unsaved state. Undo and redo are the book's, so they survive a restart.
// Valuing takes longer than a keystroke, so it is an order of its own: [Desk.Value] is called away from the window's
// goroutine and its answer comes back through [State.Valued], which drops answers to cases that are no longer on the desk.
//
// What came of a lot is edited as its case is ([Desk.EditBuild]), in the same history. What is left of it ([Desk.Foresee]), the
// track record ([Desk.Learn]) and the replay of past lots ([Desk.Again]) are such orders, too.
//
// Units: as in package valuation.
// Assumptions: one window, one desk; the calls come from one goroutine, but for Value and Import which touch no state.
//
// It knows no widget and no file.
package desk
