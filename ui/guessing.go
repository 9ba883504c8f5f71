package ui

import (
	"context"
	"slices"
	"sync/atomic"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/task"
)

// guessing is the key of the first guesses: whatever is done in the window begins them anew, of what is still without.
const guessing = "guesses"

// guess has the lots of the Board that have no figures yet valued away from the window, those in sight first.
func (w *Window) guess() {
	ids := w.board.Unrated()
	if w.state.Place != desk.Board || len(ids) == 0 {
		w.runner.Cancel(guessing)
		w.tried = nil
		return
	}
	if slices.Equal(ids, w.tried) { // what is left cannot be valued
		return
	}
	factors, waits := w.state.Factors, desk.NewWaiting(ids)
	w.waits = waits
	var latest atomic.Pointer[[]book.Entry]
	task.Start(w.runner, task.Order[[]book.Entry]{Key: guessing, Wait: waiting,
		Work: func(ctx context.Context) ([]book.Entry, error) {
			err := w.desk.Guess(ctx, factors, waits, func(e []book.Entry) {
				latest.Store(&e)
				task.Report(ctx, 0, "")
			})
			if e := latest.Load(); e != nil {
				return *e, err
			}
			return nil, err
		},
		Report: func(float64, string) { w.show(w.state.Guessed(*latest.Load())) },
		Show: func(e []book.Entry, err error) {
			w.failed("make first guesses", err)
			if err == nil && e != nil {
				w.show(w.state.Guessed(e))
				w.tried = w.board.Unrated()
			}
		}})
}

// seek has the lots that came in sight on the Board guessed before the others.
func (w *Window) seek() {
	if w.waits != nil {
		w.waits.First(w.board.Unrated())
	}
}
