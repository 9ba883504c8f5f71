package task

import (
	"context"
	"errors"
	"testing"
)

// Work that never ends holds a cancelled caller up no longer than until it is cancelled.
func TestUntilLeavesWorkBehind(t *testing.T) {
	never := make(chan int)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if n, err := Until(ctx, func() int { return <-never }); n != 0 || !errors.Is(err, context.Canceled) {
		t.Errorf("%d, %v", n, err)
	}
	if n, err := Until(t.Context(), func() int { return 7 }); n != 7 || err != nil {
		t.Errorf("%d, %v", n, err)
	}
	defer func() {
		if recover() != "torn" {
			t.Error("a panic was lost")
		}
	}()
	_, _ = Until(t.Context(), func() int { panic("torn") })
}
