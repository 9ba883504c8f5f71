package runlist

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"walkline/store/csvfile"
	"walkline/valuation/lot"
)

// Result is what a list holds: Read = len(Lots) + len(Refused).
type Result struct {
	Read    int
	Lots    []lot.Lot
	Refused []csvfile.Refused
}

// Parse returns the lots of a table and the rows that it refuses. A fact that the list does not say is left empty.
// Errors: the match does not fit together; no row is looked at then.
func Parse(t csvfile.Table, m []Field, o Options) (Result, error) {
	if err := check(t.Header, m); err != nil {
		return Result{}, err
	}
	p := parser{header: t.Header, match: m, options: o, seen: map[string]int{}}
	res := Result{Read: len(t.Records)}
	for _, r := range t.Records {
		l, faults := p.lot(r)
		if len(faults) > 0 {
			res.Refused = append(res.Refused, csvfile.Refused{Line: r.Line, Faults: faults, Cells: r.Cells})
			continue
		}
		res.Lots = append(res.Lots, l)
	}
	return res, nil
}

// parser holds what every row needs.
type parser struct {
	header  []string
	match   []Field
	options Options
	seen    map[string]int // the line in which each lot came first
}

// lot returns the lot of a row, or why there is none.
func (p parser) lot(r csvfile.Record) (lot.Lot, []csvfile.Fault) {
	if r.Fault != "" {
		return lot.Lot{}, []csvfile.Fault{{Reason: r.Fault}}
	}
	l := lot.Lot{Sale: p.options.Sale, SaleDate: p.options.SaleDate}
	var faults []csvfile.Fault
	unit := ""
	for i, field := range p.match {
		cell := strings.TrimSpace(r.Cells[i])
		if field == Ignored || cell == "" {
			continue
		}
		if err := p.fact(&l, field, cell, &unit); err != nil {
			faults = append(faults, csvfile.Fault{Column: p.header[i], Value: cell, Reason: err.Error()})
		}
	}
	if l.Odometer != nil && l.OdometerUnit == "" {
		l.OdometerUnit = unit
		if unit == "" {
			l.OdometerUnit = p.options.Unit
		}
	}
	if len(faults) == 0 {
		faults = p.again(l, r.Line)
	}
	return l, faults
}

// again returns the fault of a row that names no lot, or one that an earlier line names.
func (p parser) again(l lot.Lot, line int) []csvfile.Fault {
	if l.Number == "" && l.VIN == "" {
		return []csvfile.Fault{{Reason: "neither a lot number nor a VIN: the lot would not be known again"}}
	}
	for _, name := range names(l) {
		if first, twice := p.seen[name]; twice {
			return []csvfile.Fault{{Reason: fmt.Sprintf("the same lot as line %d", first)}}
		}
	}
	for _, name := range names(l) {
		p.seen[name] = line
	}
	return nil
}

// fact puts one cell into the lot; unit is what a unit column says.
func (p parser) fact(l *lot.Lot, field Field, cell string, unit *string) (err error) {
	switch field {
	case Number:
		l.Number = cell
	case Sale:
		l.Sale = cell
	case SaleDate:
		var day string
		day, err = p.options.of().Plain(csvfile.Date, cell)
		l.SaleDate = lot.Date(day)
	case ModelYear:
		l.ModelYear, err = year(cell)
	case Make:
		l.Make = cell
	case Model:
		l.Model = cell
	case Trim:
		l.Trim = cell
	case VIN:
		l.VIN = strings.ToUpper(strings.ReplaceAll(cell, " ", ""))
	case Odometer:
		var whole int
		if whole, err = p.options.odometer(cell); err == nil {
			l.Odometer = &whole
			_, l.OdometerUnit = csvfile.WithoutUnit(cell)
		}
	case Unit:
		*unit, err = coded(cell, unitWords, "neither mi nor km")
	case Statement:
		l.OdometerStatus, err = coded(cell, statementWords, "none of actual, not actual, exceeds limits, exempt, unknown")
	case Document:
		l.Title.Document = strings.ToLower(cell)
	case IssuedIn:
		l.Title.IssuedIn = cell
	case Loss:
		l.Loss = losses(cell)
	case Condition:
		l.Condition, err = coded(cell, conditionWords, "none of drives, starts, turns over, dead, unknown")
	case Keys:
		l.Keys, err = keys(cell)
	}
	return err
}

