package main

import (
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
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// compsPredict is the command "walk comps predict": many vehicles, each from a table of its own, as CSV.
func compsPredict(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("walk comps predict", flag.ContinueOnError)
	flags.SetOutput(errs)
	path := flags.String("subjects", "", "the vehicles, a CSV file with a column task")
	dir := flags.String("dir", "", "the folder that holds TASK.csv for each task")
	rest, err := parseMixed(flags, args)
	if err != nil || len(rest) > 0 || *path == "" || *dir == "" {
		fmt.Fprint(errs, "walk comps predict: subjects and a folder, walk comps predict --subjects subjects.csv --dir DIR\n")
		return faulty
	}
	data, err := readFile(*path)
	if err != nil {
		fmt.Fprintf(errs, "walk comps predict: reading the subjects: %v\n", err)
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
		fmt.Fprintf(errs, "walk comps predict: %v\n", err)
		return faulty
	}
	b := batch{dir: *dir, prior: prior, out: csv.NewWriter(out), errs: errs}
	return b.predict(subjects)
}

// placeholder is the price that stands in for the one to be found, so that one reader checks subjects and comparables.
const placeholder, placeholderCurrency = "1", "USD"

// readSubjects returns the subjects as rows whose ids are their tasks, in the order of the file, and every fault. A price
// that the file may state is not read.
func readSubjects(data []byte) ([]resale.Row, []string) {
	table, err := csvfile.Read(data, csvfile.Reading{})
	if err != nil {
		return nil, []string{err.Error()}
	}
	at := slices.Index(table.Header, "task")
	if at < 0 {
		return nil, []string{"no column is named task"}
	}
	match := csvfile.Propose(table.Header).Set("task", csvfile.ID)
	for _, c := range match {
		if c.Field == csvfile.Price {
			match = match.Set(c.Name, csvfile.Ignored)
		}
	}
	const name = "price to be found"
	table.Header = append(table.Header, name)
	match = append(match, csvfile.Column{Name: name, Field: csvfile.Price})
	for i, r := range table.Records {
		if r.Fault == "" {
			table.Records[i].Cells = append(r.Cells, placeholder)
		}
	}
	result, err := csvfile.Parse(table, match, csvfile.Canonical(placeholderCurrency))
	if err != nil {
		return nil, []string{err.Error()}
	}
	faults := refusals(result.Refused)
	seen := map[string]bool{}
	for i := range result.Rows {
		if fault := settle(&result.Rows[i], seen); fault != "" {
			faults = append(faults, fmt.Sprintf("line %d: %s", result.Lines[i], fault))
		}
	}
	return result.Rows, faults
}

// settle returns what is wrong with a subject, and notes its task.
func settle(r *resale.Row, seen map[string]bool) string {
	switch {
	case r.ID == "":
		return "the task is not named"
	case !filepath.IsLocal(r.ID) || strings.ContainsAny(r.ID, `/\`):
		return fmt.Sprintf("task %q: a name of a file, without its folder", r.ID)
	case seen[r.ID]:
		return fmt.Sprintf("task %q: each task once", r.ID)
	case r.ModelYear == 0:
		return fmt.Sprintf("task %s: the model year is needed", r.ID)
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
	b.out.Write([]string{"task", "point", "low", "high"}) // csv.Writer keeps the error until it is flushed
	for _, s := range subjects {
		line, err := b.value(s)
		if err != nil {
			fmt.Fprintf(b.errs, "task %s: %v\n", s.ID, err)
			code = max(code, codeOf(err))
			continue
		}
		b.out.Write(line)
	}
	b.out.Flush()
	if err := b.out.Error(); err != nil {
		fmt.Fprintf(b.errs, "walk comps predict: writing the prices: %v\n", err)
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

// value returns the line of one subject: task, median and the ends of the 80 % interval.
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

// rows returns the comparables of a task and the currency that its column, or else the subject's, states. Rows that
// cannot be used are named and left out.
func (b batch) rows(data []byte, s resale.Row) ([]resale.Row, money.Currency, error) {
	var none money.Currency
	table, err := csvfile.Read(data, csvfile.Reading{})
	if err != nil {
		return nil, none, err
	}
	code, err := csvfile.StatedCurrency(table)
	own := s.More[csvfile.CurrencyColumn]
	switch {
	case err != nil:
		return nil, none, err
	case code == "":
		code = own
	case own != "" && own != code:
		return nil, none, fmt.Errorf("the comparables are in %s and the subject in %s", code, own)
	}
	result, err := csvfile.Parse(table, csvfile.Propose(table.Header), csvfile.Canonical(code))
	if err != nil {
		return nil, none, err
	}
	for _, line := range refusals(result.Refused) {
		fmt.Fprintf(b.errs, "task %s: note: left out: %s\n", s.ID, line)
	}
	currency, _ := money.Lookup(code) // known: parsing has seen to it
	return result.Rows, currency, nil
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
