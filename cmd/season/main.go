package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
)

func main() {
	seasons := flag.Int("seasons", 1000, "seasons that every buyer plays")
	lots := flag.Int("lots", 240, "lots of the pool that the sales draw from")
	seed := flag.Uint64("seed", 1, "of all that is drawn")
	flag.Parse()
	if err := run(os.Stdout, *seasons, *lots, *seed); err != nil {
		fmt.Fprintln(os.Stderr, "season:", err)
		os.Exit(1)
	}
}

// prices are what is tried for a bay (the plan) and, divided, for a day in one (the clairvoyant).
var prices = []float64{0, 400, 800, 1600}

// bayDays is how many days a bay is taken for on the whole: it turns the price of a bay into that of a day.
const bayDays = 50

// run plays the seasons and writes what they show.
func run(out io.Writer, seasons, lots int, seed uint64) error {
	if seasons < 10 || lots < 10 {
		return fmt.Errorf("at least 10 seasons and 10 lots, not %d and %d", seasons, lots)
	}
	w, err := newWorld(lots, seed)
	if err != nil {
		return err
	}
	all := buyers()
	if err := w.tune(all, max(5, seasons/40), seed+1); err != nil {
		return err
	}
	years, err := w.years(all, seasons, seed)
	if err != nil {
		return err
	}
	table(out, all, years)
	return nil
}

// years plays the seasons with each buyer.
func (w *world) years(all []buyer, seasons int, seed uint64) ([][]year, error) {
	years := make([][]year, len(all))
	for n := range seasons {
		s := w.season(seed, uint64(n))
		for i, b := range all {
			y, err := b.play(s)
			if err != nil {
				return nil, err
			}
			years[i] = append(years[i], y)
		}
	}
	return years, nil
}

// tune gives each buyer who plans, and the clairvoyant, the price that does best on seasons of their own.
func (w *world) tune(all []buyer, seasons int, seed uint64) error {
	for i := range all {
		b := &all[i]
		if !b.plan && !b.clairvoyant {
			continue
		}
		var sums []float64
		for _, price := range prices {
			trial, sum := *b, 0.0
			if trial.price = price; b.clairvoyant {
				trial.price = price / bayDays
			}
			for n := range seasons {
				y, err := trial.play(w.season(seed, uint64(n)))
				if err != nil {
					return err
				}
				sum += y.profit
			}
			sums = append(sums, sum)
		}
		if b.price = prices[slices.Index(sums, slices.Max(sums))]; b.clairvoyant {
			b.price /= bayDays
		}
	}
	return nil
}
