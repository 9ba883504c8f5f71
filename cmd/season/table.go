package main

import (
	"fmt"
	"io"
	"math"
	"slices"
)

// table writes what the seasons came to.
func table(out io.Writer, all []buyer, years [][]year) {
	fmt.Fprintf(out, "%d seasons of %d sales of %d lots; profit after own hours; starter cash %d, credit %d\n\n", len(years[0]), salesAYear,
		lotsASale, startCash, credit)
	const row = "%-26s %8s %6s %8s %9s %7s %6s %6s %9s %9s %9s %9s %9s %7s\n"
	fmt.Fprintf(out, row, "", "profit", "", "worst", "worst in", "", "lots", "", "a lot", "/ clair-", "/ share", "/ twice", "whole", "")
	fmt.Fprintf(out, row, "", "a year", "error", "month", "a hundred", "ruined", "a year", "lossy", "/ thought", "voyant", "of clean", "parts",
		"brings", "error")
	last, cell := len(all)-1, func(x float64) string { return fmt.Sprintf("%.0f", x) }
	for i, b := range all {
		f := figuresOf(years[i])
		more, err := more(years[0], years[i])
		fmt.Fprintf(out, row, b.name, cell(f.profit), cell(f.err), cell(f.worst), cell(f.hundred),
			fmt.Sprintf("%.1f%%", 100*f.ruined), fmt.Sprintf("%.1f", f.lots), fmt.Sprintf("%.0f%%", 100*f.lossy), f.thought,
			against(f, years[last]), against(f, years[last-2]), against(f, years[last-1]), cell(more), cell(err))
	}
	fmt.Fprintln(out, "\nWhole brings: what the program whole makes more than the buyer in the same season, mean and standard error.")
}

// more returns the mean by which one buyer makes more than another in the same season, and its standard error.
func more(a, b []year) (mean, err float64) {
	n := float64(len(a))
	for i := range a {
		mean += (a[i].profit - b[i].profit) / n
	}
	for i := range a {
		d := a[i].profit - b[i].profit - mean
		err += d * d / (n - 1) / n
	}
	return mean, math.Sqrt(err)
}

// figures are the means of a buyer's seasons.
type figures struct {
	profit, err, worst, hundred, ruined, lots, lossy float64
	thought                                          string // made of what was foretold, as a share
}

func figuresOf(years []year) figures {
	var f figures
	n := float64(len(years))
	var worst []float64
	bought, lost, foretold, made := 0, 0, 0.0, 0.0
	for _, y := range years {
		f.profit += y.profit / n
		f.worst += y.worst / n
		worst = append(worst, y.worst)
		bought, lost, foretold, made = bought+y.lots, lost+y.lost, foretold+y.foretold, made+y.profit
		if y.ruined {
			f.ruined += 1 / n
		}
	}
	for _, y := range years {
		f.err += (y.profit - f.profit) * (y.profit - f.profit) / (n - 1) / n
	}
	f.err = math.Sqrt(f.err)
	slices.Sort(worst)
	f.hundred, f.lots = worst[len(worst)/100], float64(bought)/n
	f.thought = "-"
	if foretold > 0 {
		f.thought = fmt.Sprintf("%.2f", made/foretold)
	}
	f.lossy = float64(lost) / max(1, float64(bought))
	return f
}

// against is the profit as a ratio to that of another buyer, who must have one.
func against(f figures, other []year) string {
	if o := figuresOf(other); o.profit > 0 {
		return fmt.Sprintf("%.2f", f.profit/o.profit)
	}
	return "loses"
}
