package desk

import "context"

// Kind is what a table is of.
type Kind string

// The kinds.
const (
	OfComparables Kind = "comparables"
	OfRunList     Kind = "run list"
	OfPastBuys    Kind = "past buys"
)

// Kinds are all of them.
var Kinds = []Kind{OfComparables, OfRunList, OfPastBuys}

// Likeliest returns what a table is most likely to be: the kind that a place takes, unless another knows more of its columns. It may run
// on any goroutine.
func (d *Desk) Likeliest(_ context.Context, data []byte, here Kind) Kind {
	if d.Look == nil {
		return here
	}
	found := d.Look(data)
	best := here
	for _, kind := range Kinds {
		if found[kind] > found[best] {
			best = kind
		}
	}
	return best
}
