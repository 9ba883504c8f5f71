package task

import (
	"context"
	"errors"
	"slices"
	"sync/atomic"
	"testing"
	"time"
)

// window stands in for the window's goroutine: it runs what is posted, one after the other, on the test's goroutine.
type window chan func()

func (w window) post(f func()) { w <- f }

// next runs one posted function.
func (w window) next(t *testing.T) {
	t.Helper()
	select {
	case f := <-w:
		f()
	case <-time.After(5 * time.Second):
		t.Fatal("nothing was posted to the window")
	}
}

// rest runs what is posted already.
func (w window) rest() {
	for {
		select {
		case f := <-w:
			f()
		default:
			return
		}
	}
}

func started(t *testing.T) (*Queued, window, *[]Crash) {
	t.Helper()
	w := make(window, 64)
	var crashes []Crash
	q := newQueued(func(c Crash) { crashes = append(crashes, c) }, w.post)
	t.Cleanup(q.Stop)
	return q, w, &crashes
}

func TestAnswerComesBackOnTheWindow(t *testing.T) {
	q, w, _ := started(t)
	got := 0
	Start(q, Order[int]{Key: "sum", Work: func(context.Context) (int, error) { return 3, nil }, Show: func(n int, err error) { got = n }})
	w.next(t)
	if got != 3 {
		t.Errorf("got %d", got)
	}
}

func TestErrorsAreShown(t *testing.T) {
	q, w, _ := started(t)
	fault := errors.New("line 17")
	var got error
	Start(q, Order[int]{Work: func(context.Context) (int, error) { return 0, fault }, Show: func(_ int, err error) { got = err }})
	w.next(t)
	if got != fault {
		t.Errorf("got %v", got)
	}
}

func TestLatestAnswerWins(t *testing.T) {
	q, w, _ := started(t)
	var shown []string
	begun, slow := make(chan struct{}), make(chan struct{})
	ended := make(chan error, 1)
	Start(q, Order[string]{Key: "value",
		Work: func(ctx context.Context) (string, error) {
			close(begun)
			<-slow
			ended <- ctx.Err()
			return "old", nil
		},
		Show: func(s string, _ error) { shown = append(shown, s) }})
	<-begun
	Start(q, Order[string]{Key: "value",
		Work: func(context.Context) (string, error) { return "new", nil },
		Show: func(s string, _ error) { shown = append(shown, s) }})
	w.next(t)
	close(slow)
	if err := <-ended; !errors.Is(err, context.Canceled) {
		t.Errorf("the older work saw %v", err)
	}
	q.working.Wait()
	w.rest()
	if !slices.Equal(shown, []string{"new"}) {
		t.Errorf("shown: %q", shown)
	}
}

func TestALateAnswerThatIsQueuedAlreadyIsDropped(t *testing.T) {
	q, w, _ := started(t)
	var shown []string
	order := func(s string) Order[string] {
		return Order[string]{Key: "value", Work: func(context.Context) (string, error) { return s, nil },
			Show: func(s string, _ error) { shown = append(shown, s) }}
	}
	Start(q, order("old"))
	q.working.Wait() // its answer lies in the window's queue now
	Start(q, order("new"))
	q.working.Wait()
	w.rest()
	if !slices.Equal(shown, []string{"new"}) {
		t.Errorf("shown: %q", shown)
	}
}

func TestKeysAndKeylessOrdersDoNotReplaceEachOther(t *testing.T) {
	q, w, _ := started(t)
	var shown []string
	for _, key := range []string{"a", "b", "", ""} {
		Start(q, Order[string]{Key: key, Work: func(context.Context) (string, error) { return key, nil },
			Show: func(s string, _ error) { shown = append(shown, s) }})
	}
	q.working.Wait()
	w.rest()
	slices.Sort(shown)
	if !slices.Equal(shown, []string{"", "", "a", "b"}) {
		t.Errorf("shown: %q", shown)
	}
}

func TestTypingIsDebounced(t *testing.T) {
	q, w, _ := started(t)
	var worked atomic.Int32
	got := 0
	for n := 1; n <= 5; n++ {
		Start(q, Order[int]{Key: "typing", Wait: 30 * time.Millisecond,
			Work: func(context.Context) (int, error) { worked.Add(1); return n, nil },
			Show: func(n int, _ error) { got = n }})
	}
	w.next(t)
	q.working.Wait()
	if got != 5 || worked.Load() != 1 {
		t.Errorf("got %d after %d runs, want 5 after 1", got, worked.Load())
	}
}

func TestCancelledWorkIsNotShown(t *testing.T) {
	q, w, _ := started(t)
	shown := false
	Start(q, Order[int]{Key: "import",
		Work: func(ctx context.Context) (int, error) { <-ctx.Done(); return 0, ctx.Err() },
		Show: func(int, error) { shown = true }})
	q.Cancel("import")
	q.working.Wait()
	w.rest()
	if shown {
		t.Error("cancelled work was shown")
	}
}

