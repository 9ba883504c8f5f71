package store

import (
	"sync"

	"walkline/store/book"
	"walkline/valuation"
)

// recent is the case that was kept last, as it stands in the file at its revision, so that the next step of the same
// lot need not read it again: with 5,000 comparables that is most of a step. Another writer of the file raises the
// revision, and what is remembered no longer counts. What is remembered is never changed.
type recent struct {
	sync.Mutex
	lot, revision int64
	c             valuation.Case
}

// at returns the case of a lot at a revision, and whether it is the one remembered.
func (r *recent) at(lot, revision int64) (valuation.Case, bool) {
	r.Lock()
	defer r.Unlock()
	return r.c, r.lot == lot && r.revision == revision && lot != 0
}

// keep remembers the case of a lot.
func (r *recent) keep(l book.Lot) {
	r.Lock()
	defer r.Unlock()
	r.lot, r.revision, r.c = l.ID, l.Revision, l.Case
}