// mostOdometer bounds an odometer as the case file does: more is a slip.
const mostOdometer = 2_000_000

// odometer reads an odometer. Errors: it is not written as o says, or no whole number in bounds.
func (o Options) odometer(cell string) (int, error) {
	plain, err := o.of().Plain(csvfile.Mileage, cell)
	if err != nil {
		return 0, err
	}
	x, err := strconv.ParseFloat(plain, 64)
	if err != nil || x < 0 || x > mostOdometer || x != float64(int(x)) {
		return 0, fmt.Errorf("an odometer is a whole number from 0 to %d", mostOdometer)
	}
	return int(x), nil
}

// The years that a model year may be of.
const firstYear, lastYear = 1900, 2200

func year(cell string) (int, error) {
	n, err := strconv.Atoi(cell)
	if err != nil || n < firstYear || n > lastYear {
		return 0, fmt.Errorf("a model year is four digits, like 2019")
	}
	return n, nil
}

// Words for codes, in small letters. Common practice, no source.
var (
	unitWords      = map[string]string{"mi": "mi", "mile": "mi", "miles": "mi", "m": "mi", "km": "km", "kms": "km", "kilometres": "km", "kilometers": "km", "k": "km"}
	statementWords = map[string]string{"actual": "actual", "a": "actual", "not actual": "not_actual", "not actual mileage": "not_actual", "exceeds limits": "exceeds_limits",
		"exceeds mechanical limits": "exceeds_limits", "exceeds": "exceeds_limits", "exempt": "exempt", "unknown": "unknown", "true mileage unknown": "not_actual"}
	conditionWords = map[string]string{"drives": "drives", "runs and drives": "drives", "runs & drives": "drives", "starts": "starts", "runs": "starts", "yes": "starts",
		"turns over": "turns_over", "cranks": "turns_over", "dead": "dead", "does not start": "dead", "no start": "dead", "no": "dead", "unknown": "unknown", "not tested": "unknown"}
	keyWords = map[string]string{"yes": "yes", "y": "yes", "true": "yes", "1": "yes", "present": "yes", "no": "no", "n": "no", "false": "no", "0": "no", "missing": "no", "none": "no", "unknown": ""}
)

// coded returns the code of a word; a code itself is one too.
func coded(cell string, words map[string]string, want string) (string, error) {
	code, ok := words[strings.ReplaceAll(strings.ToLower(cell), "_", " ")]
	if !ok {
		return "", fmt.Errorf("%s", want)
	}
	return code, nil
}

func keys(cell string) (*bool, error) {
	code, err := coded(cell, keyWords, "neither yes nor no")
	if err != nil || code == "" {
		return nil, err
	}
	has := code == "yes"
	return &has, nil
}

// lossWords are parts of words that tell a loss, in the order of the codes. Common practice, no source.
var lossWords = []struct {
	code  string
	parts []string
}{
	{"collision", []string{"collision", "front", "rear", "side", "roll", "impact", "crash"}},
	{"flood", []string{"flood", "water"}},
	{"fire", []string{"fire", "burn"}},
	{"theft", []string{"theft", "stolen"}},
	{"hail", []string{"hail"}},
	{"vandalism", []string{"vandal"}},
	{"mechanical", []string{"mechanical", "engine", "transmission"}},
}

// losses returns the codes of the losses that a cell tells of; words that tell of none are another loss.
func losses(cell string) []string {
	words := strings.ToLower(cell)
	var codes []string
	for _, l := range lossWords {
		if slices.ContainsFunc(l.parts, func(part string) bool { return strings.Contains(words, part) }) {
			codes = append(codes, l.code)
		}
	}
	if len(codes) == 0 {
		return []string{"other"}
	}
	return codes
}
