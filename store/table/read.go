package table

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"walkline/store/cell"
	"walkline/store/grid"
	"walkline/valuation/money"
)

// Read returns the rows of a kind that a grid holds. Errors: what is stated does not fit the table; no row is looked at then.
func Read[T any](k *Kind[T], g grid.Grid, s Stated) (Result[T], error) {
	k.prepare()
	if s.Decimal != "" && s.Decimal != "." && s.Decimal != "," {
		return Result[T]{}, fmt.Errorf("%q is no decimal mark: . or ,", s.Decimal)
	}
	if s.Dates != "" && s.Dates != cell.DayFirst && s.Dates != cell.MonthFirst {
		return Result[T]{}, fmt.Errorf("%q is no order of dates: day first or month first", s.Dates)
	}
	h, err := k.head(g, s.Headings)
	if err != nil {
		return Result[T]{}, err
	}
	res := Result[T]{Skipped: h.skipped, Headings: h.line}
	body := h.sift(&res.Skipped)
	res.Columns = k.propose(h.header, body)
	k.guess(res.Columns, body, h.headless)
	if err := k.state(res.Columns, s); err != nil {
		return res, err
	}
	res.Open = append(res.Open, k.missing(res.Columns, body)...)
	res.Open = append(res.Open, k.rivals(res.Columns, body, &s)...)
	p := plan[T]{kind: k, res: &res, stated: &s, titles: map[string]titled{}}
	if err := p.settle(body); err != nil {
		return res, err
	}
	if err := p.rows(body); err != nil {
		return res, err
	}
	res.Settled = s
	return res, nil
}

// sift returns the rows of the body that may be rows of the kind, and says the others.
func (h *headed) sift(skipped *[]Skipped) []grid.Row {
	kept, all := h.body, true
	for i := range h.body {
		r := &h.body[i]
		why := h.passed(r)
		if why != "" && all {
			kept, all = append(make([]grid.Row, 0, len(h.body)), h.body[:i]...), false
		}
		switch {
		case why != "":
			*skipped = append(*skipped, Skipped{r.Line, why})
		case !all:
			kept = append(kept, *r)
		}
	}
	return kept
}

// plan is how the rows of a table are read.
type plan[T any] struct {
	kind     *Kind[T]
	res      *Result[T]
	stated   *Stated
	notation []notation
	at       []int    // by column of the table: the column of the kind, -1 for none
	keep     []string // by column of the table: the key under which it is kept; empty: it is not
	money    money.Currency
	titles   map[string]titled
	lacks    string // why no row can be one: no column is a field that each needs
	sums     []sum  // by column of the table
	value    Value  // of the cell that is read
	bares    int    // rows taken that hold nothing but numbers: then no row can be told to add up others
}

type titled struct {
	means string
	known bool
}

// sum is what the rows so far add up to in one column.
type sum struct {
	n     int
	total money.Amount
}

// settle works out the notation of every column and asks what is open.
func (p *plan[T]) settle(body []grid.Row) error {
	n := len(p.res.Columns)
	p.notation, p.at, p.keep, p.sums = make([]notation, n), make([]int, n), make([]string, n), make([]sum, n)
	st := settling{columns: p.res.Columns, forms: make([]Form, n), used: make([]bool, n), body: body, must: -1, stated: p.stated}
	headings := map[string]string{}
	for i, c := range p.res.Columns {
		p.at[i] = p.kind.at(c.Field)
		if c.Field == Other {
			p.keep[i] = freeKey(c.Heading, p.keep[:i])
		}
		if p.at[i] >= 0 {
			of := p.kind.Columns[p.at[i]]
			st.forms[i], st.used[i] = of.Form, true
			p.notation[i].thousand = cell.SaysThousand(c.Heading)
			if of.Must != "" && of.Form == Money {
				st.must = i
			}
			headings[c.Field] = c.Heading
		}
	}
	for i, c := range p.kind.Columns {
		if c.Must != "" && !slices.Contains(p.at, i) {
			p.lacks = c.Must
		}
	}
	st.decimals(p.notation)
	st.orders(p.notation)
	st.units(p.notation)
	st.currency()
	if p.kind.Ask != nil {
		st.open = append(st.open, p.kind.Ask(headings, p.stated)...)
	}
	st.titles()
	p.res.Titles, p.res.Notes = st.words, st.notes
	p.res.Open = append(p.res.Open, unlike(st.open)...)
	code := p.stated.Currency
	if code == "" {
		code = "USD" // while the question is open: only that the prices are prices is seen
	}
	known := false
	if p.money, known = money.Lookup(code); !known {
		return fmt.Errorf("%q is no ISO 4217 code of a currency", code)
	}
	for i := range p.notation {
		if p.stated.Decimal == "" && p.notation[i].decimal != 0 {
			p.stated.Decimal = string(p.notation[i].decimal)
		}
		p.stated.Dates = first(p.stated.Dates, p.notation[i].order)
		if st.used[i] && st.forms[i] == Odometer {
			p.stated.Unit = first(p.stated.Unit, p.notation[i].unit)
		}
	}
	return nil
}

func first[V ~string](a, b V) V {
	if a != "" {
		return a
	}
	return b
}

// unlike returns the questions, of those that one answer settles the first.
func unlike(open []Question) []Question {
	var out []Question
	seen := map[string]bool{}
	for _, q := range open {
		if q.Key != "titles" && seen[q.Key] {
			continue
		}
		seen[q.Key] = true
		out = append(out, q)
	}
	return out
}

// shownRows is how many first rows come back as they stand in the table.
const shownRows = 8

// watchedRows is after how many rows it is told how far the reading is.
const watchedRows = 2048

