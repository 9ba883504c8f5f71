package main

import (
	"flag"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"time"

	"walkline/valuation/sale"
)

func main() {
	o := order{}
	flag.IntVar(&o.seasons, "seasons", 20, "seasons of each length of run list")
	flag.IntVar(&o.sales, "sales", 12, "sales of a season")
	flag.Uint64Var(&o.seed, "seed", 1, "of all that is drawn")
	lots := flag.String("lots", "10,40,150", "lengths of the run list")
	flag.Parse()
	if err := run(os.Stdout, o, strings.Split(*lots, ",")); err != nil {
		fmt.Fprintln(os.Stderr, "sale:", err)
		os.Exit(1)
	}
}

type order struct {
	seasons, sales int
	seed           uint64
}

// run plays the seasons of each length and writes what they show.
func run(out io.Writer, o order, lengths []string) error {
	if o.seasons < 2 || o.sales < 1 {
		return fmt.Errorf("at least 2 seasons and 1 sale, not %d and %d", o.seasons, o.sales)
	}
	for _, text := range lengths {
		lots, err := strconv.Atoi(text)
		if err != nil || lots < 1 || lots > 1000 {
			return fmt.Errorf("from 1 to 1000 lots, not %q", text)
		}
		play(out, o, lots)
	}
	return nil
}

// buyers are those who meet the same sales; the first is the one against whom the others are held.
var buyers = []string{"the plan", "the plan on the grid", "first printed list kept all day",
	"best return on cash first", "walk-away bids in order"}

// policies returns what each buyer does at a sale, whether the plan is exact, and how long it took.
func policies(s sale.Sale) (all []sale.Policy, exact bool, took time.Duration) {
	start := time.Now()
	plan := sale.New(s)
	took = time.Since(start)
	rough := s
	rough.Effort = 1
	return []sale.Policy{plan, sale.New(rough), newPrinted(s, plan.Answer()), sale.ByReturn(s), sale.InOrder(s)}, plan.Exact(), took
}

// play plays the seasons of one length of run list.
func play(out io.Writer, o order, lots int) {
	rng := rand.New(rand.NewPCG(o.seed, uint64(lots)))
	sums := make([][]float64, len(buyers))
	exact, took := 0, time.Duration(0)
	for range o.seasons {
		season := make([]float64, len(buyers))
		for range o.sales {
			s := invented(rng, lots)
			hammer := prices(rng, s)
			all, precise, spent := policies(s)
			took += spent
			if precise {
				exact++
			}
			for b, policy := range all {
				season[b] += earned(s, policy, hammer)
			}
		}
		for b, x := range season {
			sums[b] = append(sums[b], x)
		}
	}
	n := o.seasons * o.sales
	fmt.Fprintf(out, "%d lots: %d seasons of %d sales, %d of %d planned exactly, %.0f ms a plan\n", lots, o.seasons, o.sales, exact, n,
		float64(took.Milliseconds())/float64(n))
	for b, name := range buyers {
		mean, ratio, err := against(sums[b], sums[0])
		fmt.Fprintf(out, "  %-34s %10.0f a season, ratio to the plan %.3f (standard error %.3f)\n", name, mean, ratio, err)
	}
}

// against returns the mean of x, its ratio to the mean of y, and the ratio's standard error (delta method, from memory).
func against(x, y []float64) (mean, ratio, err float64) {
	n, sumY := float64(len(x)), 0.0
	for i := range x {
		mean += x[i] / n
		sumY += y[i] / n
	}
	ratio = mean / sumY
	for i := range x {
		d := x[i] - ratio*y[i]
		err += d * d
	}
	return mean, ratio, math.Sqrt(err/(n-1)/n) / sumY
}
