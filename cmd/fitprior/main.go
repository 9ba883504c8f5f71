package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"strconv"
	"strings"

	"walkline/valuation/resale"
)

func main() {
	prices := flag.String("prices", "", "folder of price sets")
	out := flag.String("out", "", "file to write the priors to")
	tasks := flag.String("tasks", "", "folder of tasks to judge the method on")
	sizes := flag.String("sizes", "10 20 40", "numbers of comparables to judge at")
	flag.Parse()
	if err := run(*prices, *out, *tasks, *sizes); err != nil {
		fmt.Fprintln(os.Stderr, "fitprior:", err)
		os.Exit(1)
	}
}

func run(prices, out, tasks, sizes string) error {
	sets, err := readSets(prices)
	if err != nil {
		return err
	}
	if tasks != "" {
		counts, err := parseSizes(sizes)
		if err != nil {
			return err
		}
		return judge(sets, tasks, counts, os.Stdout)
	}
	p, err := fitPrior(sets, prices)
	if err != nil {
		return err
	}
	data, err := json.MarshalIndent(p, "", " ")
	if err != nil {
		return err
	}
	if _, err := resale.ParsePrior(data); err != nil {
		return err
	}
	return os.WriteFile(out, append(data, '\n'), 0o644)
}

func parseSizes(sizes string) ([]int, error) {
	var counts []int
	for _, word := range strings.Fields(sizes) {
		n, err := strconv.Atoi(word)
		if err != nil || n < 1 {
			return nil, fmt.Errorf("-sizes: %q is no number of comparables", word)
		}
		counts = append(counts, n)
	}
	return counts, nil
}

func parse(s string) (float64, error) { return strconv.ParseFloat(strings.TrimSpace(s), 64) }
