package task

// Ahead begins work at once, away from the caller, and returns what waits for its answer: for what will surely be needed, while something
// else is under way. The work must touch no widget. A panic in it is the caller's, when it asks.
func Ahead[T any](work func() T) (wait func() T) {
	type end struct {
		answer T
		fault  any
	}
	ended := make(chan end, 1)
	go func() {
		var e end
		defer func() {
			e.fault = recover()
			ended <- e
		}()
		e.answer = work()
	}()
	var all end
	asked := false
	return func() T {
		if !asked {
			asked, all = true, <-ended
		}
		if all.fault != nil {
			panic(all.fault)
		}
		return all.answer
	}
}
