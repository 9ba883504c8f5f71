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
	flag.Parse()
	if err := run(*prices, *out, *tasks); err != nil {
		fmt.Fprintln(os.Stderr, "fitprior:", err)
		os.Exit(1)
	}
}

func run(prices, out, tasks string) error {
	sets, err := readSets(prices)
	if err != nil {
		return err
	}
	if tasks != "" {
		return judge(sets, tasks)
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

func parse(s string) (float64, error) { return strconv.ParseFloat(strings.TrimSpace(s), 64) }
