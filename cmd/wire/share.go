package wire

import (
	"errors"
	"runtime"
	"sync"
)

// Share does n pieces of work on every core, handed out in their order; see [desk.Desk.Share].
func Share(n int, begin func() (do func(piece int) error)) error {
	next, failed := make(chan int), make(chan struct{})
	errs := make([]error, min(n, runtime.GOMAXPROCS(0)))
	var fail sync.Once
	var busy sync.WaitGroup
	for w := range errs {
		busy.Go(func() {
			do := begin()
			for piece := range next {
				if errs[w] = do(piece); errs[w] != nil {
					fail.Do(func() { close(failed) })
					return
				}
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
	return errors.Join(errs...)
}
