// Package book answers one question: what is kept of a buyer's work, as plain data?
//
// The store writes and reads these values, the desk makes and shows them; neither has twins of its own. A lot is one value,
// [Lot], with all that is kept of it. What the user does is one value too, a [Step]: the lots before and after, new lots,
// settings, a decision on a learned factor, with the words that undo names and the [Subject] whose history it belongs to. A
// store keeps a step in one transaction, all of it or nothing, and takes it back in one.
//
// A step says what it was made from. What is kept may have moved on since: a list was taken in, another page wrote. A field of
// the step is then written only where what is kept is still what the step began with; where both changed the same field to
// different values that is a [Clash], and nothing is written unless the step is forced. Undo and redo go by the same rule.
//
// Units: as in package valuation. It holds no state, reads nothing and imports neither the store nor the window.
package book
