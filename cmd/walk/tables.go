package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"walkline/store/cell"
	"walkline/store/csvfile"
	"walkline/store/grid"
	"walkline/store/runlist"
	"walkline/store/table"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// comps is the command group "walk comps".
func comps(args []string, out, errs io.Writer) int {
	const there = "walk comps: there are check, rows, price and prices; walk help shows them\n"
	if len(args) == 0 {
		fmt.Fprint(errs, there)
		return faulty
	}
	switch args[0] {
	case "check":
		return reading[csvfile.Comparable]{name: "walk comps check", kind: csvfile.Comparables, strict: true, out: out,
			errs: errs}.run(args[1:])
	case "rows":
		return reading[csvfile.Comparable]{name: "walk comps rows", kind: csvfile.Comparables, keys: comparableKeys, out: out,
			errs: errs}.run(args[1:])
	case "price":
		return compsPrice(args[1:], out, errs)
	case "prices":
		return compsPrices(args[1:], out, errs)
	case "fit":
		fmt.Fprint(errs, "walk comps fit: it is called walk comps price now\n")
		return faulty
	case "predict":
		fmt.Fprint(errs, "walk comps predict: it is called walk comps prices now, and the column task is called vehicle\n")
		return faulty
	}
	fmt.Fprint(errs, there)
	return faulty
}

// lots is the command group "walk lots".
func lots(args []string, out, errs io.Writer) int {
	if len(args) == 0 || args[0] != "rows" {
		fmt.Fprint(errs, "walk lots: there is rows; walk help shows it\n")
		return faulty
	}
	return reading[runlist.Row]{name: "walk lots rows", kind: runlist.Lists(), keys: lotKeys, out: out, errs: errs}.run(args[1:])
}

// The keys of a printed row, in the order of the columns.
var (
	comparableKeys = []string{"price", "currency", "kind", "date", "model_year", "make", "model", "trim", "mileage", "unit", "title",
		"distance", "note"}
	lotKeys = []string{"number", "sale", "sale_date", "model_year", "make", "model", "trim", "vin", "odometer", "unit",
		"odometer_status", "document", "issued_in", "loss", "areas", "condition",
		"keys", "value_before", "repair_estimate", "hammer", "note"}
)

// reading is one call that reads a table.
type reading[T any] struct {
	name      string
	kind      *table.Kind[T]
	keys      []string
	strict    bool // a refused row makes the exit code
	out, errs io.Writer
}

// run reads the arguments and the table, and prints what it holds.
func (r reading[T]) run(args []string) int {
	flags := flag.NewFlagSet(r.name, flag.ContinueOnError)
	flags.SetOutput(r.errs)
	var o grid.Options
	var s table.Stated
	asJSON := flags.Bool("json", false, "print JSON")
	subject := flags.String("subject", "", "the vehicle that the rows are for, a JSON file")
	given := r.stating(flags, &o, &s)
	paths, err := parseMixed(flags, args)
	if err != nil || len(paths) != 1 {
		fmt.Fprintf(r.errs, "%s: one file, %s FILE\n", r.name, r.name)
		return faulty
	}
	if err := given(); err != nil {
		fmt.Fprintf(r.errs, "%s: %v\n", r.name, err)
		return faulty
	}
	if *subject != "" {
		if code := r.forSubject(*subject, &s); code != done {
			return code
		}
	}
	data, err := readFile(paths[0])
	if err != nil {
		fmt.Fprintf(r.errs, "%s: reading the table: %v\n", r.name, err)
		return failed
	}
	res, err := r.read(data, o, s)
	if err == nil && res.Read == 0 && r.strict && len(res.Columns) > 0 {
		err = csvfile.ErrNoRows
	}
	if err != nil {
		fmt.Fprintf(r.errs, "%s: %v\n", paths[0], err)
		return faulty
	}
	if *asJSON {
		return r.printJSON(res)
	}
	return r.printText(res)
}

