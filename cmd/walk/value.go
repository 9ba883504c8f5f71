package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/hammer"
)

// value is the command "walk value": it values one case file.
func value(args []string, out, errs io.Writer) int {
	path, asJSON, short := "", false, false
	for _, a := range args {
		switch {
		case a == "--json" || a == "-json":
			asJSON = true
		case a == "--brief" || a == "-brief":
			short = true
		case strings.HasPrefix(a, "-") && a != "-":
			fmt.Fprintf(errs, "walk value: no option %s; there are --json and --brief\n", a)
			return faulty
		case path != "":
			fmt.Fprintf(errs, "walk value: one case at a time, got %s and %s\n", path, a)
			return faulty
		default:
			path = a
		}
	}
	if asJSON && short {
		fmt.Fprint(errs, "walk value: --json writes the whole answer; take --brief or --json\n")
		return faulty
	}
	if path == "" {
		fmt.Fprint(errs, "walk value: which case? walk value case.json [--json | --brief]\n")
		return faulty
	}
	c, a, code := valueFile("walk value", path, errs)
	if code != done {
		return code
	}
	var err error
	switch {
	case asJSON:
		_, err = out.Write(casefile.WriteAnswer(a))
	case short:
		_, err = io.WriteString(out, brief(c, a))
	default:
		_, err = io.WriteString(out, text(c, a))
	}
	if err != nil {
		fmt.Fprintf(errs, "walk value: writing the answer: %v\n", err)
		return failed
	}
	return done
}

// valueFile reads a case and values it with what the program ships; command names who asks, in what is said on errs.
func valueFile(command, path string, errs io.Writer) (valuation.Case, valuation.Answer, int) {
	c, code := readCase(command, path, errs)
	if code != done {
		return c, valuation.Answer{}, code
	}
	knowledge, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if code := report(faults, "", errs); code != done {
		return c, valuation.Answer{}, code
	}
	went := hammer.Starter() // no file of a shop is at hand here
	knowledge.Hammer = &went
	a, err := valuation.Value(c, knowledge)
	if err != nil {
		fmt.Fprintf(errs, "%s: %v\n", path, err)
		return c, a, faulty
	}
	return c, a, done
}

// report writes one line a fault and returns the exit code.
func report(faults []casefile.Fault, where string, errs io.Writer) int {
	for _, f := range faults {
		fmt.Fprintf(errs, "%s%s\n", where, f.Error())
	}
	if len(faults) > 0 {
		return faulty
	}
	return done
}

// lacks writes what a bid needs beside what the faults of its case name, so that everything is entered at once. What can't be read as
// this program's case is not judged.
func lacks(c valuation.Case, faults []casefile.Fault, errs io.Writer) {
	named := map[string]bool{}
	for _, f := range faults {
		named[f.Key] = true
	}
	knowledge, wrong := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if named["file"] || named["format"] || len(wrong) > 0 {
		return
	}
	for _, n := range valuation.Missing(c, knowledge) {
		if !named[n.Key] {
			fmt.Fprintf(errs, "%s: missing. %s\n", n.Key, n.Text)
		}
	}
}

// readCase reads a case and the comparables that lie beside it.
func readCase(command, path string, errs io.Writer) (valuation.Case, int) {
	data, err := readFile(path)
	if err != nil {
		fmt.Fprintf(errs, "%s: reading the case: %v\n", command, err)
		return valuation.Case{}, failed
	}
	c, faults := casefile.Read(data)
	if code := report(faults, "", errs); code != done {
		lacks(c, faults, errs)
		return c, code
	}
	if c.Resale.Comparables == "" {
		return c, done
	}
	beside := filepath.Join(filepath.Dir(path), filepath.FromSlash(c.Resale.Comparables))
	table, err := readFile(beside)
	if err != nil {
		fmt.Fprintf(errs, "resale.comparables: reading the file beside the case: %v\n", err)
		return c, failed
	}
	return withRows(c, table, beside, errs)
}
