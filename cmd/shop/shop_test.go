package main

import (
	"bytes"
	"strings"
	"testing"

	"walkline/valuation/learn"
	"walkline/valuation/prob"
)

// A shop of 120 buys: its factors come nearer to the truth, claim no more than they hold, and its walk-away bids earn more
// on fresh lots than the starter values' do. The seed is fixed; the limits are those of a run of this size.
func TestTheShopLearns(t *testing.T) {
	const buys = 120
	s, err := newStudy(buys+100, 2)
	if err != nil {
		t.Fatal(err)
	}
	var few, many, chances nearness
	for range 4 {
		_, all := s.learned(s.shop(5))
		s.compare(all, &few, &chances)
		_, all = s.learned(s.shop(buys))
		s.compare(all, &many, &chances)
	}
	before, _ := few.rms()
	after, claimed := many.rms()
	if after > before/2 || after > 1.4*claimed || after < claimed/1.6 {
		t.Errorf("error %.3f after 5 buys, %.3f after %d, which claim %.3f", before, after, buys, claimed)
	}
	if in := share(many); in < 0.65 || in > 0.92 {
		t.Errorf("the 80 %% ranges hold %.0f %%", 100*in)
	}
	fresh, err := s.fresh(buys)
	if err != nil {
		t.Fatal(err)
	}
	learned, _ := s.learned(s.shop(buys))
	untuned, err := s.trade("starter values", learn.Factors{}, fresh)
	if err != nil {
		t.Fatal(err)
	}
	tuned, err := s.trade("tuned", learned, fresh)
	if err != nil {
		t.Fatal(err)
	}
	if tuned.profit <= untuned.profit || tuned.bought == 0 {
		t.Errorf("tuned bids earn %d, untuned %d", tuned.profit, untuned.profit)
	}
	for _, f := range tuned.record.Figures {
		for _, c := range f.Coverage { // a dozen of them: each may miss once in a thousand
			low, high := prob.ChanceRange(c.Inside, c.N, 0.999)
			if f.Key != "days" && (c.Level < low || c.Level > high) {
				t.Errorf("%s: the %.0f %% interval holds %.0f %%", f.Name, 100*c.Level, 100*c.Share)
			}
		}
	}
}

func TestARunIsTheSameTwice(t *testing.T) {
	var a, b bytes.Buffer
	for _, out := range []*bytes.Buffer{&a, &b} {
		if err := run(out, 12, 12, 1, 5); err != nil {
			t.Fatal(err)
		}
	}
	if a.String() != b.String() || !strings.Contains(a.String(), "knows the truth") {
		t.Errorf("two runs of one seed differ, or say too little:\n%s", a.String())
	}
	if err := run(&a, 1, 1, 0, 1); err == nil {
		t.Error("a shop without buys was played")
	}
}