// stating adds the flags that state how the table is written; given puts together what they say.
func (r reading[T]) stating(flags *flag.FlagSet, o *grid.Options, s *table.Stated) (given func() error) {
	flags.StringVar(&o.Encoding, "encoding", "", "of an 8-bit file: "+strings.Join(grid.Encodings, ", "))
	flags.StringVar(&o.Sheet, "sheet", "", "of a workbook; the first is read otherwise")
	flags.StringVar(&s.Currency, "currency", "", "ISO 4217 code of the prices, where the table leaves it open")
	flags.StringVar(&s.Unit, "unit", "", "mi or km, where the table leaves it open")
	flags.StringVar(&s.Distance, "distance_unit", "", "mi or km of distances, where they are in another unit")
	flags.StringVar(&s.Kind, "kind", "", "asked or sold, where the table leaves it open")
	flags.StringVar(&s.Decimal, "decimal", "", "the decimal mark, . or ,")
	dates := flags.String("dates", "", "day first or month first, where the table leaves it open")
	on := flags.String("on", "", "the day of the import, YYYY-MM-DD; today otherwise")
	headings := flags.String("headings", "", "the line that names the columns, 0 for none")
	s.As, s.Titles = map[string]string{}, map[string]string{}
	flags.Func("as", `a column's heading, number or letter, and what it is: "Betrag=price", "C=price"`, pair(s.As))
	flags.Func("title", `a word of a title and what it means: "as is=salvage"; unknown leaves it unsaid`, pair(s.Titles))
	return func() error {
		day, err := lot.ParseDate(*on)
		if *on == "" {
			day, err = lot.Date(time.Now().Format(time.DateOnly)), nil
		}
		s.On, s.Currency = day, strings.ToUpper(s.Currency)
		if s.Dates = cell.Order(*dates); *dates == "year first" {
			s.Dates = "" // days with the year first are always read so
		}
		if n, bad := strconv.Atoi(*headings); *headings != "" && (bad != nil || n < 0) {
			return fmt.Errorf("--headings %s: the number of a line, or 0", *headings)
		} else if *headings != "" {
			s.Headings = &n
		}
		return errors.Join(err, checkStated(*s))
	}
}

// pair takes name=value.
func pair(into map[string]string) func(string) error {
	return func(text string) error {
		at := strings.LastIndex(text, "=")
		if at <= 0 {
			return fmt.Errorf("%q: write name=value", text)
		}
		into[strings.TrimSpace(text[:at])] = strings.TrimSpace(text[at+1:])
		return nil
	}
}

func checkStated(s table.Stated) error {
	if _, known := money.Lookup(s.Currency); s.Currency != "" && !known {
		return fmt.Errorf("--currency %s: no ISO 4217 code such as USD", s.Currency)
	}
	for _, unit := range []string{s.Unit, s.Distance} {
		if !slices.Contains([]string{"", "mi", "km"}, unit) {
			return fmt.Errorf("--unit %s: mi or km", unit)
		}
	}
	if !slices.Contains([]string{"", "asked", "sold"}, s.Kind) {
		return fmt.Errorf("--kind %s: asked or sold", s.Kind)
	}
	for word, means := range s.Titles {
		if brand, known := cell.Title(means); known {
			s.Titles[word] = brand
		} else if means != "unknown" && means != "" {
			return fmt.Errorf("--title %s=%s: clear, a brand of the list such as rebuilt or salvage, or unknown", word, means)
		} else {
			s.Titles[word] = "unknown"
		}
	}
	return nil
}

// forSubject takes the make, model and currency that the rows are for.
func (r reading[T]) forSubject(path string, s *table.Stated) int {
	document, err := readFile(path)
	if err != nil {
		fmt.Fprintf(r.errs, "%s: reading the subject: %v\n", r.name, err)
		return failed
	}
	subject, faults := readSubject(document)
	s.Make, s.Model, s.Wanted = subject.Make, subject.Model, subject.Currency
	return report(faults, "", r.errs)
}

// read returns what the table holds; an encoding that the bytes don't tell is a question like any other.
func (r reading[T]) read(data []byte, o grid.Options, s table.Stated) (table.Result[T], error) {
	g, err := grid.Read(data, o)
	var u grid.Unsettled
	if errors.As(err, &u) {
		q := table.Question{Key: "encoding", Text: "In which encoding is the text? " + u.Error()}
		for _, w := range u.Ways {
			q.Options = append(q.Options, w.Encoding)
		}
		return table.Result[T]{Open: []table.Question{q}}, nil
	}
	if err != nil {
		return table.Result[T]{}, err
	}
	res, err := table.Read(r.kind, g, s)
	if o.Sheet == "" {
		askSheet(res.Open, g.Sheets)
	}
	return res, err
}

// askSheet asks for the sheet instead of a column that the first one lacks.
func askSheet(open []table.Question, sheets []string) {
	for i, q := range open {
		if q.Key == "as" && q.Word == "" && len(sheets) > 1 {
			open[i] = table.Question{Key: "sheet", Text: fmt.Sprintf("Which sheet holds the rows? %q has no column of them.", sheets[0]),
				Options: sheets}
		}
	}
}

// refusal is one bad cell as it is printed.
type refusal struct {
	Line   int    `json:"line"`
	Column string `json:"column"`
	Value  string `json:"value"`
	Reason string `json:"reason"`
}

