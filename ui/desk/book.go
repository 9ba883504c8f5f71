package desk

import (
	"context"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/patterns"
	"walkline/valuation/resale"
)

// Reader reads what is kept.
type Reader interface {
	// Entries returns every lot that is not removed, archived ones too, by sale day and number.
	Entries(ctx context.Context) ([]book.Entry, error)
	// Lots returns what every lot that is not removed says of its vehicle and sale.
	Lots(ctx context.Context) ([]book.Listed, error)
	// Lot returns all that is kept of a lot. Errors: there is none, or it is removed.
	Lot(ctx context.Context, id int64) (book.Lot, error)
	// Shelf returns every comparable on the shelf, in the order in which they came; what it returns must not be changed.
	Shelf(ctx context.Context) ([]book.Comparable, error)
	// Builds returns every lot that was won or lost.
	Builds(ctx context.Context) ([]book.Bought, error)
	// Imports returns the past buys there are, by what their table calls them.
	Imports(ctx context.Context) ([]book.Import, error)
}

// Surveyor reads what lots turned out to be.
type Surveyor interface {
	// Surveys returns the surveys of all lots that have one.
	Surveys(ctx context.Context) ([]patterns.Seen, error)
}

// History keeps actions: each one transaction, and one step of its subject's history.
type History interface {
	// Do keeps a step. Errors: a [book.Clash] where it was made from what is no longer kept; nothing is kept then.
	Do(ctx context.Context, step book.Step) (book.Done, error)
	// Undo takes the last step of a subject back, Redo does the one again that was taken back last.
	Undo(ctx context.Context, of book.Subject) (book.Done, error)
	Redo(ctx context.Context, of book.Subject) (book.Done, error)
	Reach(ctx context.Context, of book.Subject) (book.Reach, error)
}

// Lessons holds what was decided on the learned factors, and the frozen cases that they are tried on.
type Lessons interface {
	// Decisions returns the history, oldest first. The factors in force are those after the last.
	Decisions(ctx context.Context) ([]book.Decision, error)
	// FrozenCases returns the case that was frozen last of each lot; one that can't be read is named among the doubts.
	FrozenCases(ctx context.Context) (cases map[int64]valuation.Case, doubts []string, err error)
}

// Memos keep what is no step: what the window remembers between two starts, and the last answer for the Board.
type Memos interface {
	Setting(ctx context.Context, name string, into any) (bool, error)
	PutSetting(ctx context.Context, name string, value any) error
	// SettingNames returns the names of all that begin with a prefix, in order.
	SettingNames(ctx context.Context, prefix string) ([]string, error)
	// NoteAnswer keeps an answer to a revision of a lot; it is stale where the lot has a later one.
	NoteAnswer(ctx context.Context, of book.Answered, a valuation.Answer) error
}

// Book keeps everything.
type Book interface {
	Reader
	Surveyor
	History
	Lessons
	Memos
}

// Files keeps files by their hash.
type Files interface {
	KeepFile(hash, kind string, data []byte) error
	KeptFile(hash, kind string) ([]byte, error)
}

// Documents reads and writes the project's documents strictly.
type Documents interface {
	// Decode reads a document into a struct and returns every fault: an unknown key, a figure that is none.
	Decode(data []byte, into any) []valuation.Fault
	// Encode writes what Decode gives back unchanged, with money in the currency of the code.
	Encode(v any, currency string) []byte
}

// Importer reads tables of comparables.
type Importer interface {
	Tables
	// Open returns what the file holds and how its columns and figures seem to be meant. Errors: the file is no table, with the reason.
	Open(data []byte, o Opening) (Sheet, error)
	// Read returns the rows that the sheet gives as it is stated, and every refused one.
	Read(s Sheet) ([]resale.Row, []Refusal, error)
	// Merge adds incoming rows to those there are; what is already there is not added again.
	Merge(existing, incoming []resale.Row) ([]resale.Row, Counts)
	// Typed returns a row with what was typed in its fields, by their names. Errors: what can't be read, and why.
	Typed(old resale.Row, cells map[string]string, currency string) (resale.Row, error)
	// Refused writes the refused rows of a sheet as a CSV file that can be corrected and imported again.
	Refused(s Sheet) ([]byte, error)
}

// Sheet is a table on its way in: its columns, what they are taken for, and how its figures are written.
type Sheet struct {
	Name   string // of the file
	Opened Opening
	Data   []byte
	Header []string
	Added  int        // the last so many columns say why rows of an earlier table were refused
	Sample [][]string // the first rows
	Rows   int
	Fields []string // what a column can be
	Stated Stated
	Doubts []Doubt
	Rivals []Rival // fields that several headings name: while one is open nothing is taken

	Why      []string                       // per column, why it is taken for what it is
	Nameless bool                           // no line names the columns: how it is read is not remembered
	Watch    func(done float64) (stop bool) // hears how far a reading is; nil: nothing does
	Held     any                            // what its reader keeps of the file, so that it is taken apart once

	Encoding   string     // of an 8-bit text; empty: the bytes say it, or it is a workbook
	Encodings  []Encoding // that it could be in; none: there is nothing to choose
	Currencies []string   // to choose from for its prices, the likeliest first
	Tabs       []string   // the sheets of a workbook
	Tab        string     // the one that was read
	Headings   int        // the line of the headings; 0: none names the columns
}

