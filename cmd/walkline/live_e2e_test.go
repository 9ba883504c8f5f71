package main

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

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
	s := &screen{t: t, program: os.Getenv("WALKLINE_BIN"), store: filepath.Join(t.TempDir(), "lots.db"), pictures: os.Getenv("WALKLINE_PICTURES")}
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
	time.Sleep(3 * time.Second)
	s.picture("live-reopened")
	s.close()
}

// became checks what the store keeps of the one lot: what became of it, and its hammer price in minor units, 0 for none.
func (s *screen) became(state lot.State, hammer money.Amount) {
	s.t.Helper()
	time.Sleep(time.Second)
	book := s.open()
	defer book.Close()
	entries, err := book.Entries(context.Background())
	if err != nil || len(entries) != 1 {
		s.t.Fatal(len(entries), err)
	}
	b, err := book.Build(context.Background(), entries[0].ID)
	if err != nil {
		s.t.Fatal(err)
	}
	if entries[0].State != state || (b.Hammer == nil) != (hammer == 0) || b.Hammer != nil && *b.Hammer != hammer {
		s.t.Errorf("the store has the lot as %s, hammer price %v; want %s, %d", entries[0].State, b.Hammer, state, hammer)
	}
}