// printed is the document of "rows --json".
type printed struct {
	Format  string           `json:"format"`
	Rows    []map[string]any `json:"rows"`
	Refused []refusal        `json:"refused"`
	Skipped []table.Skipped  `json:"skipped"`
	Open    []table.Question `json:"open"`
}

// printJSON prints the rows by their keys, absent where nothing is said.
func (r reading[T]) printJSON(res table.Result[T]) int {
	doc := printed{"walkline-rows/1", []map[string]any{}, []refusal{}, []table.Skipped{}, []table.Question{}}
	for i := range res.Rows {
		row := map[string]any{"line": res.Lines[i]}
		for _, c := range r.kind.Columns {
			if c.Get == nil || !slices.Contains(r.keys, c.Name) {
				continue
			}
			if says := c.Get(&res.Rows[i]); says != nil && says != "" {
				row[c.Name] = says
			}
		}
		doc.Rows = append(doc.Rows, row)
	}
	for _, x := range res.Refused {
		for _, f := range x.Faults {
			doc.Refused = append(doc.Refused, refusal{x.Line, f.Column, f.Value, f.Reason})
		}
	}
	doc.Skipped, doc.Open = append(doc.Skipped, res.Skipped...), append(doc.Open, res.Open...)
	e := json.NewEncoder(r.out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(doc); err != nil {
		fmt.Fprintf(r.errs, "%s: %v\n", r.name, err)
		return failed
	}
	if len(res.Open) > 0 {
		return faulty
	}
	return done
}

// printText says what each column became, how the table is read, what is open, and every row that is refused or passed over.
func (r reading[T]) printText(res table.Result[T]) int {
	for _, c := range res.Columns {
		fmt.Fprintf(r.out, "column %-20s is read as %s: %s\n", c.Heading, c.Field, c.Why)
	}
	code := done
	for _, q := range res.Open {
		fmt.Fprintln(r.errs, strings.TrimSpace("to be stated: "+q.Text+" "+howToState(q)))
		code = faulty
	}
	fmt.Fprintln(r.out, said(res.Settled))
	for _, note := range res.Notes {
		fmt.Fprintln(r.out, note)
	}
	fmt.Fprintf(r.out, "%d rows read: %d usable, %d refused, %d passed over\n", res.Read, len(res.Rows), len(res.Refused), len(res.Skipped))
	for _, s := range res.Skipped {
		if s.Why != "blank" {
			fmt.Fprintf(r.out, "line %d: passed over: %s\n", s.Line, s.Why)
		}
	}
	for _, line := range refusals(res.Refused) {
		fmt.Fprintln(r.errs, line)
		if r.strict {
			code = faulty
		}
	}
	return code
}

// said says the notation by which a table was read.
func said(s table.Stated) string {
	var parts []string
	for _, part := range []struct{ words, value string }{{"decimals after ", s.Decimal}, {"dates ", string(s.Dates)}, {"lengths in ",
		s.Unit}, {"money in ", s.Currency}, {"prices ", s.Kind}} {
		if part.value != "" {
			parts = append(parts, part.words+part.value)
		}
	}
	if len(parts) == 0 {
		return "read as it stands"
	}
	return strings.Join(parts, ", ")
}

// howToState says with which option a question is answered.
func howToState(q table.Question) string {
	if len(q.Options) == 0 {
		return ""
	}
	var ways []string
	for _, way := range q.Options {
		if strings.ContainsAny(way, " ,") {
			way = `"` + way + `"`
		}
		ways = append(ways, way)
	}
	switch q.Key {
	case "as":
		if q.Word != "" {
			return fmt.Sprintf("(--as %q, or another of %q)", q.Options[0]+"="+q.Word, q.Options[1:])
		}
		return `(--as "heading=field")`
	case "titles":
		return `(--title "word=clear", or another of ` + strings.Join(ways, ", ") + ")"
	}
	return fmt.Sprintf("(--%s %s)", q.Key, strings.Join(ways, " | "))
}

// parseMixed parses flags that may stand before or after the other arguments. What is wrong with them is said where the flags write.
func parseMixed(flags *flag.FlagSet, args []string) (rest []string, err error) {
	errs := flags.Output()
	flags.SetOutput(io.Discard) // the words of package flag are not ours
	for len(args) > 0 {
		if err := flags.Parse(args); err != nil {
			fmt.Fprintf(errs, "%s: %s\n", flags.Name(), flagWords(err.Error()))
			return nil, err
		}
		if args = flags.Args(); len(args) > 0 {
			rest, args = append(rest, args[0]), args[1:]
		}
	}
	return rest, nil
}
