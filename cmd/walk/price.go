package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"slices"
	"strings"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/store/table"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// subjectFile is the document that "walk comps price" reads: the vehicle as it will stand, and beliefs as in a case file.
type subjectFile struct {
	Currency string   `json:"currency"`
	ValuedOn lot.Date `json:"valued_on"` // empty: the newest day of the table
	resale.Subject
	ModelYear     int        `json:"model_year"`
	Make          string     `json:"make"`
	Model         string     `json:"model"`
	Mileage       *float64   `json:"mileage"`
	Unit          string     `json:"mileage_unit"`
	BrandDiscount prob.Three `json:"brand_discount"`
	AskedToSold   prob.Three `json:"asked_to_sold"`
}

// compsPrice is the command "walk comps price": the price of one vehicle from one table, as JSON.
func compsPrice(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("walk comps price", flag.ContinueOnError)
	flags.SetOutput(errs)
	path := flags.String("subject", "", "the vehicle as it will stand, a JSON file")
	files, err := parseMixed(flags, args)
	if err != nil || len(files) != 1 || *path == "" {
		fmt.Fprint(errs, "walk comps price: a table and a subject, walk comps price file.csv --subject subject.json\n")
		return faulty
	}
	document, err := readFile(*path)
	if err != nil {
		fmt.Fprintf(errs, "walk comps price: reading the subject: %v\n", err)
		return failed
	}
	s, faults := readSubject(document)
	if code := report(faults, "", errs); code != done {
		return code
	}
	data, err := readFile(files[0])
	if err != nil {
		fmt.Fprintf(errs, "walk comps price: reading the table: %v\n", err)
		return failed
	}
	rows, code := readRows(data, table.Stated{Wanted: s.Currency, Distance: "mi", On: s.ValuedOn, Later: true, Make: s.Make,
		Model: s.Model}, "", files[0], errs)
	if code != done {
		return code
	}
	prior, err := resale.ParsePrior(assets.ResalePrior())
	if err == nil {
		err = writeFit(s, rows, prior, out)
	}
	if err != nil {
		fmt.Fprintf(errs, "walk comps price: %v\n", err)
		return faulty
	}
	return done
}

// readSubject returns the subject that a document describes, beliefs left out at the defaults of a case, and every fault.
func readSubject(data []byte) (subjectFile, []casefile.Fault) {
	usual := valuation.Defaults()
	s := subjectFile{Unit: "mi", BrandDiscount: usual.Resale.BrandDiscount, AskedToSold: usual.Resale.AskedToSold}
	if faults := casefile.Decode(data, &s); len(faults) > 0 {
		return s, faults
	}
	var faults []casefile.Fault
	unless := func(good bool, key string, value any, want string) {
		if !good {
			faults = append(faults, casefile.Fault{Key: key, Value: fmt.Sprint(value), Want: want})
		}
	}
	unless(s.ModelYear >= lot.FirstModelYear && s.ModelYear <= lot.LastModelYear, "model_year", s.ModelYear,
		"the model year, from 1900 to 2200")
	unless(s.Unit == "mi" || s.Unit == "km", "mileage_unit", s.Unit, "mi or km")
	unless(s.Mileage == nil || *s.Mileage >= 0 && *s.Mileage <= lot.MostMileage, "mileage", deref(s.Mileage),
		fmt.Sprintf("a mileage from 0 to %d", lot.MostMileage))
	unless(s.Condition == nil || *s.Condition >= 1 && *s.Condition <= 5, "condition", deref(s.Condition),
		"a number from 1 (poor) to 5 (as new)")
	unless(s.Upkeep == "" || slices.Contains(resale.Upkeeps, s.Upkeep), "upkeep", s.Upkeep, strings.Join(resale.Upkeeps, ", "))
	d, a := s.BrandDiscount, s.AskedToSold
	unless(d.Ordered() && d.Low >= 0 && d.High < 1, "brand_discount", d, "low, likely and high in this order, fractions from 0 to below 1")
	unless(a.Ordered() && a.Low > 0 && a.High <= 2, "asked_to_sold", a, "low, likely and high in this order, factors above 0 and at most 2")
	return s, faults
}

