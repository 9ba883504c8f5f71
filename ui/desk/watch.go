package desk

import (
	"context"

	"walkline/store/book"
)

// Watched returns a context in which readings of tables, and the keeping of what is read, tell how far they are, 0..1. They stop once the
// context is done, and nothing is kept.
func Watched(ctx context.Context, hears func(done float64)) context.Context {
	return book.Watched(ctx, hears)
}

// reads is the share of taking a table in that its reading takes. Ours.
const reads = 0.3

// halves returns the contexts in which a table is read, and what is read is kept.
func halves(ctx context.Context) (reading, keeping context.Context) {
	return book.Part(ctx, 0, reads), book.Part(ctx, reads, 1)
}

// watched returns a sheet whose reading tells how far it is and stops once the context is done.
func (s Sheet) watched(ctx context.Context) Sheet {
	s.Watch = watch(ctx)
	return s
}

// Foreseen returns what a sheet gives as it is stated. It may run on any goroutine. Errors: the table can't be read so, or the reading was
// stopped.
func Foreseen(ctx context.Context, t Tables, s Sheet) (Preview, error) {
	return t.Preview(s.watched(ctx))
}

// watch returns what a reading is to tell.
func watch(ctx context.Context) func(done float64) (stop bool) {
	return func(done float64) bool {
		book.Tell(ctx, done)
		return ctx.Err() != nil
	}
}
