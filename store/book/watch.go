package book

import "context"

// watchKey is under what a context holds who hears how far work is.
type watchKey struct{}

// Watched returns a context in which work tells how far it is, 0..1.
func Watched(ctx context.Context, hears func(done float64)) context.Context {
	return context.WithValue(ctx, watchKey{}, hears)
}

// Part returns a context in which a part of the work tells how far it is, where all of it begins and ends at from and to of the whole.
func Part(ctx context.Context, from, to float64) context.Context {
	return Watched(ctx, func(done float64) { Tell(ctx, from+(to-from)*done) })
}

// Tell tells whoever watches how far the work is; nobody may.
func Tell(ctx context.Context, done float64) {
	if hears, _ := ctx.Value(watchKey{}).(func(float64)); hears != nil {
		hears(done)
	}
}