// Rival is a field that several headings of a table name: only the user can say which column it is.
type Rival struct {
	Field, Text string
	Ways        []string // headings, no two alike
	At          []int    // the column of each, from 0
}

// Encoding is one way to read the bytes of a text, with a line of it in which the ways differ.
type Encoding struct{ Name, Shows string }

// Opening is what is stated of a file before its table is looked at; the zero value leaves all to the file.
type Opening struct {
	Currency string // of the lot or the shop
	Usual    string // mi | km: theirs, for readings that say none
	Order    string // the system's order, one of [DateWays], for days that can be read in two ways
	Encoding string
	Tab      string
	Headings *int                           // the line that names the columns, 0 for none; nil: as the table shows
	Own      map[int]string                 // what single columns are, by their places from 0, as the user said
	Watch    func(done float64) (stop bool) // hears how far the reading is; nil: nothing does
}

// watched returns an opening that hears of a context.
func (o Opening) watched(ctx context.Context) Opening {
	o.Watch = watch(ctx)
	return o
}

// Tables is what readers of all kinds of tables can do. What they read is not read again to be taken. All of it may run on any goroutine.
type Tables interface {
	// Preview returns what a sheet gives as it is stated.
	Preview(s Sheet) (Preview, error)
	// Reopen returns the table of the same file, read as it is now stated. Errors: as of opening it.
	Reopen(s Sheet, o Opening) (Sheet, error)
}

// Stated is what the user states for a whole table. It is remembered for the next table with the same columns, but for the currency, which
// is the table's or the lot's.
type Stated struct {
	Match    []string          `json:"match"` // per column: one of the sheet's fields
	Marks    string            `json:"marks"` // an example number
	Dates    string            `json:"dates"`
	Unit     string            `json:"unit"`     // where no column says
	Distance string            `json:"distance"` // unit of distances
	Kind     string            `json:"kind"`     // asked or sold, where no column says
	Currency string            `json:"-"`
	Headings *int              `json:"-"`                // the line of the headings, as in [Opening]
	Mended   map[int][]string  `json:"-"`                // cells of rows that were put right, by line
	Titles   map[string]string `json:"titles,omitempty"` // what a word of a title means: clear, a brand, or unknown
	Title    string            `json:"title,omitempty"`  // of comparables that say none; empty: it stays unsaid, and is taken as clear
	Make     string            `json:"-"`                // of the lot that the rows are for
	Model    string            `json:"-"`
	Sale     string            `json:"sale"` // of a run list, where no column says
	SaleDate lot.Date          `json:"sale_date"`
}

// MarkWays and DateWays are the ways to write numbers and dates that can be stated.
var (
	MarkWays = []string{"1,234.50", "1.234,50"}
	DateWays = []string{"day first", "month first"}
)

// Doubt is what a table leaves open: the user is asked.
type Doubt struct {
	Option, Text string
	Ways         []string // the answers to choose from
	Took         string   // the answer that was taken, as [Stated] has it; empty: none
	Word         string   // of a title, that is asked for
}

// Refusal is one row that cannot be used.
type Refusal struct {
	Line          int
	Reason        string   // every reason, with its column and value
	Column, Value string   // of the first bad cell; empty: the row as a whole is bad
	Cells         []string // of the row, as they stand or were put right
}

// Preview is what a table gives as it is stated, before anything is taken.
type Preview struct {
	Rows    int        // that are usable
	Columns []string   // what First shows, after the line
	First   [][]string // the first rows as they will stand, each led by its line
	Teaches []string   // what each row of past buys teaches and what not, led by its line
	Refused []Refusal
	Skipped []Refusal // rows that are none: totals, captions, headings met again
	Open    []Doubt
	Titles  []TitleWord // what the words of its titles were read as
	Uses    []string    // how many rows are used for what, and what is taken for what they don't say
	Odd     []Refusal   // the first usable rows that serve for nothing as they stand: they can be put right like refused ones
}

// TitleWord is a word of a title that stands in a table, with what it was read as and the answers to choose from.
type TitleWord struct {
	Word  string
	Rows  int
	Means string
	Said  string // the word of Stated.Titles that says what it means; empty: the program knows the word
	Ways  []string
}

// Counts say what an import did: Read = New + Same + Changed + Refused.
type Counts struct {
	Read, New, Same, Changed, Refused int
}
