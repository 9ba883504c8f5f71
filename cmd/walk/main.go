package main

import (
	"fmt"
	"io"
	"os"
)

// The exit codes.
const (
	done   = 0
	failed = 1 // a file could not be read or written
	faulty = 2 // the call or what it was given is at fault
)

const usage = `walk values salvage lots in the terminal.

  walk value case.json [--json]                           the walk-away bid, why, and what could go wrong
  walk sheet case.json -o sheet.pdf [--paper a4|letter] [--date 2026-11-28]
                                                          its decision sheet to print: verdict, plan, checks to tick
  walk tune store.db --dry-run [--json]                   how the forecasts did, and what past buys would change; changes nothing
  walk replay store.db [--json]                           what today's factors would have bid on each past lot
  walk comps check file.csv                               what a table of comparables holds, and every row that cannot be used
  walk comps fit file.csv --subject subject.json          the price of one vehicle: point, 80 % interval and grid, as JSON
  walk comps predict --subjects subjects.csv --dir DIR    the prices of many, each from DIR/TASK.csv, as CSV

Exit codes: 0 done; 1 a file could not be read or written; 2 the call or the case is at fault, one line a fault.
`

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run does what the arguments ask and returns the exit code.
func run(args []string, out, errs io.Writer) int {
	out, errs = terminal{out}, terminal{errs}
	if len(args) == 0 {
		fmt.Fprint(errs, usage)
		return faulty
	}
	switch args[0] {
	case "value":
		return value(args[1:], out, errs)
	case "sheet":
		return decisionSheet(args[1:], out, errs)
	case "tune":
		return tune(args[1:], out, errs)
	case "replay":
		return replay(args[1:], out, errs)
	case "comps":
		return comps(args[1:], out, errs)
	case "help", "-h", "--help":
		fmt.Fprint(out, usage)
		return done
	}
	fmt.Fprintf(errs, "walk: no command %q\n\n%s", args[0], usage)
	return faulty
}
