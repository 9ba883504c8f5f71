package desk

import "context"

// watchKey is under what a context holds who hears how far a reading is.
type watchKey struct{}

// Watched returns a context in which readings of tables tell how far they are, 0..1. A reading stops once the context is done.
func Watched(ctx context.Context, hears func(done float64)) context.Context {
	return context.WithValue(ctx, watchKey{}, hears)
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
	hears, _ := ctx.Value(watchKey{}).(func(float64))
	return func(done float64) bool {
		if hears != nil {
			hears(done)
		}
		return ctx.Err() != nil
	}
}
