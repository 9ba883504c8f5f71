package main

import (
	"flag"
	"fmt"
	"io"
	"os"

	"walkline/valuation/learn"
)

func main() {
	buys := flag.Int("buys", 400, "lots that the shop buys before it is judged")
	fresh := flag.Int("fresh", 300, "lots that it is judged on")
	shops := flag.Int("shops", 8, "shops over whose luck the errors are averaged")
	seed := flag.Uint64("seed", 1, "of all that is drawn")
	flag.Parse()
	if err := run(os.Stdout, *buys, *fresh, *shops, *seed); err != nil {
		fmt.Fprintln(os.Stderr, "shop:", err)
		os.Exit(1)
	}
}

// run plays the simulation and writes what it shows.
func run(out io.Writer, buys, fresh, shops int, seed uint64) error {
	if buys < 10 || fresh < 10 || shops < 1 {
		return fmt.Errorf("at least 10 buys, 10 fresh lots and 1 shop, not %d, %d and %d", buys, fresh, shops)
	}
	s, err := newStudy(buys+fresh, seed)
	if err != nil {
		return err
	}
	s.approach(out, buys, shops)
	lots, err := s.fresh(buys)
	if err != nil {
		return err
	}
	three := s.shop(3)
	few, _ := s.learned(three)
	held, err := s.held(three, lots)
	if err != nil {
		return err
	}
	many, _ := s.learned(s.shop(buys))
	past, err := s.tabled(s.shop(buys))
	if err != nil {
		return err
	}
	tabled, _ := s.learned(past)
	var years []year
	for _, b := range []struct {
		name    string
		factors learn.Factors
	}{{"starter values", learn.Factors{}}, {"3 buys, held back", held}, {"3 buys, all of it", few},
		{"from a table alone", tabled}, {fmt.Sprintf("after %d buys", buys), many},
		{"knows the truth", s.truth.Factors}} {
		y, err := s.trade(b.name, b.factors, lots)
		if err != nil {
			return err
		}
		years = append(years, y)
	}
	intervals(out, years)
	earnings(out, years, len(lots))
	reached(out, years[0], years[3], years[4])
	return s.moves(out, few, many, lots)
}
