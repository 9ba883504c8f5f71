package main

import (
	"os"
	"os/exec"
	"testing"

	"walkline/valuation/lot"
)

// TestASaleByKeyboard goes from the first look to the hammer without the mouse but for one dropped file: a new lot, its
// damage, comparables, a line of its own, undo, the bidding to past the limit, lost; then closes, opens again and finds it so.
func TestASaleByKeyboard(t *testing.T) {
	if os.Getenv("WALKLINE_E2E") == "" {
		t.Log("the window test runs under a virtual display: .ci/e2e")
		return
	}
	s := newScreen(t, "sale.db")
	s.start()
	s.keys("ctrl+n", "ctrl+1")
	s.typed("2018\tKettrick\tDunlin\tPlus\t\t83,900")
	s.salvage()
	s.keys("ctrl+2")
	s.typed("2b") // 12 front: functional, bolted
	s.drop("../../assets/demo/comps_side.csv")
	s.settled("sale-dropped")
	s.keys("Return")
	s.until("the file gives 29 comparables", func() bool { return s.onTheShelf() == 29 })
	s.editALine()
	bid := s.walkAway()
	s.pastTheLimit()
	s.close()
	s.start()
	again := s.picture("sale-reopened")
	s.became(lot.Lost, 2_000_000)
	if got := s.walkAway(); got != bid {
		t.Errorf("opened again, the bid is %d, it was %d", got, bid)
	}
	if blank(again) {
		t.Error("the Board shows nothing")
	}
	s.close()
}

// onTheShelf counts the comparables that the store keeps.
func (s *screen) onTheShelf() int {
	book := s.open()
	defer book.Close()
	rows, err := book.Shelf(s.t.Context())
	if err != nil {
		s.t.Fatal(err)
	}
	return len(rows)
}

// editALine goes to the first line's fields by Enter, changes its name and takes that back.
func (s *screen) editALine() {
	s.walkAway() // the lines stand there with it
	lines := len(s.lotCase().Repair.Lines)
	s.keys("ctrl+3", "Down", "Return", "End")
	s.typed("s")
	s.until("typing in a line gives one of one's own", func() bool { return len(s.lotCase().Repair.Lines) == lines+1 })
	s.picture("sale-line")
	s.keys("ctrl+z")
	s.until("undo takes the line of one's own back", func() bool { return len(s.lotCase().Repair.Lines) == lines })
}

// pastTheLimit lets the bidding run to 20,000 and records the lot as lost there.
func (s *screen) pastTheLimit() {
	s.keys("ctrl+l", "Up", "Up")
	s.typed("20k")
	s.keys("Return")
	s.picture("sale-past")
	s.keys("l")
	s.became(lot.Lost, 2_000_000)
	s.picture("sale-lost")
}

// drop drops a file on the window.
func (s *screen) drop(path string) {
	if out, err := exec.Command("/usr/bin/python3", "testdata/drop.py", path).CombinedOutput(); err != nil {
		s.t.Fatalf("dropping %s: %v %s", path, err, out)
	}
}
