package main

import (
	"context"
	"fmt"
	"os"
	"testing"

	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// TestLiveToPastTheLimit enters a lot, lets the bidding run past its walk-away bid, records it as lost, takes that back, records it
// again, and finds it so after the window was closed and opened again.
func TestLiveToPastTheLimit(t *testing.T) {
	if os.Getenv("WALKLINE_E2E") == "" {
		t.Log("the window test runs under a virtual display: .ci/e2e")
		return
	}
	s := newScreen(t, "lots.db")
	s.start()
	s.enterLot()
	s.walkAway()
	s.keys("ctrl+l", "Up", "Up")
	s.picture("live-begun")
	s.typed("60k")
	s.became(lot.ToLookAt, 0)
	s.keys("Return")
	s.picture("live-stop")
	s.became(lot.ToLookAt, 0)
	s.keys("l")
	s.became(lot.Lost, 6_000_000)
	s.picture("live-lost")
	s.keys("ctrl+z")
	s.became(lot.ToLookAt, 0)
	s.keys("l")
	s.became(lot.Lost, 6_000_000)
	s.close()
	s.start()
	s.became(lot.Lost, 6_000_000)
	s.keys("Down", "ctrl+l")
	s.picture("live-reopened")
	s.close()
}

// became waits for what the store keeps of the one lot: what became of it, and its hammer price in minor units, 0 for none.
func (s *screen) became(state lot.State, hammer money.Amount) {
	s.t.Helper()
	s.until(fmt.Sprintf("the store has the lot as %s at %d", state, hammer), func() bool {
		book := s.open()
		defer book.Close()
		l, err := book.Lot(context.Background(), 1)
		if err != nil {
			s.t.Fatal(err)
		}
		paid := l.Build.Hammer
		return l.State == state && (paid == nil) == (hammer == 0) && (paid == nil || *paid == hammer)
	})
}
