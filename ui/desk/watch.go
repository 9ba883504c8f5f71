package desk

import "context"

// watchKey is under what a context holds who hears how far a reading is.
type watchKey struct{}

// Watched returns a context in which readings of tables tell how far they are, 0..1. A reading stops once the context is done.
func Watched(ctx context.Context, hears func(done float64)) context.Context {
	return context.WithValue(ctx, watchKey{}, hears)
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
