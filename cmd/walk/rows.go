package main

import (
	"errors"
	"fmt"
	"io"

	"walkline/store/csvfile"
	"walkline/store/table"
	"walkline/valuation"
	"walkline/valuation/resale"
)

// withRows returns the case with the comparables of the table that lies beside it. Every refused row is a fault. A table that has
// no row yet is no fault where there is a guess, which then stands alone.
func withRows(c valuation.Case, data []byte, path string, errs io.Writer) (valuation.Case, int) {
	const key = "resale.comparables: "
	rows, notes, err := csvfile.RowsOf(data, table.Stated{Wanted: c.Currency, Distance: "mi", On: c.ValuedOn, Later: true, Make: c.Lot.Make,
		Model: c.Lot.Model})
	if errors.Is(err, csvfile.ErrNoRows) && c.Resale.Guess != nil {
		fmt.Fprintf(errs, "%snote: %s: %v. The guess stands alone.\n", key, path, err)
		c.Resale.Comparables = ""
		return c, report(c.Check(), "", errs)
	}
	if code := reported(notes, err, key, path, errs); code != done {
		return c, code
	}
	c.Resale.Rows, c.Resale.Comparables = rows, ""
	return c, report(c.Check(), "", errs)
}

// readRows returns the comparables of a table whose currency is given. What the table leaves open is noted with how it
// was read; every refused row is a fault. key leads each line that it writes.
func readRows(data []byte, s table.Stated, key, path string, errs io.Writer) ([]resale.Row, int) {
	rows, notes, err := csvfile.RowsOf(data, s)
	return rows, reported(notes, err, key, path, errs)
}

// reported writes the notes and faults of a table.
func reported(notes []string, err error, key, path string, errs io.Writer) int {
	for _, note := range notes {
		fmt.Fprintf(errs, "%snote: %s\n", key, note)
	}
	var refused csvfile.RefusedRows
	switch {
	case err == nil:
		return done
	case errors.As(err, &refused):
		for _, line := range refusals(refused) {
			fmt.Fprintf(errs, "%s%s: %s\n", key, path, line)
		}
	default:
		fmt.Fprintf(errs, "%s%s: %v\n", key, path, err)
	}
	return faulty
}

// refusals writes one line a fault of the refused rows.
func refusals(refused []table.Refused) []string {
	var lines []string
	for _, r := range refused {
		for _, f := range r.Faults {
			lines = append(lines, fmt.Sprintf("line %d: %s", r.Line, f))
		}
	}
	return lines
}
