package main

import (
	"bytes"
	"math/rand/v2"
	"strings"
	"testing"

	"walkline/valuation/sale"
)

// On 300 drawn sales of 10 lots the grid, which stands in where a sale is too large, earns within 2 % of the exact program, and
// neither earns less than a rule of thumb. All are worked out over every course that a sale can take.
func TestGridIsNearlyExact(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	var exact, grid, order, rate float64
	worst := 1.0
	for i := range 300 {
		s := invented(rng, 10)
		if faults := s.Check(); len(faults) > 0 {
			t.Fatal(faults)
		}
		best := sale.New(s)
		s.Effort = 1
		rough := sale.New(s)
		if !best.Exact() || rough.Exact() {
			t.Fatal("not the programs that were asked for")
		}
		v, g := best.Follow(best), best.Follow(rough)
		o, r := best.Follow(sale.InOrder(s)), best.Follow(sale.ByReturn(s))
		if g < .98*v || g > v*(1+1e-9) {
			t.Errorf("sale %d: the grid earns %.2f of %.2f", i, g, v)
		}
		if o > g || r > g {
			t.Errorf("sale %d: a rule of thumb earns %.2f or %.2f, the grid %.2f", i, o, r, g)
		}
		worst = min(worst, g/v)
		exact, grid, order, rate = exact+v, grid+g, order+o, rate+r
	}
	t.Logf("of the exact program: the grid %.4f (at worst %.4f), walk-away bids in order %.3f, best return first %.3f",
		grid/exact, worst, order/exact, rate/exact)
}

// What is simulated is the value of following the grid, within its error.
func TestSimulatedValueHasItsError(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	outside := 0
	for range 40 {
		s := invented(rng, 10)
		s.Effort = 1
		p := sale.New(s)
		a := p.Answer()
		if a.Exact || !(a.Error > 0) {
			t.Fatalf("%+v", a)
		}
		if d := a.Expected - p.Follow(p); d < -2*a.Error || d > 2*a.Error {
			outside++
		}
	}
	if outside > 6 { // 2 of 40 are to be expected; 7 come about once in 200
		t.Errorf("%d of 40 outside two standard errors", outside)
	}
}

func TestSeasonsArePlayed(t *testing.T) {
	var out, again bytes.Buffer
	o := order{seasons: 2, sales: 2, seed: 1}
	if err := run(&out, o, []string{"5"}); err != nil {
		t.Fatal(err)
	}
	if err := run(&again, o, []string{"5"}); err != nil {
		t.Fatal(err)
	}
	after := func(b bytes.Buffer) string { _, rest, _ := strings.Cut(b.String(), "\n"); return rest }
	said := "5 lots: 2 seasons of 2 sales, 4 of 4 planned exactly"
	if after(out) != after(again) || !strings.Contains(out.String(), said) || strings.Count(out.String(), "ratio to the plan") != 5 {
		t.Errorf("%s\n%s", &out, &again)
	}
	for _, wrong := range []string{"0", "x", "1001"} {
		if run(&out, o, []string{wrong}) == nil {
			t.Errorf("%s lots are played", wrong)
		}
	}
}
