package table

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"walkline/store/cell"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Form is how the cells of a column are written.
type Form int

// The forms.
const (
	Text Form = iota
	Money
	Odometer
	Distance
	Number
	Day
	Year
	Title
	Vehicle  // year, make, model and more in one cell
	Currency // the code of the row's currency
	Unit     // of the row's odometer
)

// What a column can be beside the fields of its kind.
const (
	Other   = "other"  // kept under its own name
	Ignored = "ignore" // not read
)

// Value is what a cell says, as far as its column's form goes.
type Value struct {
	Text   string
	Amount money.Amount
	Length cell.Length
	Number float64
	Day    lot.Date
	Year   int
	Unit   string // of a length: of the cell, else of the column; empty: neither says
}

// Column is one field that rows of T can have.
type Column[T any] struct {
	Name  string // as the terminal and the memory name it
	Words string // phrases of headings that mean it, in seven languages, parted by bars; the likeliest first
	Form  Form
	Must  string                       // why a row without it is none; empty: it may lack
	Many  bool                         // several columns may be it
	Cells cell.Set                     // words that its cells are, by which it is known where no heading names it; nil: none
	Put   func(into *T, v Value) error // Errors: the value can't be one of the field
	Get   func(of *T) any              // what is printed; nil: not said
	Join  func(old, newer *T)          // takes what a newer row says
}

// Kind is one kind of table that is read.
type Kind[T any] struct {
	Columns []Column[T]
	Need    []string // fields of which at least one column must be one
	// Ask returns what the whole table leaves open beside notation, and settles it where the headings tell.
	Ask func(headings map[string]string, s *Stated) []Question
	// Whole settles a row whose cells are read. Errors: it can't be one.
	Whole func(r *T, line int, s *Stated) error
	// Keep takes the cell of a column that is kept under a key of its own; nil: none is.
	Keep func(into *T, key, text string)
	// Said hears of every cell that is read, as it stands; nil: nothing does.
	Said func(into *T, field, text string)
	// Split takes year, make, model and what else stands in a vehicle cell.
	Split func(into *T, text string, s *Stated) error

	phrases []phrase
}

// at returns the place of a field, -1 for none.
func (k *Kind[T]) at(name string) int {
	for i := range k.Columns {
		if k.Columns[i].Name == name {
			return i
		}
	}
	return -1
}

// Fields returns what a column can be.
func (k *Kind[T]) Fields() []string {
	var names []string
	for _, c := range k.Columns {
		names = append(names, c.Name)
	}
	if k.Keep != nil {
		names = append(names, Other)
	}
	return append(names, Ignored)
}

// InText returns a column of text.
func InText[T any](name, words string, at func(*T) *string) Column[T] {
	return Column[T]{Name: name, Words: words,
		Put: func(r *T, v Value) error { *at(r) = v.Text; return nil },
		Get: func(r *T) any { return orNil(*at(r)) },
		Join: func(old, newer *T) {
			if n := *at(newer); n != "" && n != Tidy(*at(old)) {
				*at(old) = n
			}
		}}
}

// InDay returns a column of days.
func InDay[T any](name, words string, at func(*T) *lot.Date) Column[T] {
	return Column[T]{Name: name, Words: words, Form: Day,
		Put:  func(r *T, v Value) error { *at(r) = v.Day; return nil },
		Get:  func(r *T) any { return orNil(*at(r)) },
		Join: func(old, newer *T) { Overlay(at(old), *at(newer)) }}
}

// InYear returns a column of model years; a day stands for its year.
func InYear[T any](name, words string, at func(*T) *int) Column[T] {
	return Column[T]{Name: name, Words: words, Form: Year,
		Put:  func(r *T, v Value) error { *at(r) = v.Year; return nil },
		Get:  func(r *T) any { return orNil(*at(r)) },
		Join: func(old, newer *T) { Overlay(at(old), *at(newer)) }}
}

func orNil[V comparable](v V) any {
	var nothing V
	if v == nothing {
		return nil
	}
	return v
}

// Overlay takes a value that says something.
func Overlay[V comparable](into *V, newer V) {
	var nothing V
	if newer != nothing {
		*into = newer
	}
}

// Tidy returns text as a file gives it back: without outer spaces and with plain line ends.
func Tidy(s string) string { return strings.TrimSpace(strings.ReplaceAll(s, "\r\n", "\n")) }

