package task

import (
	"context"
	"sync"
	"time"

	"fyne.io/fyne/v2"
)

// Queued is the runner of the real window: work on goroutines, answers queued to the window's.
type Queued struct {
	crash func(Crash)
	post  func(func())

	mu      sync.Mutex
	last    uint64
	current map[string]ticket // by key; keyless jobs get a key of their own
	stopped bool
	working sync.WaitGroup
}

// ticket is one run of a job.
type ticket struct {
	number uint64
	cancel context.CancelFunc
}

// NewQueued returns a runner that answers through fyne.Do. Panics go to crash, on the window's goroutine; without one they
// end the program, so that none is lost.
func NewQueued(crash func(Crash)) *Queued { return newQueued(crash, fyne.Do) }

func newQueued(crash func(Crash), post func(func())) *Queued {
	return &Queued{crash: crash, post: post, current: map[string]ticket{}}
}

// Run starts the job on a goroutine of its own after its wait. After Stop it does nothing.
func (q *Queued) Run(j Job) {
	ctx, t, ok := q.open(&j)
	if !ok {
		return
	}
	go func() {
		defer q.working.Done()
		defer t.cancel()
		if !waited(ctx, j.Wait) {
			return
		}
		if j.Report != nil {
			ctx = withReport(ctx, func(done float64, words string) {
				q.show(j.Key, t, false, func() { j.Report(done, words) })
			})
		}
		q.show(j.Key, t, true, q.worked(ctx, j))
	}()
}

// open replaces the job that holds the key.
func (q *Queued) open(j *Job) (context.Context, ticket, bool) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if q.stopped {
		return nil, ticket{}, false
	}
	q.last++
	if j.Key == "" {
		j.Key = keyless(q.last)
	}
	if old, ok := q.current[j.Key]; ok {
		old.cancel()
	}
	ctx, cancel := context.WithCancel(context.Background())
	t := ticket{q.last, cancel}
	q.current[j.Key] = t
	q.working.Add(1)
	return ctx, t, true
}

// worked does the work and returns what is to be shown: the answer, or the failure.
func (q *Queued) worked(ctx context.Context, j Job) (show func()) {
	if q.crash == nil {
		return j.Work(ctx)
	}
	var caughtCrash Crash
	keep := func(c Crash) { caughtCrash = c }
	if !caught(keep, func() { show = j.Work(ctx) }) {
		return show
	}
	return func() {
		q.crash(caughtCrash)
		if j.Failed != nil {
			j.Failed()
		}
	}
}

// show queues f for the window, where it runs only if its job still holds its key; last gives the key back.
func (q *Queued) show(key string, t ticket, last bool, f func()) {
	if f == nil {
		f = func() {}
	}
	q.post(func() {
		q.mu.Lock()
		holds := q.current[key].number == t.number
		if holds && last {
			delete(q.current, key)
		}
		q.mu.Unlock()
		if holds {
			Guard(q.crash, f)()
		}
	})
}

// Cancel ends the job of the key; it is not shown.
func (q *Queued) Cancel(key string) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if t, ok := q.current[key]; ok {
		t.cancel()
		delete(q.current, key)
	}
}

// After calls then on the window's goroutine when wait has passed.
func (q *Queued) After(wait time.Duration, then func()) (stop func()) {
	var key string
	j := Job{Wait: wait, Work: func(context.Context) func() { return then }}
	q.mu.Lock()
	q.last++
	key = keyless(q.last)
	q.mu.Unlock()
	j.Key = key
	q.Run(j)
	return func() { q.Cancel(key) }
}

// Stop cancels every job and returns when their work has ended. No answer is shown after it.
func (q *Queued) Stop() {
	q.mu.Lock()
	q.stopped = true
	for key, t := range q.current {
		t.cancel()
		delete(q.current, key)
	}
	q.mu.Unlock()
	q.working.Wait()
}

// waited waits and reports whether the context still stands.
func waited(ctx context.Context, wait time.Duration) bool {
	if wait <= 0 {
		return ctx.Err() == nil
	}
	timer := time.NewTimer(wait)
	defer timer.Stop()
	select {
	case <-ctx.Done():
		return false
	case <-timer.C:
		return ctx.Err() == nil
	}
}
