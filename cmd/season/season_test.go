package main

import (
	"bytes"
	"strings"
	"testing"
)

// A short run: one seed gives one table, every buyer has a row, and the clairvoyant, who knows all that comes, makes most.
func TestSeasonsArePlayed(t *testing.T) {
	w, err := newWorld(12, 3)
	if err != nil {
		t.Fatal(err)
	}
	var tables [2]bytes.Buffer
	var years [][]year
	all := buyers()
	for i := range tables {
		if years, err = w.years(all, 4, 3); err != nil {
			t.Fatal(err)
		}
		table(&tables[i], all, years)
	}
	if tables[0].String() != tables[1].String() {
		t.Errorf("two runs of one seed differ:\n%s\n%s", &tables[0], &tables[1])
	}
	best := figuresOf(years[len(all)-1]).profit
	for i, b := range all {
		if !strings.Contains(tables[0].String(), b.name) || figuresOf(years[i]).profit > best {
			t.Errorf("%s makes %.0f, the clairvoyant %.0f", b.name, figuresOf(years[i]).profit, best)
		}
	}
	if run(&tables[0], 9, 9, 1) == nil {
		t.Error("too few seasons are played")
	}
}

// A lot bought for 3,000 that takes 1,500 and brings 6,000 leaves 1,500, whose cash is there on its day and not before.
func TestBooksOfALot(t *testing.T) {
	h := shop{cash: 5000}
	h.take(bought{300000, life{spent: 1500, back: 6000, hours: 30, days: 60, bays: 20}})
	if h.profit != 1500 || h.cash != 500 || h.waiting != 30 || h.month[1] != 1500 {
		t.Fatalf("%+v", h)
	}
	h.day = between
	if h.wake(); len(h.busy) != 0 || h.cash != 500 {
		t.Errorf("after %d days %+v", between, h)
	}
	h.day = 3 * between
	if h.wake(); h.cash != 6500 || h.waiting != 0 || h.ruined {
		t.Errorf("sold, yet %+v", h)
	}
}
