package wire

import (
	"errors"
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
)

// Share does n pieces of work on every core, handed out in their order; see [desk.Desk.Share]. A panic in a piece ends the work as a
// failure does, and is the caller's, with the stack of where it began.
func Share(n int, begin func() (do func(piece int) error)) error {
	next, failed := make(chan int), make(chan struct{})
	errs := make([]error, min(n, runtime.GOMAXPROCS(0)))
	var fail sync.Once
	var busy sync.WaitGroup
	for w := range errs {
		busy.Go(func() {
			if errs[w] = each(next, begin); errs[w] != nil {
				fail.Do(func() { close(failed) })
			}
		})
	}
	for piece := range n {
		select {
		case next <- piece:
			continue
		case <-failed:
		}
		break
	}
	close(next)
	busy.Wait()
	err := errors.Join(errs...)
	if broken, panicked := errors.AsType[panicking](err); panicked {
		panic(broken.words)
	}
	return err
}

// each does pieces one after the other until one fails or panics.
func each(pieces <-chan int, begin func() (do func(piece int) error)) (err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = panicking{fmt.Sprintf("%v\n\n%s", fault, debug.Stack())}
		}
	}()
	do := begin()
	for piece := range pieces {
		if err := do(piece); err != nil {
			return err
		}
	}
	return nil
}

// panicking is a panic on its way to the caller.
type panicking struct{ words string }

func (p panicking) Error() string { return p.words }