// deref returns what x points to, 0 for nothing.
func deref(x *float64) float64 {
	if x == nil {
		return 0
	}
	return *x
}

// fitted is what "walk comps price" prints. Prices are in major units; the grid's are exact, as decimal strings.
type fitted struct {
	Currency string    `json:"currency"`
	Point    float64   `json:"point"` // median
	Low      float64   `json:"low"`   // of the 80 % interval
	High     float64   `json:"high"`
	Mean     float64   `json:"mean"`
	RowsUsed int       `json:"rows_used"`
	Warnings []warning `json:"warnings"`
	Grid     []gridRow `json:"grid"`
}

// warning is one of the fit's warnings, with what it means for the price and what to do about it.
type warning struct {
	resale.Warning
	Meaning string `json:"meaning"`
}

// gridRow is one comparable brought to the subject: price and adjustments add up exactly to adjusted.
type gridRow struct {
	Row         int     `json:"row"` // position in the table, from 0
	ID          string  `json:"id,omitempty"`
	Price       string  `json:"price"`
	AskedToSold string  `json:"asked_to_sold"`
	Date        string  `json:"date"`
	Mileage     string  `json:"mileage"`
	Age         string  `json:"age"`
	Trim        string  `json:"trim"`
	Brand       string  `json:"brand"`
	Other       string  `json:"other"`
	Adjusted    string  `json:"adjusted"`
	Weight      float64 `json:"weight"`
	Influence   float64 `json:"influence"`
	Used        bool    `json:"used"`
	Why         string  `json:"why,omitempty"`
}

// writeFit fits the table to the subject and writes price, interval and grid.
func writeFit(s subjectFile, rows []resale.Row, prior resale.Prior, out io.Writer) error {
	currency, _ := money.Lookup(s.Currency) // known: reading the subject has seen to it
	subject := s.Subject
	subject.ModelYear, subject.Make, subject.Model, subject.Mileage, subject.Unit = s.ModelYear, s.Make, s.Model, s.Mileage, s.Unit
	beliefs := resale.Beliefs{BrandDiscount: s.BrandDiscount, AskedToSold: s.AskedToSold, Today: s.ValuedOn, Currency: currency}
	model := resale.Fit(rows, subject, beliefs, prior)
	if err := model.Err(); err != nil {
		return err
	}
	p := model.Price()
	f := fitted{s.Currency, p.P50, p.P10, p.P90, p.Mean, p.RowsUsed, warnings(p.Warnings), gridRows(p.Adjusted, currency)}
	e := json.NewEncoder(out)
	e.SetIndent("", "  ")
	return e.Encode(f)
}

func warnings(found []resale.Warning) []warning {
	out := make([]warning, len(found))
	for i, w := range found {
		out[i] = warning{w, w.Code.Meaning()}
	}
	return out
}

// gridRows returns the comparables with their money as exact text.
func gridRows(adjusted []resale.Adjusted, currency money.Currency) []gridRow {
	rows := make([]gridRow, len(adjusted))
	for i, a := range adjusted {
		rows[i] = gridRow{
			Row: a.Row, ID: a.ID, Price: currency.Text(a.Price), AskedToSold: currency.Text(a.AskedToSold), Date: currency.Text(a.Date),
			Mileage: currency.Text(a.Mileage), Age: currency.Text(a.Age), Trim: currency.Text(a.Trim), Brand: currency.Text(a.Brand),
			Other:    currency.Text(a.Engine + a.Place + a.Other), // the format's one figure for the rest
			Adjusted: currency.Text(a.Adjusted), Weight: a.Weight, Influence: a.Influence, Used: a.Used,
			Why: a.Why,
		}
	}
	return rows
}
