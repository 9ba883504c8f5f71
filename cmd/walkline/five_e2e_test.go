package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// mostActions is the greatest count from the first start to a bid. Ours: what the first five minutes may take of a new user's hands.
const mostActions = 40

// hands counts what a user does: a chord of keys, a text typed into a field, a press of a key that chooses, one each.
type hands struct {
	*screen
	done []string
}

func (h *hands) press(keys ...string) {
	h.done = append(h.done, keys...)
	h.keys(keys...)
}

func (h *hands) write(text string) {
	h.done = append(h.done, "typed: "+text)
	h.typed(text)
}

// TestFiveMinutesByKeyboard goes from the first start with an empty book to a bid for a new lot with comparables from a messy table, by
// keyboard alone, and counts what it takes.
func TestFiveMinutesByKeyboard(t *testing.T) {
	if os.Getenv("WALKLINE_E2E") == "" {
		t.Log("the window test runs under a virtual display: .ci/e2e")
		return
	}
	h := &hands{screen: &screen{t: t, program: os.Getenv("WALKLINE_BIN"), store: filepath.Join(t.TempDir(), "five.db"),
		pictures: os.Getenv("WALKLINE_PICTURES")}}
	table, err := filepath.Abs("testdata/messy.csv")
	if err != nil {
		t.Fatal(err)
	}
	h.start()
	began := time.Now()
	h.press("ctrl+n")
	h.settled("five-new")
	h.write("2017 Ostrane Pell S 2.0L, 61,200 miles, salvage title, front end damage, runs and drives, no keys")
	h.press("Return")
	h.until("the listing is read", func() bool {
		c := h.lotCase()
		return c.Lot.Model == "Pell" && c.Lot.Title.Document == "salvage" && len(c.Damage) == 1 && c.Lot.Keys != nil
	})
	h.picture("five-read")
	h.press("ctrl+i")
	h.settled("five-asked")
	h.write(table)
	h.press("Return")
	h.settled("five-table")
	h.press("Return")
	h.until("the table gives comparables", func() bool { return h.onTheShelf() == 10 })
	bid := h.walkAway()
	h.picture("five-bid")
	t.Logf("%d actions, %v of it waiting for the program and for this test: %s", len(h.done), time.Since(began).Round(time.Second),
		strings.Join(h.done, " · "))
	if len(h.done) > mostActions {
		t.Errorf("%d actions to a bid, %d at most", len(h.done), mostActions)
	}
	if bid <= 0 {
		t.Errorf("the bid is %d", bid)
	}
	h.close()
}
