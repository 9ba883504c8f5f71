package desk

import (
	"context"

	"walkline/store/book"
	"walkline/valuation/learn"
)

// reported is after how many lots the Board is shown again.
const reported = 4

// Unrated reports whether the Board lacks what is known of a lot: no answer, or a first guess of what it was before.
func Unrated(e book.Entry) bool {
	return tobid(e) && (e.Answer == nil || e.Answer.Stale && e.Answer.FirstGuess)
}

// Guess values lots that the Board shows no figures of, in the order given, and keeps the answers for it; lots that can't be valued are
// passed over. It may run on any goroutine; seen is called now and then with the lots as they stand by then. Errors: the book can't be read
// or written, or the work was cancelled.
func (d *Desk) Guess(ctx context.Context, f learn.Factors, ids []int64, seen func([]book.Entry)) error {
	r, err := d.NewRating(ctx, f)
	if err != nil {
		return err
	}
	for i, id := range ids {
		if err := ctx.Err(); err != nil {
			return err
		}
		one, revision, err := r.Rate(ctx, id)
		if err != nil {
			return err
		}
		if one.Trouble == "" {
			if err := d.Book.NoteAnswer(ctx, id, revision, one.Answer); err != nil {
				return err
			}
		}
		if i%reported == reported-1 || i == len(ids)-1 {
			entries, err := d.Book.Entries(ctx)
			if err != nil {
				return err
			}
			seen(entries)
		}
	}
	return nil
}

// Guessed is the state with the Board as it stands after some first guesses; one that has moved on meanwhile is read again.
func (s State) Guessed(entries []book.Entry) State {
	s.Entries = entries
	return s
}
