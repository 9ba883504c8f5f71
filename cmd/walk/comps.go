package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"walkline/store/csvfile"
	"walkline/valuation"
)

// comps is the command group "walk comps".
func comps(args []string, out, errs io.Writer) int {
	if len(args) == 0 || args[0] != "check" {
		fmt.Fprint(errs, "walk comps: there is walk comps check file.csv\n")
		return faulty
	}
	return compsCheck(args[1:], out, errs)
}

// compsCheck is the command "walk comps check": what a table holds, and every row that cannot be used.
func compsCheck(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("walk comps check", flag.ContinueOnError)
	flags.SetOutput(errs)
	var given csvfile.Options
	flags.StringVar(&given.Currency, "currency", "", "ISO 4217 code of the prices, where no column's name says it")
	flags.StringVar(&given.Kind, "kind", "", "asked or sold, where no column says it")
	flags.StringVar(&given.Unit, "unit", "", "mi or km, where no column says it")
	dates := flags.String("dates", "", "year first, day first or month first, where the file leaves it open")
	paths, err := parseMixed(flags, args)
	if err != nil || len(paths) != 1 {
		fmt.Fprint(errs, "walk comps check: one file, walk comps check file.csv\n")
		return faulty
	}
	given.Dates = csvfile.Order(*dates)
	data, err := os.ReadFile(paths[0])
	if err != nil {
		fmt.Fprintf(errs, "walk comps check: reading the table: %v\n", err)
		return failed
	}
	table, err := csvfile.Read(data, csvfile.Reading{})
	if err != nil {
		fmt.Fprintf(errs, "%s: %v\n", paths[0], err)
		return faulty
	}
	return describe(table, given, out, errs)
}

// parseMixed parses flags that may stand before or after the other arguments.
func parseMixed(flags *flag.FlagSet, args []string) (rest []string, err error) {
	for len(args) > 0 {
		if err := flags.Parse(args); err != nil {
			return nil, err
		}
		if args = flags.Args(); len(args) > 0 {
			rest, args = append(rest, args[0]), args[1:]
		}
	}
	return rest, nil
}

// describe writes the match of the columns, what is in doubt, and every refused row.
func describe(table csvfile.Table, given csvfile.Options, out, errs io.Writer) int {
	match := csvfile.Propose(table.Header)
	options, doubts := csvfile.ProposeOptions(table, match, given)
	for _, c := range match {
		fmt.Fprintf(out, "column %-20s is read as %s\n", c.Name, c.Field)
	}
	code := done
	for _, d := range doubts {
		fmt.Fprintf(errs, "to be stated: %s (--%s %s)\n", d.Text, d.Option, strings.Join(d.Ways, " | "))
		if d.Option == "currency" {
			code = faulty
		}
	}
	if code != done {
		return code
	}
	result, err := csvfile.Parse(table, match, options)
	if err != nil {
		fmt.Fprintf(errs, "%v\n", err)
		return faulty
	}
	fmt.Fprintf(out, "numbers like %s, dates %s, mileage in %s, prices in %s", options.Marks, options.Dates, options.Unit, options.Currency)
	if options.Kind != "" {
		fmt.Fprintf(out, ", %s", options.Kind)
	}
	fmt.Fprintf(out, "\n%d rows read: %d usable, %d refused, %d blank lines\n", result.Read, len(result.Rows), len(result.Refused), result.Blank)
	for _, line := range refusals(result.Refused) {
		fmt.Fprintln(errs, line)
		code = faulty
	}
	return code
}

// refusals writes one line a fault of the refused rows.
func refusals(refused []csvfile.Refused) []string {
	var lines []string
	for _, r := range refused {
		for _, f := range r.Faults {
			lines = append(lines, fmt.Sprintf("line %d: %s", r.Line, f))
		}
	}
	return lines
}

// withRows returns the case with the comparables of the table that lies beside it. Every refused row is a fault.
func withRows(c valuation.Case, data []byte, path string, errs io.Writer) (valuation.Case, int) {
	table, err := csvfile.Read(data, csvfile.Reading{})
	if err != nil {
		fmt.Fprintf(errs, "resale.comparables: %s: %v\n", path, err)
		return c, faulty
	}
	match := csvfile.Propose(table.Header)
	options, doubts := csvfile.ProposeOptions(table, match, csvfile.Options{Currency: c.Currency, DistanceUnit: "mi"})
	for _, d := range doubts {
		fmt.Fprintf(errs, "resale.comparables: note: %s Read as %s.\n", d.Text, taken(d.Option, options))
	}
	result, err := csvfile.Parse(table, match, options)
	if err != nil {
		fmt.Fprintf(errs, "resale.comparables: %s: %v\n", path, err)
		return c, faulty
	}
	for _, line := range refusals(result.Refused) {
		fmt.Fprintf(errs, "resale.comparables: %s: %s\n", path, line)
	}
	if len(result.Refused) > 0 {
		return c, faulty
	}
	c.Resale.Rows, c.Resale.Comparables = result.Rows, ""
	return c, report(c.Check(), "", errs)
}

// taken says what an option in doubt was read as.
func taken(option string, o csvfile.Options) string {
	switch option {
	case "marks":
		return o.Marks.String()
	case "dates":
		return string(o.Dates)
	case "unit":
		return o.Unit
	case "distance_unit":
		return o.DistanceUnit
	case "kind":
		if o.Kind == "" {
			return "asked"
		}
		return o.Kind
	}
	return o.Currency
}
