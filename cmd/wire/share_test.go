package wire

import (
	"errors"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
)

// The first failure ends the work and is the answer; all pieces are done where none fails, and no worker begins without one.
func TestSharedWork(t *testing.T) {
	var done, begun atomic.Int64
	broken := errors.New("broken")
	begin := func(at int) func() func(int) error {
		return func() func(int) error {
			begun.Add(1)
			return func(piece int) error {
				if done.Add(1); piece == at {
					return broken
				}
				return nil
			}
		}
	}
	if err := Share(100, begin(-1)); err != nil || done.Load() != 100 {
		t.Errorf("%v after %d of 100", err, done.Load())
	}
	done.Store(0)
	if err := Share(100_000, begin(10)); !errors.Is(err, broken) || done.Load() > 50_000 {
		t.Errorf("%v after %d", err, done.Load())
	}
	begun.Store(0)
	if err := Share(0, begin(-1)); err != nil || begun.Load() != 0 {
		t.Errorf("%v, %d begun for nothing", err, begun.Load())
	}
}

// A panic in one piece reaches the caller, where the window keeps it from ending the program, and names where it began.
func TestAPanicInSharedWorkIsTheCallers(t *testing.T) {
	done := 0
	var one sync.Mutex
	fault := func() (fault any) {
		defer func() { fault = recover() }()
		err := Share(100_000, func() func(int) error {
			return func(piece int) error {
				one.Lock()
				defer one.Unlock()
				if done++; piece == 10 {
					panic("broken piece")
				}
				return nil
			}
		})
		t.Error("it returned", err)
		return nil
	}()
	words, _ := fault.(string)
	if !strings.HasPrefix(words, "broken piece\n") || !strings.Contains(words, "share_test.go") || done > 50_000 {
		t.Errorf("%v after %d", fault, done)
	}
}
