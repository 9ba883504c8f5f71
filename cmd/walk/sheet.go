package main

import (
	"fmt"
	"io"
	"strings"
	"time"

	"walkline/store/plain"
	"walkline/ui/sheet"
	"walkline/valuation/lot"
)

const sheetUsage = "walk sheet case.json -o sheet.pdf [--paper a4|letter] [--date 2026-11-28]"

// sheetOrder is what the command line asks of "walk sheet".
type sheetOrder struct {
	path, out, date string
	paper           sheet.Paper
}

// decisionSheet is the command "walk sheet": it values one case file and prints its decision sheet.
func decisionSheet(args []string, out, errs io.Writer) int {
	order, err := readSheetOrder(args)
	if err != nil {
		fmt.Fprintf(errs, "walk sheet: %v\n", err)
		return faulty
	}
	c, a, code := valueFile("walk sheet", order.path, errs)
	if code != done {
		return code
	}
	data, err := sheet.Decision(sheet.Lot{Case: c, Answer: a, Printed: lot.Date(order.date), Paper: order.paper})
	if err != nil {
		fmt.Fprintf(errs, "walk sheet: %v\n", err)
		return faulty
	}
	if err := plain.Put(order.out, data); err != nil {
		fmt.Fprintf(errs, "walk sheet: writing the sheet: %v\n", err)
		return failed
	}
	fmt.Fprintf(out, "The decision sheet is in %s\n", order.out)
	return done
}

// readSheetOrder reads the arguments. The date is today's unless one is given.
func readSheetOrder(args []string) (sheetOrder, error) {
	o := sheetOrder{date: time.Now().Format(time.DateOnly)}
	for i := 0; i < len(args); i++ {
		name := args[i]
		if !strings.HasPrefix(name, "-") {
			if o.path != "" {
				return o, fmt.Errorf("one case at a time, got %s and %s", o.path, name)
			}
			o.path = name
			continue
		}
		if i++; i == len(args) {
			return o, fmt.Errorf("%s wants a value: %s", name, sheetUsage)
		}
		if err := o.take(name, args[i]); err != nil {
			return o, err
		}
	}
	if o.path == "" || o.out == "" {
		return o, fmt.Errorf("which case, and where to? %s", sheetUsage)
	}
	return o, nil
}

// take takes one option with its value.
func (o *sheetOrder) take(name, value string) error {
	switch name {
	case "-o", "--out":
		o.out = value
	case "--date":
		o.date = value
	case "--paper":
		paper, known := sheet.PaperNamed(value)
		if !known {
			return fmt.Errorf("no paper %q; there are a4 and letter", value)
		}
		o.paper = paper
	default:
		return fmt.Errorf("no option %s: %s", name, sheetUsage)
	}
	return nil
}
