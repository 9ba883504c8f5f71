package ui

import (
	"context"
	"slices"
	"sync/atomic"
	"time"

	"walkline/ui/desk"
	"walkline/ui/task"
)

// guessing is the key of the first guesses: whatever is done in the window begins them anew, of what is still without.
const guessing = "guesses"

// looking is how long the window stands idle until bids that have their figures are first held against what they rest on. Ours: it reads
// every build, and is no part of the start.
const looking = 2 * time.Second

// guess has the lots of the Board that have no figures yet, or those of before something was learned, valued away from the window, those in
// sight first.
func (w *Window) guess() {
	ids, lacking, due := w.board.ToBid(), w.board.Unrated(), w.state.GuessesDue()
	if w.state.Place != desk.Board || len(ids) == 0 || !due && len(lacking) == 0 {
		w.runner.Cancel(guessing)
		w.tried = nil
		return
	}
	if !due && slices.Equal(lacking, w.tried) { // what is left cannot be valued
		return
	}
	wait := waiting
	if !w.state.GuessesHeld() && (len(lacking) == 0 || slices.Equal(lacking, w.tried)) {
		wait = looking
	}
	factors, waits, teaching := w.state.Factors, desk.NewWaiting(ids), w.state.Teaching()
	w.waits = waits
	var latest atomic.Pointer[desk.Guesses]
	task.Start(w.runner, task.Order[*desk.Guesses]{Key: guessing, Wait: wait,
		Work: func(ctx context.Context) (*desk.Guesses, error) {
			err := w.desk.Guess(ctx, factors, waits, func(g desk.Guesses) {
				latest.Store(&g)
				task.Report(ctx, 0, "")
			})
			return latest.Load(), err
		},
		Report: func(float64, string) { w.show(w.state.Guessed(*latest.Load())) },
		Show: func(g *desk.Guesses, err error) {
			w.failed("value the lots of the Board", err)
			if err == nil && g != nil {
				w.show(w.state.GuessesChecked(teaching, *g))
				w.tried = w.board.Unrated()
			}
		}})
}

// seek has the lots that came in sight on the Board guessed before the others.
func (w *Window) seek() {
	if w.waits != nil {
		w.waits.First(w.board.ToBid())
	}
}
