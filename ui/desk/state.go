package desk

import (
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/checks"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// State is all that the window shows. It is a value: an action makes the next one.
type State struct {
	Place       Place
	Section     string // of the Bench, in sight
	Entries     []book.Entry
	Open        *Open                // the lot on the worksheet; nil: none
	Reach       book.Reach           // what undo and redo would do where the user is
	Taken       book.Done            // what was taken back or done again last, to be shown
	Travels     int                  // grows with each of them
	Sought      string               // the key of what is to be entered next, in the case file
	Seeks       int                  // grows with each time that something is sought
	Clash       *Clash               // what was not kept because something else changed it; nil: nothing
	Factors     learn.Factors        // learned and in force
	Shop        Shop                 // what new lots begin with
	StarterShop Shop                 // and what that is before anyone changes it
	Packs       []checks.Pack        // the jurisdictions that the user added; the program's are in Starter
	Own         valuation.Own        // the shop's own entries of the catalogues
	OwnFaults   []valuation.Fault    // those of them that are not used, and why
	PackFaults  []valuation.Fault    // why the jurisdiction that was to be added was not
	Starter     *valuation.Knowledge // the starter's catalogues that the shop works with
	Know        *valuation.Knowledge // what lots are valued with: the starter's, and the shop's own over them
	Shelf       []book.Comparable    // of comparables, as it was last shown on the Bench
	Market      Market               // what the shelf teaches
	Keeping     Keeping              // where everything is kept
	Notice      string               // one sentence on what just happened
	Trouble     string               // one sentence on what went wrong, where, and what to do; empty: nothing

	StarterChanges []StarterChange // where the catalogues that ship differ from those in Starter, and nothing is decided
	edition        edition
	steps          tally

	Day      Agenda                        // the sale day that is planned
	Bought   []book.Bought                 // lots that were won or lost, as last read
	Build    *OpenBuild                    // the build that is shown; nil: the list of them
	Outlooks map[int64]valuation.Foresight // of the open builds; nil: not worked out since the list was read
	Record   *TrackRecord                  // the track record; nil: not worked out since something was decided

	rests   string // mark of what bids rest on, as last found; empty: not yet
	checked string // what of the state that was found for; empty: for none
}

// Open is the lot on the worksheet.
type Open struct {
	ID       int64
	State    lot.State
	Case     valuation.Case    // as it is kept, with the learned factors that are in force
	Faults   []valuation.Fault // why the case can't be valued yet
	Needs    []valuation.Need  // what a bid needs then beside them, as far as the catalogues tell
	Valued   *Valued           // the last valuation; nil: none yet
	Outline  *Valued           // work, risks and looks of a case that can't be valued since; nil: Valued has them
	Problem  string            // why it could not be valued
	Revision int               // grows with every change of what it is valued from
	Fresh    bool              // Valued is of this revision
	Photos   []lot.Photo
	Differs  []string // the groups of terms in which the case differs from the shop's
	Starters []string // the groups of terms that are still the starter's
	Yard     string   // the yard of the shop that the lot's sale means; empty: none
	Standing Standing
	Went     *money.Amount // what it was sold for, whoever bought it; nil: not known
	Current  money.Amount  // where the bidding stands, on the Live page; 0: not begun
	Asked    money.Amount  // the bid whose odds are asked for; 0: that of the answer
	Listed   *Listed       // what the text of its listing gave; nil: none was read, or it was taken back
	Moved    *Moved        // what moved the bid last, since the lot was opened; nil: nothing did
	Tried    []string      // the house rules that are left out for a try: nothing of it is kept
	Limits   *Limits       // what each house rule takes; nil: not worked out

	kept     book.Lot
	unread   []*Listed         // what listings gave whose steps are taken back, the last taken back last
	shelf    []book.Comparable // that its rows are drawn from
	outlined int               // the revision after that of Outline
	by       []string          // the steps since the last answer
	bid      *Seen             // of that answer; nil: none came since the lot was opened
	seen     *Seen             // the bid when the lot was last seen, in an earlier session or another opening; nil: never
}

// Valued is a valuation with what the window draws beside it.
type Valued struct {
	Of        valuation.Case // the case that was valued
	Answer    valuation.Answer
	Odds      valuation.Odds // at any bid, not only those of the answer
	Plan      []valuation.PlannedLine
	ByMileage []valuation.BandPoint
	ByYear    []valuation.BandPoint
}

// tally counts what steps changed since the start, so that what was worked out before one is told from what is.
type tally struct {
	all    int // of any kind, taken back and done again too
	builds int // what came of lots: prices, bills, hours, sales
	worth  int // lots and comparables, of whatever page
}

// after counts a step, or one taken back or done again.
func (n tally) after(done book.Done) tally {
	n.all++
	if slices.Contains(done.Parts, "build") {
		n.builds++
	}
	if len(done.Parts)+len(done.Shelf) > 0 {
		n.worth++
	}
	return n
}

// with returns the state with its open lot replaced.
func (s State) with(o Open) State {
	s.Open = &o
	return s
}

// said returns the state with a notice and no trouble.
func (s State) said(notice string) State {
	s.Notice, s.Trouble = notice, ""
	return s
}

// troubled returns the state with what went wrong; doing says what was being done.
func (s State) troubled(doing string, err error) State {
	s.Notice, s.Trouble = "", "Could not "+doing+": "+err.Error()
	return s
}

// Valued returns the state with a valuation that has come back. An answer to another lot or an older revision is
// dropped: the state is returned as it was.
func (s State) Valued(id int64, revision int, v Valued, err error) State {
	if s.Open == nil || s.Open.ID != id || s.Open.Revision != revision {
		return s
	}
	o := *s.Open
	if err != nil {
		o.Problem, o.Fresh = err.Error(), false
		return s.with(o)
	}
	o.Valued, o.Problem, o.Fresh, o.Outline = &v, "", true, nil
	return s.with(o)
}

// Outlined returns the state with an outline that has come back; one of another lot or an older revision is dropped.
func (s State) Outlined(id int64, revision int, v Valued, err error) State {
	if s.Open == nil || s.Open.ID != id || s.Open.Revision != revision || err != nil {
		return s
	}
	o := *s.Open
	o.Outline, o.outlined = &v, revision+1
	return s.with(o)
}

// Waits reports whether a lot that cannot be valued waits for its outline.
func (o Open) Waits() bool { return len(o.Faults) > 0 && o.outlined != o.Revision+1 }

// Worked returns the open lot as the pages of work, risks and looks show it: with the outline in the place of a valuation that is older.
func (o Open) Worked() Open {
	if o.Outline != nil {
		o.Valued = o.Outline
	}
	return o
}
