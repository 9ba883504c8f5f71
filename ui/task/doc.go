// Package task answers: how does slow work leave the window and how does its answer come back?
//
// Values go in, values come out. An [Order] has work, which runs away from the window's goroutine and must touch no widget,
// and a Show, which runs on it. Orders of one key replace each other: an older one is cancelled and its answer is never
// shown, however late it comes (the latest answer wins). An order may wait a moment for a newer one, so that typing does
// not start one valuation a key press. Long work reports how far it is with [Report] and stops when its context ends.
//
// [Queued] runs for the real window; [Inline] runs everything at once on the calling goroutine, for tests; [Held] keeps orders
// until the test lets them go, so that "still working", cancelling and late answers can be tested without a clock.
//
// A panic in work or in Show does not end the program: [Queued] hands it to its crash handler, and an order whose work
// panicked is shown [ErrCrashed]. [Guard] does the same for any callback of the window.
//
// [Ahead] begins what will surely be needed before it is asked for, while a program starts.
//
// [Until] leaves work behind that can't be told to stop, so that a disk that does not answer never holds the window's end up.
//
// This is the only package of the window with goroutines and fyne.Do.
//
// What it does not do: it limits no number of workers (the window has a handful of keys) and it stores nothing.
package task
