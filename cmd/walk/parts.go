package main

import (
	"fmt"
	"io"
	"strings"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/store/csvfile"
	"walkline/store/plain"
	"walkline/valuation"
)

const partsUsage = "walk parts case.json... [-o parts.csv]"

// parts is the command "walk parts": the shopping list of one or several case files.
func parts(args []string, out, errs io.Writer) int {
	paths, to, err := readPartsOrder(args)
	if err != nil {
		fmt.Fprintf(errs, "walk parts: %v\n", err)
		return faulty
	}
	knowledge, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if code := report(faults, "", errs); code != done {
		return code
	}
	var cases []valuation.Case
	for _, path := range paths {
		c, code := readCase("walk parts", path, errs)
		if code != done {
			return code
		}
		cases = append(cases, c)
	}
	list := csvfile.WriteParts(valuation.Shopping(cases, knowledge))
	if to == "" {
		_, err = out.Write(list)
	} else {
		err = plain.Put(to, list)
	}
	if err != nil {
		fmt.Fprintf(errs, "walk parts: writing the list: %v\n", err)
		return failed
	}
	return done
}

// readPartsOrder reads the arguments: the case files and where the list goes, empty for the terminal.
func readPartsOrder(args []string) (paths []string, to string, err error) {
	for i := 0; i < len(args); i++ {
		switch {
		case args[i] == "-o" || args[i] == "--out":
			if i++; i == len(args) {
				return nil, "", fmt.Errorf("-o wants a file: %s", partsUsage)
			}
			to = args[i]
		case strings.HasPrefix(args[i], "-"):
			return nil, "", fmt.Errorf("no option %s: %s", args[i], partsUsage)
		default:
			paths = append(paths, args[i])
		}
	}
	if len(paths) == 0 {
		return nil, "", fmt.Errorf("which cases? %s", partsUsage)
	}
	return paths, to, nil
}
