package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
)

// manual is what the help says of one command.
type manual struct {
	name, call, does string
	options          []string // one line each
}

// synopsis is how the command is called.
func (m manual) synopsis() string { return strings.TrimSuffix("walk "+m.name+" "+m.call, " ") }

const asJSON = "--json           the same answer as a JSON document"

// readingOptions say what a table leaves open.
var readingOptions = []string{
	"--on DAY         the day that \"yesterday\" is before; without it, today",
	"--currency CODE  of the prices, where nothing else says it (ISO 4217)",
	"--unit UNIT      mi or km, where nothing else says it",
	"--kind KIND      asked or sold, where nothing else says it",
	"--dates ORDER    year first, day first or month first, where the file leaves it open",
	"--decimal MARK   the decimal mark, where the file leaves it open: . or ,",
	"--encoding NAME  of the letters, where the bytes leave it open: windows-1252, say",
	"--sheet NAME     of a workbook; without it, the first",
	"--headings LINE  the line that the headings stand in",
	"--as COLUMN=FIELD  what a column holds: by its heading, its number from 1 or its letter",
	"--title WORD=TITLE  what a word for a title means: clear, rebuilt, salvage and so on"}

// manuals lists the commands in the order in which the help names them.
var manuals = []manual{
	{"value", "case.json [--json | --brief]", "the walk-away bid, why, and what could go wrong", []string{
		"--brief          the same on one screen of 80 by 24", asJSON}},
	{"sheet", "case.json -o sheet.pdf [--paper a4|letter] [--date 2026-11-28]", "its decision sheet to print: verdict, plan, checks to tick",
		[]string{
			"-o, --out FILE   where the PDF goes",
			"--paper SIZE     a4 or letter; without it, what is usual where the currency is",
			"--date DAY       the date printed on it, year-month-day; without it, today's"}},
	{"plan", "problem.json [--json] [--then ID=won@PRICE]", "today's bids on the lots of a sale, for the cash, hours and bays there are",
		[]string{
			"--then RESULT    what became of a lot: ID=won@PRICE, ID=lost or ID=withdrawn; once for each lot, in running order", asJSON}},
	{"rank", "LIST [--book shop.db] [--json]", "the lots of a run list: first guess or bid, what looking is worth, chance to win",
		append([]string{"--book FILE      the shop's file: its terms, comparables, results and the lots it holds; without it, starter values",
			asJSON}, readingOptions...)},
	{"parts", "case.json... [-o parts.csv]", "the shopping list: every part of the lots, its sources, what it is for", []string{
		"-o, --out FILE   where the CSV goes; without it, to the terminal"}},
	{"tune", "store.db --dry-run [--json]", "how the forecasts did, and what past buys would change; changes nothing", []string{
		"--dry-run        needed: factors are accepted in the window only", asJSON}},
	{"replay", "store.db [--json]", "what today's factors would have bid on each past lot", []string{asJSON}},
	{"comps check", "FILE", "what a table of comparables holds, and every row that cannot be used", readingOptions},
	{"comps rows", "FILE --json", "its rows as they are read, those refused or passed over, and what is open",
		append(slices.Clone(readingOptions), "--subject FILE   the vehicle as it will stand, as JSON", asJSON)},
	{"lots rows", "FILE --json", "the same of a run list", append(slices.Clone(readingOptions), asJSON)},
	{"comps price", "FILE --subject subject.json", "the price of one vehicle: point, 80 % interval and grid, as JSON", []string{
		"--subject FILE   the vehicle as it will stand"}},
	{"comps prices", "--subjects subjects.csv --dir DIR", "the prices of many, each from DIR/VEHICLE.csv, as CSV", []string{
		"--subjects FILE  the vehicles, with a column vehicle",
		"--dir DIR        the folder that holds VEHICLE.csv for each vehicle"}},
	{name: "help", call: "[COMMAND]", does: "this, or one command with its options; COMMAND --help does the same"},
	{name: "version", does: "which build this is; --version does the same"},
}

const codes = "Exit codes: 0 done; 1 a file could not be read or written; 2 the call or the case is at fault, one line a fault.\n"

// column is where the second column of the overview begins.
const column = 56

// usage is the overview of all commands.
var usage = func() string {
	var b strings.Builder
	b.WriteString("walk values salvage lots in the terminal.\n\n")
	for _, p := range manuals {
		call := "  " + p.synopsis()
		if len(call) > column {
			call += "\n"
			fmt.Fprintf(&b, "%s%*s  %s\n", call, column, "", p.does)
			continue
		}
		fmt.Fprintf(&b, "%-*s  %s\n", column, call, p.does)
	}
	return b.String() + "\n" + codes
}()

func isHelp(arg string) bool { return arg == "-h" || arg == "-help" || arg == "--help" }

// asked returns the command that the arguments ask help for, and whether they ask for any: help NAME, NAME --help.
func asked(args []string) (name string, help bool) {
	if args[0] == "help" && len(args) == 2 && isHelp(args[1]) {
		return "help", true
	}
	if args[0] == "help" || isHelp(args[0]) {
		return strings.Join(args[1:], " "), true
	}
	if !slices.ContainsFunc(args, isHelp) {
		return "", false
	}
	words := args[:1]
	if len(args) > 1 && !strings.HasPrefix(args[1], "-") && args[0] == "comps" {
		words = args[:2]
	}
	return strings.Join(words, " "), true
}

// help writes the pages of the commands whose name begins with the words of name, or the overview.
func help(name string, out, errs io.Writer) int {
	if name == "" {
		fmt.Fprint(out, usage)
		return done
	}
	code := faulty
	for _, p := range manuals {
		if p.name == name || strings.HasPrefix(p.name, name+" ") {
			fmt.Fprintf(out, "%s\n\n  %s\n\n", p.synopsis(), p.does)
			for _, line := range p.options {
				fmt.Fprintf(out, "  %s\n", line)
			}
			if len(p.options) > 0 {
				fmt.Fprintln(out)
			}
			code = done
		}
	}
	if code != done {
		fmt.Fprintf(errs, "walk: no command %q\n\n%s", name, usage)
		return code
	}
	fmt.Fprint(out, codes)
	return done
}
