package main

import (
	"flag"
	"fmt"
	"io"
	"strings"

	"walkline/store/csvfile"
)

// comps is the command group "walk comps".
func comps(args []string, out, errs io.Writer) int {
	if len(args) > 0 {
		switch args[0] {
		case "check":
			return compsCheck(args[1:], out, errs)
		case "fit":
			return compsFit(args[1:], out, errs)
		case "predict":
			return compsPredict(args[1:], out, errs)
		}
	}
	fmt.Fprint(errs, "walk comps: there are check, fit and predict; walk help shows them\n")
	return faulty
}

// compsCheck is the command "walk comps check": what a table holds, and every row that cannot be used.
func compsCheck(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("walk comps check", flag.ContinueOnError)
	flags.SetOutput(errs)
	var given csvfile.Options
	flags.StringVar(&given.Currency, "currency", "", "ISO 4217 code of the prices, where no column's name says it")
	flags.StringVar(&given.Kind, "kind", "", "asked or sold, where no column says it")
	flags.StringVar(&given.Unit, "unit", "", "mi or km, where no column says it")
	flags.StringVar(&given.DistanceUnit, "distance_unit", "", "mi or km, where no column's name says it")
	flags.StringVar(&given.Marks.Decimal, "decimal", "", "the decimal mark, where the file leaves it open: . or ,")
	flags.StringVar(&given.Marks.Thousands, "thousands", "", "the mark between thousands; beside --decimal")
	dates := flags.String("dates", "", "year first, day first or month first, where the file leaves it open")
	paths, err := parseMixed(flags, args)
	if err != nil || len(paths) != 1 {
		fmt.Fprint(errs, "walk comps check: one file, walk comps check file.csv\n")
		return faulty
	}
	given.Dates = csvfile.Order(*dates)
	data, err := readFile(paths[0])
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
	if given.Currency == "" {
		stated, err := csvfile.StatedCurrency(table)
		if err != nil {
			fmt.Fprintf(errs, "%v\n", err)
			return faulty
		}
		given.Currency = stated
	} else if err := csvfile.OtherCurrency(table, given.Currency); err != nil {
		fmt.Fprintf(errs, "%v\n", err)
		return faulty
	}
	options, doubts := csvfile.ProposeOptions(table, match, given)
	for _, c := range match {
		fmt.Fprintf(out, "column %-20s is read as %s\n", c.Name, c.Field)
	}
	code := done
	for _, d := range doubts {
		fmt.Fprintf(errs, "to be stated: %s %s\n", d.Text, howToState(d))
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
	unit := options.Unit
	if match.Has(csvfile.Unit) {
		unit = "the unit that its column states, else " + unit
	}
	fmt.Fprintf(out, "numbers like %s, dates %s, mileage in %s, prices in %s", options.Marks, options.Dates, unit, options.Currency)
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

// howToState says with which option a doubt is settled.
func howToState(d csvfile.Doubt) string {
	switch {
	case d.Option == "marks":
		return fmt.Sprintf("(%s: --decimal and --thousands)", strings.Join(d.Ways, " or "))
	case d.Option == "currency":
		return "(--currency USD, or another code of ISO 4217)"
	}
	return fmt.Sprintf("(--%s %s)", d.Option, strings.Join(quoted(d.Ways), " | "))
}

// quoted puts the ways that are several words in quotes, without the example behind them.
func quoted(ways []string) []string {
	var out []string
	for _, way := range ways {
		way, _, _ = strings.Cut(way, " (")
		if strings.Contains(way, " ") {
			way = `"` + way + `"`
		}
		out = append(out, way)
	}
	return out
}
