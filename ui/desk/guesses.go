package desk

import (
	"context"
	"slices"
	"sync"
	"time"

	"walkline/store/book"
	"walkline/valuation/learn"
)

// pace is how long the Board stands, while lots are guessed, until it is shown again. Ours: reading 1,000 lots after every few took a
// quarter of the work.
const pace = 500 * time.Millisecond

// Unrated reports whether the Board lacks what is known of a lot: no answer, or a first guess of what it was before.
func Unrated(e book.Entry) bool {
	return tobid(e) && (e.Answer == nil || e.Answer.Stale && e.Answer.FirstGuess)
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

// next takes the lot that is wanted most.
func (w *Waiting) next() int64 {
	w.mu.Lock()
	defer w.mu.Unlock()
	id := w.ids[0]
	w.ids = w.ids[1:]
	return id
}

// Guess values the lots that wait, of which the Board shows no figures, by as many workers as the desk has, and keeps the answers; lots
// that can't be valued are passed over. It may run on any goroutine; seen is called now and then with the lots as they stand by then, one
// call at a time. Errors: the book can't be read or written, or the work was cancelled.
func (d *Desk) Guess(ctx context.Context, f learn.Factors, waiting *Waiting, seen func([]book.Entry)) error {
	r, err := d.NewRating(ctx, f)
	if err != nil {
		return err
	}
	var one sync.Mutex
	var told time.Time
	tell := func() error {
		entries, err := d.Book.Entries(ctx)
		if err == nil {
			seen(entries)
		}
		told = time.Now()
		return err
	}
	err = d.shared(len(waiting.ids), func() func(int) error {
		mine := *r
		mine.guesser = r.guesser.Beside()
		return func(int) error {
			if err := mine.note(ctx, waiting.next()); err != nil || !one.TryLock() {
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

// note values one lot and keeps the answer.
func (r *Rating) note(ctx context.Context, id int64) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	one, revision, err := r.Rate(ctx, id)
	if err != nil || one.Trouble != "" {
		return err
	}
	return r.desk.Book.NoteAnswer(ctx, id, revision, one.Answer)
}

// Guessed is the state with the Board as it stands after some first guesses.
func (s State) Guessed(entries []book.Entry) State {
	s.Entries = entries
	return s
}
