package main

import (
	"errors"
	"fmt"
	"io"

	"walkline/store/csvfile"
	"walkline/valuation"
	"walkline/valuation/resale"
)

// withRows returns the case with the comparables of the table that lies beside it. Every refused row is a fault. A table that has
// no row yet is no fault where there is a guess, which then stands alone.
func withRows(c valuation.Case, data []byte, path string, errs io.Writer) (valuation.Case, int) {
	if _, err := csvfile.Read(data, csvfile.Reading{}); errors.Is(err, csvfile.ErrNoRows) && c.Resale.Guess != nil {
		fmt.Fprintf(errs, "resale.comparables: note: %s: %v. The guess stands alone.\n", path, err)
		c.Resale.Comparables = ""
		return c, report(c.Check(), "", errs)
	}
	rows, code := readRows(data, csvfile.Options{Currency: c.Currency, DistanceUnit: "mi"}, "resale.comparables: ", path, errs)
	if code != done {
		return c, code
	}
	c.Resale.Rows, c.Resale.Comparables = rows, ""
	return c, report(c.Check(), "", errs)
}

// readRows returns the comparables of a table whose currency is given. What the table leaves open is noted with how it
// was read; every refused row is a fault. key leads each line that it writes.
func readRows(data []byte, given csvfile.Options, key, path string, errs io.Writer) ([]resale.Row, int) {
	table, err := csvfile.Read(data, csvfile.Reading{})
	if err == nil {
		err = csvfile.OtherCurrency(table, given.Currency)
	}
	if err != nil {
		fmt.Fprintf(errs, "%s%s: %v\n", key, path, err)
		return nil, faulty
	}
	match := csvfile.Propose(table.Header)
	options, doubts := csvfile.ProposeOptions(table, match, given)
	for _, d := range doubts {
		fmt.Fprintf(errs, "%snote: %s Read as %s.\n", key, d.Text, taken(d.Option, options))
	}
	result, err := csvfile.Parse(table, match, options)
	if err != nil {
		fmt.Fprintf(errs, "%s%s: %v\n", key, path, err)
		return nil, faulty
	}
	for _, line := range refusals(result.Refused) {
		fmt.Fprintf(errs, "%s%s: %s\n", key, path, line)
	}
	if len(result.Refused) > 0 {
		return nil, faulty
	}
	return result.Rows, done
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
		return o.Kind
	}
	return o.Currency
}
