package runlist

import (
	"fmt"
	"slices"
	"strings"

	"walkline/store/csvfile"
	"walkline/valuation/lot"
)

// Field is what a column of a run list means.
type Field string

// The facts of a lot that a run list can hold.
const (
	Number    Field = "lot_number"
	Sale      Field = "sale"
	SaleDate  Field = "sale_date"
	ModelYear Field = "model_year"
	Make      Field = "make"
	Model     Field = "model"
	Trim      Field = "trim"
	VIN       Field = "vin"
	Odometer  Field = "odometer"
	Unit      Field = "odometer_unit"
	Statement Field = "odometer_statement"
	Document  Field = "title_document"
	IssuedIn  Field = "title_issued_in"
	Loss      Field = "loss"
	Condition Field = "condition"
	Keys      Field = "keys"
	Ignored   Field = "ignore" // not read
)

// Fields lists the facts in their order.
var Fields = []Field{Number, Sale, SaleDate, ModelYear, Make, Model, Trim, VIN, Odometer, Unit, Statement, Document, IssuedIn, Loss, Condition, Keys}

// synonyms are the names under which a fact goes, the likeliest first, as csvfile.PlainName leaves them. Common practice, no source.
var synonyms = map[Field][]string{
	Number:    {"lot number", "lot", "lot no", "lot #", "number", "no", "run number", "run", "item", "item number"},
	Sale:      {"sale", "sale name", "auction", "yard", "location", "branch", "site"},
	SaleDate:  {"sale date", "sale day", "date", "auction date", "date of sale", "day"},
	ModelYear: {"model year", "year", "my", "built"},
	Make:      {"make", "manufacturer", "maker"},
	Model:     {"model", "model name"},
	Trim:      {"trim", "trim level", "version", "variant", "series"},
	VIN:       {"vin", "vehicle identification number", "serial number", "chassis number"},
	Odometer:  {"odometer", "mileage", "odometer reading", "miles", "km", "kms", "kilometres", "kilometers", "mi"},
	Unit:      {"odometer unit", "mileage unit", "unit", "units"},
	Statement: {"odometer statement", "odometer status", "odometer brand", "mileage status"},
	Document:  {"title document", "document", "title", "title type", "title status", "sale document"},
	IssuedIn:  {"title issued in", "title state", "issued in", "state of title", "title jurisdiction"},
	Loss:      {"loss", "loss type", "cause of loss", "type of loss", "damage", "primary damage"},
	Condition: {"condition", "runs", "run condition", "start", "starts"},
	Keys:      {"keys", "key", "has keys"},
}

// Propose returns what the names of the columns suggest; a column that fits no fact is ignored.
func Propose(header []string) []Field {
	m := make([]Field, len(header))
	for i := range m {
		m[i] = Ignored
	}
	for _, field := range Fields {
		for _, synonym := range synonyms[field] {
			at := slices.IndexFunc(header, func(name string) bool { return csvfile.PlainName(name) == csvfile.PlainName(synonym) })
			if at >= 0 && m[at] == Ignored {
				m[at] = field
				break
			}
		}
	}
	return m
}

// check returns what stands in the way of reading a table so.
func check(header []string, m []Field) error {
	if len(m) != len(header) {
		return fmt.Errorf("the columns are matched for another file")
	}
	for i, field := range m {
		if first := slices.Index(m, field); field != Ignored && first != i {
			return fmt.Errorf("columns %q and %q are both matched to %s: choose one", header[first], header[i], strings.ReplaceAll(string(field), "_", " "))
		}
	}
	if !slices.Contains(m, Number) && !slices.Contains(m, VIN) {
		return fmt.Errorf("no column is matched to the lot number or the VIN: choose one, so that a lot is known again")
	}
	return nil
}

// Options is how one list is written, stated for the whole import.
type Options struct {
	Marks    csvfile.Marks
	Dates    csvfile.Order
	Unit     string   // mi | km, of odometers that don't say
	Sale     string   // the sale, where no column says
	SaleDate lot.Date // its day, where no column says
}

// of returns the options as package csvfile takes them.
func (o Options) of() csvfile.Options {
	all := csvfile.Canonical("USD") // a run list has no prices: the currency is never used
	all.Marks, all.Dates, all.Unit = o.Marks, o.Dates, o.Unit
	return all
}

// ProposeOptions returns the options that whole columns suggest, and what remains in doubt.
func ProposeOptions(t csvfile.Table, m []Field) (Options, []csvfile.Doubt) {
	alike := make(csvfile.Match, len(m))
	for i, field := range m {
		alike[i] = csvfile.Column{Name: t.Header[i], Field: csvfile.Ignored}
		switch field {
		case Odometer:
			alike[i].Field = csvfile.Mileage
		case SaleDate:
			alike[i].Field = csvfile.Date
		case Unit:
			alike[i].Field = csvfile.Unit
		}
	}
	given := csvfile.Options{Currency: "USD", Kind: "asked", DistanceUnit: "mi", Marks: marksOf(t, m)}
	found, doubts := csvfile.ProposeOptions(t, alike, given)
	return Options{Marks: found.Marks, Dates: found.Dates, Unit: found.Unit}, doubts
}

// marksOf returns the marks with which the most odometers read as whole numbers, the likeliest of equals: 61,200 and 61.200
// are both sixty-one thousand, whatever their mark.
func marksOf(t csvfile.Table, m []Field) csvfile.Marks {
	best, most := csvfile.KnownMarks[0], -1
	at := slices.Index(m, Odometer)
	for _, marks := range csvfile.KnownMarks {
		o, whole := Options{Marks: marks, Dates: csvfile.YearFirst}, 0
		for _, r := range t.Records {
			if at >= 0 && r.Fault == "" && o.whole(r.Cells[at]) {
				whole++
			}
		}
		if whole > most {
			best, most = marks, whole
		}
	}
	return best
}

// whole reports whether an odometer reads as a whole number.
func (o Options) whole(cell string) bool {
	_, err := o.odometer(cell)
	return cell != "" && err == nil
}
