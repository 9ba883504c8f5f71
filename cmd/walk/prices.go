package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"walkline/assets"
	"walkline/store/csvfile"
	"walkline/store/table"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// compsPrices is the command "walk comps prices": many vehicles, each from a table of its own, as CSV.
func compsPrices(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("walk comps prices", flag.ContinueOnError)
	flags.SetOutput(errs)
	path := flags.String("subjects", "", "the vehicles, a CSV file with a column vehicle")
	dir := flags.String("dir", "", "the folder that holds VEHICLE.csv for each vehicle")
	rest, err := parseMixed(flags, args)
	if err != nil || len(rest) > 0 || *path == "" || *dir == "" {
		fmt.Fprint(errs, "walk comps prices: subjects and a folder, walk comps prices --subjects subjects.csv --dir DIR\n")
		return faulty
	}
	data, err := readFile(*path)
	if err != nil {
		fmt.Fprintf(errs, "walk comps prices: reading the subjects: %v\n", err)
		return failed
	}
	subjects, faults := readSubjects(data)
	for _, fault := range faults {
		fmt.Fprintf(errs, "%s: %s\n", *path, fault)
	}
	if len(faults) > 0 {
		return faulty
	}
	prior, err := resale.ParsePrior(assets.ResalePrior())
	if err != nil {
		fmt.Fprintf(errs, "walk comps prices: %v\n", err)
		return faulty
	}
	b := batch{dir: *dir, prior: prior, out: csv.NewWriter(out), errs: errs}
	return b.predict(subjects)
}

// subjectKind reads vehicles as comparables are read, but for their prices: none is read. Each may be in a currency of its own.
func subjectKind() *table.Kind[csvfile.Comparable] {
	k := *csvfile.Comparables
	k.Need, k.Columns = nil, slices.Clone(k.Columns)
	for i := range k.Columns {
		switch c := &k.Columns[i]; c.Name {
		case "price":
			c.Form, c.Must, c.Put = table.Text, "", nil
		case "currency":
			c.Form, c.Put = table.Text, func(into *csvfile.Comparable, v table.Value) error { into.Source = v.Text; return nil }
		}
	}
	return &k
}

// readSubjects returns the subjects as rows whose ids are their names and whose sources are their currencies, in the order of the file,
// and every fault.
func readSubjects(data []byte) ([]resale.Row, []string) {
	s := csvfile.Canonical("")
	s.As, s.Kind = map[string]string{"vehicle": "id"}, "asked"
	first, _, _ := bytes.Cut(data, []byte("\n"))
	if header := strings.FieldsFunc(strings.ToLower(string(first)), func(r rune) bool {
		return strings.ContainsRune(",;\t\r\ufeff",
			r)
	}); slices.Contains(header, "task") {
		return nil, []string{"the column task is called vehicle now: rename it"}
	} else if !slices.Contains(header, "vehicle") {
		return nil, []string{"no column is named vehicle"}
	}
	r, _, err := csvfile.Settle(subjectKind(), data, s)
	if err != nil {
		return nil, []string{err.Error()}
	}
	faults := refusals(r.Refused)
	seen := map[string]bool{}
	rows := make([]resale.Row, len(r.Rows))
	for i, c := range r.Rows {
		rows[i] = c.Known()
		if fault := settle(&rows[i], seen); fault != "" {
			faults = append(faults, fmt.Sprintf("line %d: %s", r.Lines[i], fault))
		}
	}
	return rows, faults
}

// settle returns what is wrong with a subject, and notes its name.
func settle(r *resale.Row, seen map[string]bool) string {
	switch {
	case r.ID == "":
		return "the vehicle is not named"
	case !filepath.IsLocal(r.ID) || strings.ContainsAny(r.ID, `/\`):
		return fmt.Sprintf("vehicle %q: a name of a file, without its folder", r.ID)
	case seen[r.ID]:
		return fmt.Sprintf("vehicle %q: each vehicle once", r.ID)
	case r.ModelYear == 0:
		return fmt.Sprintf("vehicle %s: the model year is needed", r.ID)
	}
	seen[r.ID] = true
	return ""
}

// batch values subjects one after another.
type batch struct {
	dir   string
	prior resale.Prior
	out   *csv.Writer
	errs  io.Writer
}

// predict writes one line a subject that can be valued; the others are named, and make the exit code.
func (b batch) predict(subjects []resale.Row) int {
	code := done
	b.out.Write([]string{"vehicle", "point", "low", "high"}) // csv.Writer keeps the error until it is flushed
	for _, s := range subjects {
		line, err := b.value(s)
		if err != nil {
			fmt.Fprintf(b.errs, "vehicle %s: %v\n", s.ID, err)
			code = max(code, codeOf(err))
			continue
		}
		b.out.Write(line)
	}
	b.out.Flush()
	if err := b.out.Error(); err != nil {
		fmt.Fprintf(b.errs, "walk comps prices: writing the prices: %v\n", err)
		return failed
	}
	return code
}

// codeOf returns the exit code for an error: a file that cannot be read is another matter than a bad one.
func codeOf(err error) int {
	var path *os.PathError
	if errors.As(err, &path) {
		return failed
	}
	return faulty
}

// value returns the line of one subject: its name, median and the ends of the 80 % interval.
func (b batch) value(s resale.Row) ([]string, error) {
	path := filepath.Join(b.dir, s.ID+".csv")
	data, err := readFile(path)
	if err != nil {
		return nil, err
	}
	rows, currency, err := b.rows(data, s)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	beliefs := resale.Beliefs{
		BrandDiscount: valuation.Defaults().Resale.BrandDiscount, AskedToSold: prob.Certain(1), Today: s.Date, Currency: currency,
	}
	model := resale.Fit(rows, subjectOf(s), beliefs, b.prior)
	if err := model.Err(); err != nil {
		return nil, err
	}
	d := model.Distribution()
	line := []string{s.ID}
	for _, chance := range []float64{0.5, 0.1, 0.9} {
		line = append(line, currency.Text(currency.FromMajor(d.Quantile(chance))))
	}
	return line, nil
}

// rows returns the comparables of a subject and the currency that they state, or else the subject's. Rows that cannot be used are named
// and left out.
func (b batch) rows(data []byte, s resale.Row) ([]resale.Row, money.Currency, error) {
	var none money.Currency
	stated := csvfile.Canonical("")
	stated.Wanted, stated.Kind = s.Source, "asked"
	r, _, err := csvfile.Settle(csvfile.Comparables, data, stated)
	if err != nil {
		return nil, none, err
	}
	code := r.Settled.Currency
	if s.Source != "" && code != s.Source {
		return nil, none, fmt.Errorf("the comparables are in %s and the subject in %s", code, s.Source)
	}
	for _, line := range refusals(r.Refused) {
		fmt.Fprintf(b.errs, "vehicle %s: note: left out: %s\n", s.ID, line)
	}
	currency, _ := money.Lookup(code) // known: reading has seen to it
	return csvfile.Rows(r), currency, nil
}

// subjectOf returns the vehicle of a subject's row; its title is clear unless it is stated.
func subjectOf(r resale.Row) resale.Subject {
	s := resale.Subject{
		Trim: r.Trim, Condition: r.Condition, Brand: r.Title, More: r.More,
		Make: r.Make, Model: r.Model, ModelYear: r.ModelYear, Mileage: r.Mileage, Unit: r.Unit,
	}
	if s.Brand == "" {
		s.Brand = "clear"
	}
	return s
}