// rows reads every row of the body. Errors: [ErrStopped].
func (p *plan[T]) rows(body []grid.Row) error {
	p.res.Rows, p.res.Lines = make([]T, 0, len(body)), make([]int, 0, len(body))
	for i := range body {
		r := &body[i]
		if i%watchedRows == 0 && p.stated.Watch != nil && p.stated.Watch(float64(i)/float64(len(body))) {
			return ErrStopped
		}
		n := len(p.res.Rows) // the place of the row, which is given up where it is none
		p.res.Rows = append(p.res.Rows, *new(T))
		faults, adds := p.row(&p.res.Rows[n], r)
		if adds || len(faults) > 0 {
			clear(p.res.Rows[n:])
			p.res.Rows = p.res.Rows[:n]
		}
		if adds {
			p.res.Skipped = append(p.res.Skipped, Skipped{r.Line, "it adds up the rows above"})
			continue
		}
		p.res.Read++
		if len(p.res.Body) < shownRows {
			p.res.Body = append(p.res.Body, r.Cells)
		}
		if len(faults) > 0 {
			p.res.Refused = append(p.res.Refused, Refused{r.Line, faults, r.Cells})
			continue
		}
		p.res.Lines = append(p.res.Lines, r.Line)
	}
	return nil
}

// spent is an amount that a row has in a column.
type spent struct {
	column int
	amount money.Amount
}

// mostAmounts bounds the columns of money whose sums are watched.
const mostAmounts = 4

// row reads one row, and reports whether it only adds up those above.
func (p *plan[T]) row(into *T, r *grid.Row) (faults []Fault, adds bool) {
	if r.Fault != "" {
		return []Fault{{Reason: r.Fault}}, false
	}
	if len(r.Cells) > len(p.at) && strings.Join(r.Cells[len(p.at):], "") != "" {
		return []Fault{{Reason: fmt.Sprintf("the row has %d cells and the headings %d", len(r.Cells), len(p.at))}}, false
	}
	bare := true // nothing but numbers stands in it
	var amounts [mostAmounts]spent
	n := 0
	for i, text := range r.Cells[:min(len(r.Cells), len(p.at))] {
		at := p.at[i]
		if at < 0 && text != "" && p.keep[i] != "" {
			p.kind.Keep(into, p.keep[i], text)
			bare = false
		}
		if at < 0 || cell.Nothing(text) {
			continue
		}
		form := p.kind.Columns[at].Form
		bare = bare && numeric(form)
		p.value = Value{Text: text}
		if err := p.cell(into, i, r); err != nil {
			faults = append(faults, Fault{p.res.Columns[i].Heading, text, err.Error()})
		} else if form == Money && n < mostAmounts {
			amounts[n] = spent{i, p.value.Amount}
			n++
		}
	}
	if bare && p.bares == 0 && slices.ContainsFunc(amounts[:n], p.adds) {
		return nil, true
	}
	if faults = p.whole(into, r, faults); len(faults) == 0 {
		p.count(amounts[:n], bare)
	}
	return faults, false
}

// cell reads the text that a cell has been given into its value and puts that into the row.
func (p *plan[T]) cell(into *T, i int, r *grid.Row) error {
	column, text := &p.kind.Columns[p.at[i]], p.value.Text
	if p.kind.Said != nil {
		p.kind.Said(into, column.Name, text)
	}
	if err := p.read(column.Form, i, text, r); err != nil {
		return err
	}
	if column.Form == Vehicle {
		return p.kind.Split(into, text, p.stated)
	}
	if column.Put != nil {
		return column.Put(into, p.value)
	}
	return nil
}

// count adds the amounts of a row that is taken.
func (p *plan[T]) count(amounts []spent, bare bool) {
	for _, a := range amounts {
		s := &p.sums[a.column]
		s.n, s.total = s.n+1, s.total+a.amount
	}
	if bare {
		p.bares++
	}
}

// whole says what is missing, and settles the row.
func (p *plan[T]) whole(into *T, r *grid.Row, faults []Fault) []Fault {
	for i, at := range p.at {
		if at < 0 || p.kind.Columns[at].Must == "" {
			continue
		}
		text := ""
		if i < len(r.Cells) {
			text = r.Cells[i]
		}
		if cell.Nothing(text) {
			faults = append(faults, Fault{p.res.Columns[i].Heading, text, p.kind.Columns[at].Must})
		}
	}
	if p.lacks != "" && len(faults) == 0 {
		faults = append(faults, Fault{Reason: p.lacks})
	}
	if len(faults) == 0 && p.kind.Whole != nil {
		if err := p.kind.Whole(into, r.Line, p.stated); err != nil {
			faults = append(faults, Fault{Reason: err.Error()})
		}
	}
	return faults
}

// adds reports whether an amount is the sum or the mean of those above it.
func (p *plan[T]) adds(a spent) bool {
	s, amount := p.sums[a.column], a.amount
	if s.n < 2 {
		return false
	}
	whole := money.Amount(1)
	for range p.money.Digits {
		whole *= 10
	}
	mean := s.total / money.Amount(s.n)
	return amount == s.total || amount-mean < whole && mean-amount < whole
}

// freeKey returns the key of a column that is kept: the words of its heading, with a count where another has the same.
func freeKey(heading string, taken []string) string {
	key := Key(heading)
	for n := 2; slices.Contains(taken, key); n++ {
		key = fmt.Sprintf("%s_%d", Key(heading), n)
	}
	return key
}

// OtherPrefix starts the heading of a column that is kept though its words name a field.
const OtherPrefix = "other: "

// Key returns the key of a column that is kept: small letters and digits, words joined by "_".
func Key(heading string) string {
	words := strings.FieldsFunc(strings.ToLower(strings.TrimPrefix(heading, OtherPrefix)), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	if len(words) == 0 {
		return "column"
	}
	return strings.Join(words, "_")
}
