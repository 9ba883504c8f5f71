// Package live answers, in front of a running sale: how far is the bidding from where I walk away, and what would this bid bring?
//
// The page is black on white in every look and as large as its room, to be read across a room. It shows where the bidding stands,
// the walk-away bid, or today's bid where the plan of the day sets a lower one, the steps between them, and the odds at the bidding; past
// that bid, and for a lot that must not be bid for, it says STOP. A figure that is not of the lot as it stands is a dash.
//
// Everything is done by keyboard: arrows step by the sale's own bid steps, digits type a price that Enter takes, W and L record the
// lot as won or lost at the current bid (L without one too), X as passed or withdrawn, N and P go to the next and the previous lot of the
// sale, G to the lot whose number is typed then. What is typed is only shown: the page bids nothing, and only W, L and X keep anything,
// which undo takes back.
//
// It computes nothing: the words and figures are those of package view.
package live
