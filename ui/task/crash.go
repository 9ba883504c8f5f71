package task

import "runtime/debug"

// Crash is a panic that was caught at the edge.
type Crash struct {
	Value any
	Stack []byte
}

// Guard returns f with its panics handed to crash instead of ending the program. A nil crash leaves f as it is.
func Guard(crash func(Crash), f func()) func() {
	if crash == nil {
		return f
	}
	return func() { caught(crash, f) }
}

// caught runs f and reports whether it panicked.
func caught(crash func(Crash), f func()) (panicked bool) {
	defer func() {
		if v := recover(); v != nil {
			panicked = true
			crash(Crash{Value: v, Stack: debug.Stack()})
		}
	}()
	f()
	return false
}