func TestReportsReachTheWindow(t *testing.T) {
	q, w, _ := started(t)
	var words []string
	Start(q, Order[int]{Key: "import",
		Work: func(ctx context.Context) (int, error) { Report(ctx, 0.5, "row 500 of 1,000"); return 1, nil },
		Report: func(done float64, s string) {
			if done == 0.5 {
				words = append(words, s)
			}
		},
		Show: func(int, error) { words = append(words, "done") }})
	w.next(t)
	w.next(t)
	if !slices.Equal(words, []string{"row 500 of 1,000", "done"}) {
		t.Errorf("reports: %q", words)
	}
}

func TestPanicInWorkIsHandedOver(t *testing.T) {
	q, w, crashes := started(t)
	var got error
	Start(q, Order[int]{Work: func(context.Context) (int, error) { panic("a hole") }, Show: func(_ int, err error) { got = err }})
	w.next(t)
	if !errors.Is(got, ErrCrashed) {
		t.Errorf("shown %v", got)
	}
	if len(*crashes) != 1 || (*crashes)[0].Value != "a hole" || len((*crashes)[0].Stack) == 0 {
		t.Errorf("crashes: %v", *crashes)
	}
}

func TestPanicInShowIsHandedOver(t *testing.T) {
	q, w, crashes := started(t)
	Start(q, Order[int]{Work: func(context.Context) (int, error) { return 1, nil }, Show: func(int, error) { panic("a hole") }})
	w.next(t)
	if len(*crashes) != 1 {
		t.Errorf("crashes: %v", *crashes)
	}
}

func TestPanicWithoutAHandlerIsNotSwallowed(t *testing.T) {
	w := make(window, 4)
	q := newQueued(nil, w.post)
	defer q.Stop()
	Start(q, Order[int]{Work: func(context.Context) (int, error) { return 1, nil }, Show: func(int, error) { panic("a hole") }})
	defer func() {
		if recover() == nil {
			t.Error("the panic was lost")
		}
	}()
	w.next(t)
}

func TestGuardHandsOver(t *testing.T) {
	var got []Crash
	Guard(func(c Crash) { got = append(got, c) }, func() { panic(7) })()
	if len(got) != 1 || got[0].Value != 7 {
		t.Errorf("crashes: %v", got)
	}
}

func TestAfterAndItsStop(t *testing.T) {
	q, w, _ := started(t)
	called, stopped := false, false
	q.After(time.Millisecond, func() { called = true })
	q.After(time.Hour, func() { stopped = true })()
	w.next(t)
	q.working.Wait()
	w.rest()
	if !called || stopped {
		t.Errorf("called %v, called though stopped %v", called, stopped)
	}
}

func TestStopEndsEverything(t *testing.T) {
	q, w, _ := started(t)
	shown := false
	show := func(int, error) { shown = true }
	Start(q, Order[int]{Wait: time.Hour, Work: func(context.Context) (int, error) { return 1, nil }, Show: show})
	q.Stop()
	Start(q, Order[int]{Work: func(context.Context) (int, error) { return 1, nil }, Show: show})
	w.rest()
	if shown {
		t.Error("shown after Stop")
	}
}

func TestInlineAnswersAtOnce(t *testing.T) {
	got := 0
	reported := false
	Start[int](Inline{}, Order[int]{Wait: time.Hour,
		Work:   func(ctx context.Context) (int, error) { Report(ctx, 1, "all"); return 4, nil },
		Report: func(float64, string) { reported = true },
		Show:   func(n int, _ error) { got = n }})
	if got != 4 || !reported {
		t.Errorf("got %d, reported %v", got, reported)
	}
}

func TestHeldKeepsTheLatest(t *testing.T) {
	h := &Held{}
	var shown []string
	for _, s := range []string{"old", "new"} {
		Start[string](h, Order[string]{Key: "value", Work: func(context.Context) (string, error) { return s, nil },
			Show: func(s string, _ error) { shown = append(shown, s) }})
	}
	Start[string](h, Order[string]{Key: "gone", Work: func(context.Context) (string, error) { return "gone", nil },
		Show: func(s string, _ error) { shown = append(shown, s) }})
	h.Cancel("gone")
	if h.Waiting() != 1 || len(shown) != 0 {
		t.Fatalf("%d waiting, shown %q", h.Waiting(), shown)
	}
	h.Release()
	if !slices.Equal(shown, []string{"new"}) {
		t.Errorf("shown %q", shown)
	}
}

func TestWorkAheadIsDoneOnceAndItsFaultIsTheCallers(t *testing.T) {
	var began atomic.Int32
	wait := Ahead(func() int { return int(began.Add(1)) })
	for range 2 {
		if n := wait(); n != 1 {
			t.Errorf("done %d times", n)
		}
	}
	defer func() {
		if v := recover(); v != "a fault" {
			t.Errorf("recovered %v", v)
		}
	}()
	Ahead(func() int { panic("a fault") })()
}