// Stated is what is stated for a whole table; what is empty is left to the table.
type Stated struct {
	Headings *int              `json:"headings,omitempty"` // the line that names the columns, 0 for none; nil: as the table shows
	As       map[string]string `json:"as,omitempty"`       // heading, number or letter of a column: its field
	Match    []string          `json:"match,omitempty"`    // the field of each column, instead
	Own      map[int]string    `json:"-"`                  // fields of single columns, by their places from 0; the rest as proposed
	Titles   map[string]string `json:"titles,omitempty"`   // word of a title: clear, a brand, or unknown
	Decimal  string            `json:"decimal,omitempty"`  // . or ,
	Dates    cell.Order        `json:"dates,omitempty"`
	Unit     string            `json:"unit,omitempty"`     // mi | km, of lengths that don't say
	Distance string            `json:"distance,omitempty"` // mi | km, of distances that don't say; empty: as Unit
	Kind     string            `json:"kind,omitempty"`     // asked | sold, of prices that don't say
	Currency string            `json:"-"`                  // the table's; never remembered
	Wanted   string            `json:"-"`                  // that of the lot or shop, where the table leaves it open
	Usual    string            `json:"-"`                  // mi | km: the lot's or shop's, by which an open question is answered
	Order    cell.Order        `json:"-"`                  // the system's, by which an open question is answered
	On       lot.Date          `json:"-"`                  // the day of the import
	Later    bool              `json:"-"`                  // On is a past day: a row may be of a later one
	Sale     string            `json:"-"`                  // of a run list, where no column says
	SaleDate lot.Date          `json:"-"`
	Source   string            `json:"-"` // of comparables, where no column says
	Title    string            `json:"-"` // of comparables, where a row says none; empty: it stays unsaid
	Make     string            `json:"-"` // of the lot that the rows are for
	Model    string            `json:"-"`

	Watch func(done float64) (stop bool) `json:"-"` // hears how far the reading is, 0..1; nil: nothing does
}

// ErrStopped says that whoever watched the reading had it stopped.
var ErrStopped = errors.New("the reading was stopped")

// Question is what a table leaves open.
type Question struct {
	Key     string   `json:"-"` // what of [Stated] answers it: decimal, dates, unit, currency, kind, titles, as
	Word    string   `json:"-"` // of a title, that is asked for
	Text    string   `json:"question"`
	Options []string `json:"options"`
	At      []int    `json:"-"` // of columns to choose from: the place of each option
}

// Fault is one bad cell. Column is empty when the row as a whole is bad.
type Fault struct {
	Column, Value, Reason string
}

// String returns the fault as a sentence part: `price "12,5O": not a number ...`.
func (f Fault) String() string {
	if f.Column == "" {
		return f.Reason
	}
	return f.Column + ` "` + Short(f.Value) + `": ` + f.Reason
}

// mostShown is how many bytes of a cell are shown in a sentence or a list. Ours: two lines of a window.
const mostShown = 200

// Short returns what is shown of a cell: all of it but where it has no end in sight.
func Short(cell string) string {
	if len(cell) <= mostShown {
		return cell
	}
	return fmt.Sprintf("%s… (%d characters)", strings.ToValidUTF8(cell[:mostShown], ""), utf8.RuneCountInString(cell))
}

// Refused is a row that was not taken, with every reason.
type Refused struct {
	Line   int
	Faults []Fault
	Cells  []string // as in the table
}

// Skipped is a row that is none of the kind.
type Skipped struct {
	Line int    `json:"line"`
	Why  string `json:"why"`
}

// Became is what a column was taken for.
type Became struct {
	Heading, Field, Why string
}

// Result is what a table holds: Read = len(Rows) + len(Refused).
type Result[T any] struct {
	Columns  []Became
	Settled  Stated // the notation by which the rows were read
	Read     int
	Rows     []T
	Lines    []int // one for each of Rows
	Refused  []Refused
	Skipped  []Skipped
	Open     []Question
	Notes    []string    // what was settled by more than what the table says
	Titles   []TitleWord // what its words of titles were read as
	Body     [][]string  // the first rows, as in the table
	Headings int         // the line of the headings, 0 for none
}

// Header returns the names of the columns.
func (r Result[T]) Header() []string {
	names := make([]string, len(r.Columns))
	for i, c := range r.Columns {
		names[i] = c.Heading
	}
	return names
}

// Unused returns the headings of the columns that are not read.
func (r Result[T]) Unused() (names []string) {
	for _, c := range r.Columns {
		if c.Field == Ignored && c.Heading != "" {
			names = append(names, c.Heading)
		}
	}
	return names
}
