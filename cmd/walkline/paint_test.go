package main

import (
	"testing"
	"time"
)

// loop is a window's loop that comes round, or hangs.
type loop struct{ hangs bool }

func (l loop) After(wait time.Duration, then func()) func() {
	if !l.hangs {
		time.AfterFunc(wait, then)
	}
	return func() {}
}

func TestAWindowThatIsNeverPaintedIsNotWaitedForForever(t *testing.T) {
	told := make(chan bool, 1)
	awaitPaint(loop{hangs: true}, time.Millisecond, func() { told <- true }, func() { t.Error("painted, though the loop hangs") })
	<-told
	painted := make(chan bool, 1)
	t2 := awaitPaint(loop{}, time.Hour, func() { told <- true }, func() { painted <- true })
	<-painted
	if t2.Stop() {
		t.Error("the watch still runs, though the loop came round")
	}
}
