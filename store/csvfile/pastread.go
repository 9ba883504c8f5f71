package csvfile

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/build"
	"walkline/valuation/money"
)

// PastFields returns the names of the columns that a table of past buys may have.
func PastFields() []string {
	names := make([]string, len(pastFields))
	for i, f := range pastFields {
		names[i] = f.name
	}
	return names
}

// PastTemplate returns an empty table of past buys: its header.
func PastTemplate() []byte { return []byte(strings.Join(PastFields(), ",") + "\r\n") }

// ProposePast returns for each column the field that its name means, [Ignored] where it means none.
func ProposePast(header []string) []string {
	match := make([]string, len(header))
	for i, name := range header {
		match[i] = string(Ignored)
		for _, f := range pastFields {
			same := func(n string) bool { return PlainName(n) == PlainName(name) }
			if (same(f.name) || slices.ContainsFunc(f.also, same)) && !slices.Contains(match[:i], f.name) {
				match[i] = f.name
				break
			}
		}
	}
	return match
}

// pastReader reads one row.
type pastReader struct {
	options  PastOptions
	currency money.Currency
	past     Past
	faults   []Fault
}

// ParsePast returns the past buys of a table and the rows that it refuses. match names the field of each column.
// Errors: the match or the options don't fit; no row is looked at then.
func ParsePast(t Table, match []string, o PastOptions) (PastResult, error) {
	currency, known := money.Lookup(o.Currency)
	if !known || len(match) != len(t.Header) || layouts[o.Dates] == nil {
		return PastResult{}, fmt.Errorf("the columns, the currency %q or the order of dates %q don't fit the table", o.Currency, o.Dates)
	}
	res, seen := PastResult{Read: len(t.Records), Blank: t.Blank}, map[string]int{}
	for _, record := range t.Records {
		r := pastReader{options: o, currency: currency, past: Past{Line: record.Line}}
		r.read(t.Header, match, record, seen)
		if len(r.faults) > 0 {
			res.Refused = append(res.Refused, Refused{record.Line, r.faults, record.Cells})
			continue
		}
		res.Rows = append(res.Rows, r.past)
	}
	return res, nil
}

// read takes the cells of a row.
func (r *pastReader) read(header, match []string, record Record, seen map[string]int) {
	if record.Fault != "" {
		r.faults = []Fault{{Reason: record.Fault}}
		return
	}
	row := sha256.New()
	for i, cell := range record.Cells {
		at := slices.IndexFunc(pastFields, func(f pastField) bool { return f.name == match[i] })
		if at < 0 || cell == "" {
			continue
		}
		fmt.Fprintf(row, "%s\x00%s\x00", match[i], cell)
		if err := pastFields[at].take(r, cell); err != nil {
			r.faults = append(r.faults, Fault{header[i], cell, err.Error()})
		}
	}
	r.settle(hex.EncodeToString(row.Sum(nil)), seen)
}

// settle gives a row its identity and says what cannot be.
func (r *pastReader) settle(fingerprint string, seen map[string]int) {
	b, l := &r.past.Build, &r.past.Lot
	if b.Outcome == "" {
		b.Outcome = build.Open
		if b.Sale.Price != nil {
			b.Outcome = build.Sold
		}
	}
	l.SaleDate = b.Dates.Bought
	key := "id " + l.Number
	if l.Number == "" {
		key = strings.Join([]string{string(b.Dates.Bought), l.VIN, fmt.Sprint(l.ModelYear), l.Make, l.Model, amountWords(b.Hammer)}, "|")
	}
	if l.Number == "" && (b.Dates.Bought == "" && b.Hammer == nil || l.VIN == "" && l.Make == "" && l.Model == "") {
		r.faults = append(r.faults, Fault{Reason: "nothing tells this buy from others: an id, or the day or price with a vehicle"})
	}
	if seen[key]++; seen[key] > 1 && l.Number != "" {
		r.faults = append(r.faults, Fault{Reason: fmt.Sprintf("another row above has the id %q", l.Number)})
	} else if seen[key] > 1 {
		key = fmt.Sprintf("%s|%d", key, seen[key])
	}
	for _, words := range b.Check() {
		r.faults = append(r.faults, Fault{Reason: words})
	}
	b.Imported = build.Imported{As: key, Row: fingerprint}
}

func amountWords(a *money.Amount) string {
	if a == nil {
		return ""
	}
	return fmt.Sprint(int64(*a))
}
