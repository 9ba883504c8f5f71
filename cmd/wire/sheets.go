package wire

import (
	"cmp"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"
	"time"

	"walkline/store/cell"
	"walkline/store/csvfile"
	"walkline/store/grid"
	"walkline/store/table"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// sheets read one kind of table for the desk. A file is taken apart once, when it is opened, and read once for each way of stating it.
type sheets[T any] struct {
	kind    func() *table.Kind[T]
	first   func(T) []string                // a row as the preview shows it
	shown   []string                        // what first gives, by name
	used    func([]T, desk.Stated) []string // says what usable rows are used for; nil: nothing is said
	odd     func(T) string                  // why a usable row serves for nothing as it stands, empty: it serves; nil: all do
	foreign bool                            // its prices may be in another currency than the wanted one
}

// held is what a sheet keeps of its file: its cells, and what they were last read as.
type held[T any] struct {
	mu     sync.Mutex
	grid   grid.Grid
	stated desk.Stated
	result table.Result[T]
	read   bool
}

// today is the day of an import.
func today() lot.Date { return lot.Date(time.Now().Format(time.DateOnly)) }

// open returns the table with the match and the notation that it suggests. What it leaves open is answered with the first way and said.
func (r sheets[T]) open(data []byte, o desk.Opening) (desk.Sheet, error) {
	g, ways, err := gridOf(data, o)
	if err != nil {
		return desk.Sheet{}, err
	}
	kind := r.kind()
	res, doubts, err := csvfile.SettleGrid(kind, g, table.Stated{Wanted: o.Currency, Usual: o.Usual, Order: cell.Order(o.Order),
		Headings: o.Headings, Own: o.Own, On: today(), Watch: o.Watch})
	if err != nil {
		return desk.Sheet{}, err
	}
	rivals := rivalsOf(res.Open)
	currencies, asked := currenciesOf(res.Open, res.Settled.Currency, o.Currency)
	if settled := cmp.Or(res.Settled.Currency, asked); !r.foreign && len(rivals) == 0 && o.Currency != "" &&
		settled != "" && settled != o.Currency {
		return desk.Sheet{}, csvfile.OtherCurrency(settled, o.Currency)
	}
	s := desk.Sheet{Data: data, Header: res.Header(), Added: table.Added(res.Header()), Nameless: res.Headings == 0, Rows: res.Read,
		Fields: kind.Fields(), Sample: res.Body, Opened: o, Encodings: ways, Tabs: g.Sheets, Tab: o.Tab, Headings: res.Headings,
		Currencies: currencies, Rivals: rivals}
	if len(ways) > 0 {
		s.Encoding = g.Encoding
	}
	if s.Tab == "" && len(g.Sheets) > 0 {
		s.Tab = g.Sheets[0]
	}
	for _, q := range doubts {
		s.Doubts = append(s.Doubts, desk.Doubt{Option: q.Key, Text: q.Text, Took: took(q)})
	}
	settled := res.Settled
	s.Stated = desk.Stated{Marks: cell.Example(mark(settled.Decimal)), Dates: string(settled.Dates), Unit: settled.Unit,
		Distance: settled.Distance, Kind: settled.Kind, Currency: settled.Currency, Headings: o.Headings}
	for _, c := range res.Columns {
		s.Stated.Match, s.Why = append(s.Stated.Match, c.Field), append(s.Why, c.Why)
	}
	if len(ways) > 0 && o.Encoding == "" {
		s.Doubts = append(s.Doubts, desk.Doubt{Option: "encoding", Text: "The bytes don't say which letters they are. Choose the reading " +
			"whose words look right. Read as " + g.Encoding + "."})
	}
	s.Held = &held[T]{grid: g}
	return s, nil
}

// rivalsOf returns what is asked of columns that are one field by their headings.
func rivalsOf(open []table.Question) (rivals []desk.Rival) {
	for _, q := range open {
		if q.Key == "as" && q.Word != "" {
			rivals = append(rivals, desk.Rival{Field: q.Word, Text: q.Text, Ways: q.Options, At: q.At})
		}
	}
	return rivals
}

// took returns the answer that was taken for a question, as the desk states it.
func took(q table.Question) string {
	if q.Key == "decimal" {
		return cell.Example(mark(q.Options[0]))
	}
	return q.Options[0]
}

// currenciesOf returns the currencies to choose from for the prices of a table, the likeliest first, and those that it asks for, in words.
func currenciesOf(open []table.Question, likely ...string) (codes []string, asked string) {
	all := likely
	for _, q := range open {
		if q.Key == "currency" {
			all = slices.Concat(q.Options, likely)
			asked = strings.Join(q.Options, " or ")
		}
	}
	for _, code := range append(all, "USD", "CAD", "EUR", "GBP", "PLN", "CHF") {
		if _, known := money.Lookup(code); known && !slices.Contains(codes, code) {
			codes = append(codes, code)
		}
	}
	return codes, asked
}

// reopen returns the table of the same file, read as it is now stated. What was stated of the lot or the sale stays.
func (r sheets[T]) reopen(s desk.Sheet, o desk.Opening) (desk.Sheet, error) {
	o.Currency, o.Usual, o.Order = s.Opened.Currency, s.Opened.Usual, s.Opened.Order
	again, err := r.open(s.Data, o)
	if err != nil {
		return s, err
	}
	again.Name = s.Name
	again.Stated.Make, again.Stated.Model, again.Stated.Sale, again.Stated.SaleDate = s.Stated.Make, s.Stated.Model, s.Stated.Sale,
		s.Stated.SaleDate
	if o.Encoding == s.Opened.Encoding && o.Tab == s.Opened.Tab && reflect.DeepEqual(o.Headings, s.Opened.Headings) { // the same rows
		again.Stated.Titles, again.Stated.Title, again.Stated.Mended = s.Stated.Titles, s.Stated.Title, s.Stated.Mended
	}
	return again, nil
}

// gridOf returns the cells of a file. Where its bytes don't settle how it is encoded it is read in the first way, and the ways are there
// to choose from.
func gridOf(data []byte, o desk.Opening) (g grid.Grid, ways []desk.Encoding, err error) {
	g, err = grid.Read(data, grid.Options{Sheet: o.Tab})
	var u grid.Unsettled
	if errors.As(err, &u) {
		for _, w := range u.Ways {
			ways = append(ways, desk.Encoding{Name: w.Encoding, Shows: w.Shows})
		}
		encoding := o.Encoding
		if encoding == "" {
			encoding = u.Ways[0].Encoding
		}
		g, err = grid.Read(data, grid.Options{Encoding: encoding})
	}
	return g, ways, err
}

func mark(decimal string) byte {
	if decimal == "," {
		return ','
	}
	return '.'
}

// stated returns what the desk states as package table takes it.
func stated(d desk.Stated) table.Stated {
	s := table.Stated{Headings: d.Headings, Match: d.Match, Titles: d.Titles, Dates: cell.Order(d.Dates), Unit: d.Unit, Distance: d.Distance,
		Kind: d.Kind, Title: d.Title, Currency: d.Currency,
		Sale: d.Sale, SaleDate: d.SaleDate, Make: d.Make, Model: d.Model, On: today()}
	if s.Dates != cell.DayFirst && s.Dates != cell.MonthFirst {
		s.Dates = ""
	}
	if n := len(d.Marks); n > 3 {
		s.Decimal = d.Marks[n-3 : n-2]
	}
	return s
}

// result returns what a sheet gives as it is stated, from memory where it was read so before. It may run on any goroutine.
func (r sheets[T]) result(s desk.Sheet) (table.Result[T], error) {
	h, ok := s.Held.(*held[T])
	if !ok {
		g, _, err := gridOf(s.Data, s.Opened)
		if err != nil {
			return table.Result[T]{}, err
		}
		h = &held[T]{grid: g}
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.read && reflect.DeepEqual(h.stated, s.Stated) {
		return h.result, nil
	}
	if len(s.Stated.Match) != len(s.Header) {
		return table.Result[T]{}, fmt.Errorf("%d columns are matched and the table has %d", len(s.Stated.Match), len(s.Header))
	}
	how := stated(s.Stated)
	how.Watch = s.Watch
	res, err := table.Read(r.kind(), mended(h.grid, s.Stated.Mended), how)
	if err != nil {
		return res, err
	}
	for _, q := range res.Open {
		if q.Key == "as" {
			return res, fmt.Errorf("%s", q.Text)
		}
	}
	h.result, h.read = res, true
	h.stated = valuation.Copy(s.Stated)
	return res, nil
}

// taken returns what a sheet gives to be taken. Errors: it is not said which column is what, and those of result.
func (r sheets[T]) taken(s desk.Sheet) (table.Result[T], error) {
	if len(s.Rivals) > 0 {
		return table.Result[T]{}, errors.New(s.Rivals[0].Text)
	}
	return r.result(s)
}

// mended returns a grid with the cells of some rows as they were put right, by line.
func mended(g grid.Grid, by map[int][]string) grid.Grid {
	if len(by) == 0 {
		return g
	}
	g.Rows = slices.Clone(g.Rows)
	for i, r := range g.Rows {
		if cells, there := by[r.Line]; there {
			g.Rows[i] = grid.Row{Line: r.Line, Cells: cells}
		}
	}
	return g
}

// refused returns the refused rows of a sheet as CSV.
func (r sheets[T]) refused(s desk.Sheet) ([]byte, error) {
	res, err := r.result(s)
	if err != nil {
		return nil, err
	}
	return table.WriteRefused(res.Header(), res.Refused), nil
}

// firstShown is how many rows a preview shows as they will stand.
const firstShown = 8

// preview returns what a sheet gives as it is stated.
func (r sheets[T]) preview(s desk.Sheet) (desk.Preview, error) {
	res, err := r.result(s)
	if err != nil {
		return desk.Preview{}, err
	}
	p := desk.Preview{Rows: len(res.Rows), Columns: r.shown, Refused: refusals(res.Refused)}
	for i, row := range res.Rows[:min(firstShown, len(res.Rows))] {
		p.First = append(p.First, append([]string{fmt.Sprint(res.Lines[i])}, r.first(row)...))
	}
	for _, x := range res.Skipped {
		if x.Why != "blank" {
			p.Skipped = append(p.Skipped, desk.Refusal{Line: x.Line, Reason: x.Why})
		}
	}
	for _, t := range res.Titles {
		p.Titles = append(p.Titles, desk.TitleWord{Word: t.Word, Rows: t.Rows, Means: t.Means, Said: t.Stated, Ways: table.TitleMeanings})
	}
	if r.used != nil {
		p.Uses = r.used(res.Rows, s.Stated)
	}
	p.Uses = append(p.Uses, res.Notes...)
	if unused := res.Unused(); len(unused) > 0 {
		p.Uses = append(p.Uses, fmt.Sprintf("Columns that are not used: %s.", strings.Join(unused, ", ")))
	}
	p.Odd = r.odds(s, res)
	for _, q := range res.Open {
		p.Open = append(p.Open, desk.Doubt{Option: q.Key, Text: q.Text, Ways: q.Options, Word: q.Word})
	}
	return p, nil
}

// mostOdd bounds the rows that serve for nothing and are offered to be put right.
const mostOdd = 200

// odds returns the first usable rows that serve for nothing, with their cells as they stand.
func (r sheets[T]) odds(s desk.Sheet, res table.Result[T]) (list []desk.Refusal) {
	h, ok := s.Held.(*held[T])
	if r.odd == nil || !ok {
		return nil
	}
	at := map[int]int{} // by line
	for i, row := range res.Rows {
		if why := r.odd(row); why != "" && len(list) < mostOdd {
			at[res.Lines[i]] = len(list)
			list = append(list, desk.Refusal{Line: res.Lines[i], Reason: why})
		}
	}
	if len(list) == 0 {
		return nil
	}
	for _, row := range mended(h.grid, s.Stated.Mended).Rows {
		if i, is := at[row.Line]; is {
			list[i].Cells = row.Cells
		}
	}
	return list
}

// refusals puts the reasons of each refused row into one line.
func refusals(list []table.Refused) []desk.Refusal {
	var refused []desk.Refusal
	for _, r := range list {
		var reasons []string
		for _, f := range r.Faults {
			reasons = append(reasons, f.String())
		}
		refused = append(refused, desk.Refusal{Line: r.Line, Reason: strings.Join(reasons, "; "), Column: r.Faults[0].Column,
			Value: table.Short(r.Faults[0].Value), Cells: r.Cells})
	}
	return refused
}

// printed returns the shown fields of a row as text.
func printed[T any](k *table.Kind[T], fields []string) func(T) []string {
	return func(row T) []string {
		out := make([]string, len(fields))
		for _, c := range k.Columns {
			for i, f := range fields {
				if c.Name == f && c.Get != nil {
					if says := c.Get(&row); says != nil {
						out[i] = written(says, c.Form)
					}
				}
			}
		}
		return out
	}
}
