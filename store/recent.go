package store

import (
	"sync"

	"walkline/valuation"
)

// recent is the case that was saved last, as it stands in the file at its revision, so that the next save of the same
// lot need not read it again: with 5,000 comparables that is most of a save. Another writer of the file raises the
// revision, and what is remembered no longer counts.
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

// keep remembers a copy of a case.
func (r *recent) keep(lot, revision int64, c valuation.Case) {
	c = c.Clone()
	r.Lock()
	defer r.Unlock()
	r.lot, r.revision, r.c = lot, revision, c
}

// stored returns the case of a lot as the file has it, and its revision. Errors: [ErrNotFound].
func (s *Store) stored(p place) (valuation.Case, int64, error) {
	var revision int64
	if err := p.row(`SELECT revision FROM lots WHERE id = ? AND removed_at IS NULL`).Scan(&revision); err != nil {
		return valuation.Case{}, 0, err
	}
	if c, ok := s.recent.at(p.lot, revision); ok {
		return c, revision, nil
	}
	c, err := load(p)
	return c, revision, err
}
