package main

import (
	"fmt"
	"io"
	"math"

	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/money"
)

// approach writes how the learned factors come nearer to the truth as the buys grow, against what they claim themselves.
func (s *study) approach(out io.Writer, buys, shops int) {
	fmt.Fprintf(out, "Nearness to the truth, over %d shops: error (root mean square), what the proposals claim, and error / claim (1 is "+
		"honest)\n\n", shops)
	fmt.Fprintf(out, "%6s  %33s  %33s\n", "buys", "log ratios: error  claimed  ratio", "chances: error  claimed  ratio")
	var first float64
	for _, n := range stages(buys) {
		var ratios, chances nearness
		for range shops {
			_, all := s.learned(s.shop(n))
			s.compare(all, &ratios, &chances)
		}
		a, b := ratios.rms()
		c, d := chances.rms()
		if first == 0 {
			first = a
		}
		fmt.Fprintf(out, "%6d  %18.3f  %7.3f  %5.2f  %15.3f  %7.3f  %5.2f   error / that after %d buys %.2f; in its 80 %% range %.0f %% and "+
			"%.0f %%\n",
			n, a, b, a/b, c, d, c/d, stages(buys)[0], a/first, 100*share(ratios), 100*share(chances))
	}
}

func share(n nearness) float64 { return float64(n.inside) / math.Max(1, float64(n.n)) }

// stages are the numbers of buys after which the factors are looked at.
func stages(buys int) []int {
	var out []int
	for _, n := range []int{3, 10, 30, 100, 400, 1600} {
		if n < buys {
			out = append(out, n)
		}
	}
	return append(out, buys)
}

// intervals writes how often the intervals held on the fresh lots.
func intervals(out io.Writer, years []year) {
	fmt.Fprintf(out, "\nHow often intervals held on %d fresh lots, 50 / 80 / 90 %% (in brackets: the 95 %% range of the last), and score / "+
		"that of the starter values\n\n", years[0].record.Buys)
	for k, f := range years[0].record.Figures {
		if f.Key == "days" {
			continue // only its selling part is simulated
		}
		for _, y := range years {
			g := y.record.Figures[k]
			c := g.Coverage
			fmt.Fprintf(out, "%-26s %-18s %3.0f / %3.0f / %3.0f %%  (%3.0f to %3.0f %%)  score ratio %.2f\n", g.Name, y.name, 100*c[0].Share,
				100*c[1].Share, 100*c[2].Share,
				100*c[2].Low, 100*c[2].High, g.CRPS/f.CRPS)
		}
	}
}

// earnings writes what the walk-away bids earned.
func earnings(out io.Writer, years []year, lots int) {
	cur, _ := money.Lookup("USD")
	best := years[len(years)-1].profit
	fmt.Fprintf(out, "\nWhat the walk-away bids earned on the same %d lots, your hours paid\n\n%-18s %8s %10s %14s %12s %12s\n", lots, "",
		"bought", "at a loss", "profit", "a buy", "of the best")
	for _, y := range years {
		each := math.Max(1, float64(y.bought))
		fmt.Fprintf(out, "%-18s %8d %9.0f%% %14s %12s %12.2f\n", y.name, y.bought, 100*float64(y.lossy)/each, cur.Text(y.profit),
			cur.Whole(cur.Major(y.profit)/each), float64(y.profit)/float64(best))
	}
	fmt.Fprintf(out, "\nHeld back, as in the window: a factor from fewer than %d buys moves no open bid by two steps or more. All of it: "+
		"as when it is taken knowingly, which may earn less than the starter values.\n", learn.EnoughBuys)
}

// moves writes by how much the walk-away bids move after few buys and after many.
func (s *study) moves(out io.Writer, few, many learn.Factors, lots []sale) error {
	m := valuation.NewMemory()
	mean := func(f learn.Factors) (float64, error) {
		sum := 0.0
		for _, x := range lots {
			e, err := m.Compare(x.lot, s.know, learn.Factors{}, f)
			if err != nil {
				return 0, err
			}
			if e.Before != nil {
				sum += math.Abs(float64(e.Moved())) / float64(*e.Before) / float64(len(lots))
			}
		}
		return sum, nil
	}
	a, err := mean(few)
	if err != nil {
		return err
	}
	b, err := mean(many)
	fmt.Fprintf(out, "\nWalk-away bids move by %.0f %% of themselves after 3 buys, by %.0f %% after all of them: ratio %.2f\n", 100*a, 100*b,
		a/b)
	return err
}
