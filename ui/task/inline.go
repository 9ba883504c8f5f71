package task

import (
	"context"
	"strconv"
	"time"
)

// keyless names a job that shares its key with no other.
func keyless(number uint64) string { return "\x00" + strconv.FormatUint(number, 10) }

// Inline runs every job to its end inside Run, without waiting, on the calling goroutine. It is for tests: panics pass
// through.
type Inline struct{}

// Run works and shows.
func (Inline) Run(j Job) {
	if show := j.Work(withReport(context.Background(), j.Report)); show != nil {
		show()
	}
}

// Cancel finds nothing left to end.
func (Inline) Cancel(string) {}

// After calls then at once.
func (Inline) After(_ time.Duration, then func()) (stop func()) {
	then()
	return func() {}
}

// Held keeps jobs until Release, on the calling goroutine. It is for tests of what stands between start and answer.
type Held struct {
	last    uint64
	waiting []Job
}

// Run keeps the job, in place of an older one of its key.
func (h *Held) Run(j Job) {
	h.last++
	if j.Key == "" {
		j.Key = keyless(h.last)
	}
	h.Cancel(j.Key)
	h.waiting = append(h.waiting, j)
}

// Cancel forgets the job of the key.
func (h *Held) Cancel(key string) {
	for i, j := range h.waiting {
		if j.Key == key {
			h.waiting = append(h.waiting[:i:i], h.waiting[i+1:]...)
			return
		}
	}
}

// After keeps then as a job.
func (h *Held) After(wait time.Duration, then func()) (stop func()) {
	h.Run(Job{Wait: wait, Work: func(context.Context) func() { return then }})
	key := h.waiting[len(h.waiting)-1].Key
	return func() { h.Cancel(key) }
}

// Waiting returns how many jobs are kept.
func (h *Held) Waiting() int { return len(h.waiting) }

// Release runs every kept job, the oldest first, and those that they start.
func (h *Held) Release() {
	for len(h.waiting) > 0 {
		j := h.waiting[0]
		h.waiting = h.waiting[1:]
		Inline{}.Run(j)
	}
}
