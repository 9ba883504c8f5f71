package task

import (
	"context"
	"errors"
	"time"
)

// ErrCrashed is what an order shows when its work panicked; the crash handler has the details.
var ErrCrashed = errors.New("the work stopped on a fault in the program")

// Runner runs jobs. It is declared here, beside its implementations, because pages use it through [Start].
type Runner interface {
	// Run starts a job and returns at once, or after it (Inline).
	Run(Job)
	// Cancel ends the job of the key, waiting or at work: it is never shown.
	Cancel(key string)
	// After calls then on the window's goroutine when wait has passed, unless stopped before.
	After(wait time.Duration, then func()) (stop func())
}

// Job is an order without its types; use [Start].
type Job struct {
	Key    string
	Wait   time.Duration
	Work   func(ctx context.Context) (show func()) // away from the window
	Failed func()                                  // shown instead when Work panicked; may be nil
	Report func(done float64, words string)        // may be nil
}

// Order is a piece of work whose answer is a T.
type Order[T any] struct {
	Key    string                               // a newer order of the same key replaces this one; empty: none does
	Wait   time.Duration                        // time for a newer order to come before work starts
	Work   func(ctx context.Context) (T, error) // away from the window: values only, no widget
	Show   func(answer T, err error)            // on the window's goroutine
	Report func(done float64, words string)     // on the window's goroutine; may be nil
}

// Start gives the order to the runner.
func Start[T any](r Runner, o Order[T]) {
	r.Run(Job{
		Key: o.Key, Wait: o.Wait, Report: o.Report,
		Work: func(ctx context.Context) func() {
			answer, err := o.Work(ctx)
			return func() { o.Show(answer, err) }
		},
		Failed: func() {
			var none T
			o.Show(none, ErrCrashed)
		},
	})
}

type reportKey struct{}

// Report tells the window how far the work is: done 0..1, and in words what it is doing. Without a listener it does
// nothing.
func Report(ctx context.Context, done float64, words string) {
	if f, ok := ctx.Value(reportKey{}).(func(float64, string)); ok {
		f(done, words)
	}
}

func withReport(ctx context.Context, f func(float64, string)) context.Context {
	if f == nil {
		return ctx
	}
	return context.WithValue(ctx, reportKey{}, f)
}
