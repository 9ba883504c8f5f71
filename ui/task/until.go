package task

import "context"

// Until returns the answer of work, or the error of ctx once that has ended: the work is left behind then. It is for what can't be told
// to stop, such as a call to a disk of a network that is gone. A panic in work is the caller's while the caller waits.
func Until[T any](ctx context.Context, work func() T) (T, error) {
	answered := make(chan func() T, 1)
	go func() {
		defer func() {
			if fault := recover(); fault != nil {
				answered <- func() T { panic(fault) }
			}
		}()
		answer := work()
		answered <- func() T { return answer }
	}()
	select {
	case answer := <-answered:
		return answer(), nil
	case <-ctx.Done():
		var none T
		return none, ctx.Err()
	}
}
