// Package why answers: why is the walk-away bid where it is, and what would another bid bring?
//
// The page has three sections: the fall from the resale price down to the bid, each bar with the lines that it is made of
// beside it; the odds at any legal bid, with a line that is dragged or walked by the sale's own bid steps; and what moves the
// profit most. It renders a [desk.State] and asks for changes through [Actions]; which section and which bar is shown is the
// page's own.
//
// Assumptions: figures of an older state of the case are marked as such until the new ones come.
//
// It computes nothing: the words and figures are those of package view.
package why
