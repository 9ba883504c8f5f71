package desk

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"sync"
	"time"

	"walkline/store/book"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// pace is how long the Board stands, while lots are guessed, until it is shown again. Ours: reading 1,000 lots after every few took a
// quarter of the work.
const pace = 500 * time.Millisecond

// Unrated reports whether the Board lacks what is known of a lot: no answer, or one to what it was before.
func Unrated(e book.Entry) bool {
	return ToBid(e) && (e.Answer == nil || e.Answer.Stale)
}

// ToBid reports whether a lot is still to be bid for.
func ToBid(e book.Entry) bool {
	return !e.Archived && (e.State == lot.ToLookAt || e.State == lot.LookedAt || e.State == lot.Bid)
}

// outdated reports whether a lot is unrated, or its bid rests on something else.
func outdated(e book.Entry, rests string) bool {
	return Unrated(e) || ToBid(e) && rests != "" && e.Answer.Rests != rests
}

// Unrated reports whether the Board lacks what is known of a lot, or its bid is known to rest on what has changed since.
func (s State) Unrated(e book.Entry) bool { return outdated(e, s.rests) }

// Teaching marks what bids may rest on, as far as it is known without reading: it differs wherever they may have to be made anew.
func (s State) Teaching() string { return mark(s.steps.all, s.Factors, s.Market.Markets) }

// GuessesDue reports whether something was kept since bids were last held against what they rest on.
func (s State) GuessesDue() bool { return s.checked != s.Teaching() }

// GuessesHeld reports whether they ever were since the start.
func (s State) GuessesHeld() bool { return s.checked != "" }

// restsNow is the mark of what first guesses rest on; empty where something was kept since it was found.
func (s State) restsNow() string {
	if s.GuessesDue() {
		return ""
	}
	return s.rests
}

// Waiting are lots that wait for a first guess. It may be used on any goroutine.
type Waiting struct {
	// Pace is how long the Board stands at least until it is shown again; 0: it is after every lot.
	Pace time.Duration

	mu  sync.Mutex
	ids []int64
}

// NewWaiting returns lots that wait, in the order in which they are wanted.
func NewWaiting(ids []int64) *Waiting { return &Waiting{Pace: pace, ids: slices.Clone(ids)} }

// First has those of the lots that still wait come first, in that order.
func (w *Waiting) First(ids []int64) {
	w.mu.Lock()
	defer w.mu.Unlock()
	waits := map[int64]bool{}
	for _, id := range w.ids {
		waits[id] = true
	}
	var order []int64
	for _, id := range slices.Concat(ids, w.ids) {
		if waits[id] {
			order, waits[id] = append(order, id), false
		}
	}
	w.ids = order
}

// only leaves those that are wanted.
func (w *Waiting) only(wanted func(int64) bool) int {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.ids = slices.DeleteFunc(w.ids, func(id int64) bool { return !wanted(id) })
	return len(w.ids)
}

// next takes the lot that is wanted most.
func (w *Waiting) next() int64 {
	w.mu.Lock()
	defer w.mu.Unlock()
	id := w.ids[0]
	w.ids = w.ids[1:]
	return id
}

// Guesses are the lots of the Board after some first guesses.
type Guesses struct {
	Entries []book.Entry
	Moved   []string // numbers of the lots whose guess was made anew and moved
	rests   string
}

// Guess values those of the lots that wait which have no figures on the Board, or a bid that rests on what has changed since, by as
// many workers as the desk has, and keeps the answers; lots that can't be valued are passed over. It may run on any goroutine; seen is
// called now and then with the lots as they stand by then, one call at a time. Errors: the book can't be read or written, or the work was
// cancelled.
func (d *Desk) Guess(ctx context.Context, f learn.Factors, waiting *Waiting, seen func(Guesses)) error {
	r, err := d.NewRating(ctx, f)
	if err != nil {
		return err
	}
	entries, err := d.Book.Entries(ctx)
	if err != nil {
		return err
	}
	before := map[int64]book.Entry{}
	for _, e := range entries {
		if outdated(e, r.rests) {
			before[e.ID] = e
		}
	}
	n := waiting.only(func(id int64) bool { _, is := before[id]; return is })
	var one sync.Mutex
	var told time.Time
	tell := func() error {
		entries, err := d.Book.Entries(ctx)
		if err == nil {
			seen(Guesses{entries, movedSince(entries, before), r.rests})
		}
		told = time.Now()
		return err
	}
	if n > 0 {
		if err := tell(); err != nil {
			return err
		}
	}
	err = d.shared(n, func() func(int) error {
		mine := *r
		mine.guesser = r.guesser.Beside()
		return func(int) error {
			if err := mine.note(ctx, before[waiting.next()]); err != nil || !one.TryLock() {
				return err
			}
			defer one.Unlock()
			if time.Since(told) < waiting.Pace {
				return nil
			}
			return tell()
		}
	})
	if err != nil {
		return err
	}
	return tell()
}

// movedSince returns the numbers of the lots whose first guess has moved.
func movedSince(entries []book.Entry, before map[int64]book.Entry) (numbers []string) {
	for _, e := range entries {
		if was, is := before[e.ID]; is && e.Answer != nil && e.Answer.Shift != nil && (was.Answer == nil || was.Answer.Rests != e.Answer.Rests) {
			numbers = append(numbers, e.Number)
		}
	}
	return numbers
}

// note values one lot and keeps the answer, with what it was where it rested on something else.
func (r *Rating) note(ctx context.Context, before book.Entry) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	one, revision, err := r.Rate(ctx, before.ID)
	if err != nil || one.Trouble != "" {
		return err
	}
	of := book.Answered{Lot: before.ID, Revision: revision, Rests: r.rests}
	if was := before.Answer; was != nil && !was.Stale && was.Rests != "" && !sameBid(was.WalkAway, one.Answer.WalkAway) {
		of.Shift = &book.Shift{Was: was.WalkAway}
	}
	return r.desk.Book.NoteAnswer(ctx, of, one.Answer)
}

// Guessed is the state with the Board as it stands after some bids; those that rest on what has changed since are marked.
func (s State) Guessed(g Guesses) State {
	s.Entries, s.rests = slices.Clone(g.Entries), g.rests
	for i, e := range s.Entries {
		if e.Answer != nil && !e.Answer.Stale && outdated(e, g.rests) {
			a := *e.Answer
			a.Old, s.Entries[i].Answer = true, &a
		}
	}
	return s
}

// GuessesChecked is the state once all first guesses rest on what there was at [State.Teaching]; those that moved are said.
func (s State) GuessesChecked(teaching string, g Guesses) State {
	s = s.Guessed(g)
	if s.checked = teaching; len(g.Moved) > 0 {
		more := ""
		if n := len(g.Moved) - mostStayed; n > 0 {
			more = fmt.Sprintf(" and %d more", n)
		}
		s = s.said("Bids moved with what they rest on: " + strings.Join(g.Moved[:min(len(g.Moved), mostStayed)], ", ") + more + ".")
	}
	return s
}
