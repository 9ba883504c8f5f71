package book

import (
	"time"

	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Lot is all that is kept of one lot.
type Lot struct {
	ID       int64
	Revision int64 // rises with every change of the case: what an answer is an answer to
	State    lot.State
	Archived bool
	Removed  bool // off every list; a removed lot keeps all that it has
	Case     valuation.Case
	Build    build.Build // what came of it; the zero value: nothing was entered
	Photos   []lot.Photo
}

// Clone returns a copy that shares nothing with the lot.
func (l Lot) Clone() Lot {
	l.Case, l.Build = l.Case.Clone(), l.Build.Clone()
	l.Photos = append([]lot.Photo(nil), l.Photos...)
	return l
}

// Entry is one lot as a list shows it.
type Entry struct {
	ID        int64
	State     lot.State
	Archived  bool
	Number    string
	Sale      string
	SaleDate  lot.Date
	ModelYear int
	Make      string
	Model     string
	Trim      string
	Currency  string
	Listed    *lot.Listed // what a run list says beside; nil: no list said anything
	Answer    *Summary    // nil: not valued yet
	Look
}

// Look is what the list may show of how a lot looks.
type Look struct {
	Odometer *int // nil: not known
	Unit     string
	Document string // of the title
	Brands   []string
	Damage   []lot.Damage
	Photo    *lot.Photo // the first one; nil: none
}

// Summary is what the last valuation of a lot said.
type Summary struct {
	Decision   string        // bid | do_not_bid
	WalkAway   *money.Amount // nil: no bid holds
	Binding    string
	LossChance float64
	MeanProfit float64  // major units
	PerHour    *float64 // major units; nil: no own hours
	Stale      bool     // the case was changed since
	Old        bool     // results, catalogues or factors changed since, and it waits to be made anew; never kept
	Said
}

// Answered says what an answer is of.
type Answered struct {
	Lot, Revision int64
	Rests         string // mark of what the answer rests on beside the lot; empty: not said
	Shift         *Shift // how far it moved since the last one of the same lot; nil: it did not
}

// Shift is a bid that moved because what it rests on changed.
type Shift struct {
	Was *money.Amount `json:"was"` // walk-away bid before; nil: none held
}

// Said is what else the list shows of an answer; an answer that an older version noted says nothing of it.
type Said struct {
	Plan         string   `json:"plan,omitempty"`          // with the highest bid
	WinChance    *float64 `json:"win_chance,omitempty"`    // nil: no guess of the hammer price
	ExpectedGain *float64 `json:"expected_gain,omitempty"` // major units; nil: as above
	Needs        []string `json:"needs,omitempty"`         // keys of what a bid still needs
	FirstGuess   bool     `json:"first_guess,omitempty"`   // nobody has looked at the lot
	LookWorth    *float64 `json:"look_worth,omitempty"`    // major units a minute of looking; nil: looked at, or not known
	Rests        string   `json:"rests,omitempty"`         // as in Answered
	Shift        *Shift   `json:"shift,omitempty"`         // as in Answered
}

// Listed is what a lot says of its vehicle and sale.
type Listed struct {
	ID    int64
	State lot.State
	Lot   lot.Lot
}

// Bought is one lot that was won or lost, with what was forecast of it and what came.
type Bought struct {
	ID        int64
	State     lot.State
	Archived  bool
	Number    string
	Sale      string
	SaleDate  lot.Date
	VIN       string
	ModelYear int
	Make      string
	Model     string
	Trim      string
	Loss      []string // what wrecked it; none: not entered
	Condition string   // running state
	Currency  string
	Build     build.Build
	Frozen    bool              // a prediction was frozen
	Foretold  *learn.Prediction // its figures, of the last one; nil: none were kept with it
}

// Ours reports whether the lot was bought.
func (b Bought) Ours() bool { return b.State != lot.Lost }

// Import is one past buy that was taken in from a table.
type Import struct {
	Lot     int64
	As      string // what its table calls it
	Row     string // fingerprint of the row as it was last taken in
	Removed bool   // it is off the list
}

// Prediction is what is frozen of a lot, whole and for good.
type Prediction struct {
	Case    valuation.Case
	Answer  valuation.Answer
	Figures learn.Prediction // figure by figure, to be held against what comes
}

// Decision is one step in the history of the learned factors.
type Decision struct {
	ID            int64     // given by the store
	At            time.Time // given by the store
	What          string    // Accepted | Refused | Restored
	Factor        string    // key of the proposal
	Words         string    // what the user was shown: old, new and the evidence
	Before, After learn.Factors
}

// What can be decided on a factor.
const (
	Accepted = "accepted"
	Refused  = "refused"
	Restored = "restored"
)
