package desk

import (
	"context"

	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// Entry is one lot as the Board lists it.
type Entry struct {
	ID        int64
	State     lot.State
	Archived  bool
	Number    string
	Sale      string
	SaleDate  lot.Date
	ModelYear int
	Make      string
	Model     string
	Trim      string
	Currency  string
	Answer    *Summary // nil: not valued yet
}

// Summary is what the last valuation of a lot said.
type Summary struct {
	Decision   string
	WalkAway   *money.Amount
	Binding    string
	LossChance float64
	MeanProfit float64
	PerHour    *float64
	Stale      bool // the lot was edited since
}

// Reach is what undo and redo would do next; an empty label: nothing.
type Reach struct {
	Undo, Redo string
}

// Shelf holds the lots of the Board.
type Shelf interface {
	Entries(ctx context.Context) ([]Entry, error)
	Add(ctx context.Context, c valuation.Case) (int64, error)
	// AddAll adds all of the cases or none, as one step of the Board.
	AddAll(ctx context.Context, label string, cases []valuation.Case) (ids []int64, err error)
	// Enlist adds lots and gives lots that are there other facts, all of them or none, as one step of the Board.
	Enlist(ctx context.Context, label string, added []valuation.Case, changed []Listed) error
	// Lots returns what every lot that is not removed says of its vehicle and sale.
	Lots(ctx context.Context) ([]Listed, error)
	Duplicate(ctx context.Context, id int64) (int64, error)
	Remove(ctx context.Context, id int64) error
}

// Marks are what the user sets on a lot beside its case.
type Marks interface {
	SetState(ctx context.Context, id int64, s lot.State) error
	Archive(ctx context.Context, id int64, archived bool) error
	NoteAnswer(ctx context.Context, id int64, a valuation.Answer) error
	// Predict keeps what was foretold of a lot, whole and for good, and figure by figure so that it can be held against what comes.
	Predict(ctx context.Context, id int64, c valuation.Case, a valuation.Answer, figures learn.Prediction) error
}

// Ledger keeps the case of each lot with its history.
type Ledger interface {
	Case(ctx context.Context, id int64) (valuation.Case, error)
	Save(ctx context.Context, id int64, label string, c valuation.Case) error
	Undo(ctx context.Context, id int64) (c valuation.Case, label string, done bool, err error)
	Redo(ctx context.Context, id int64) (c valuation.Case, label string, done bool, err error)
	Reach(ctx context.Context, id int64) (Reach, error)
}

// Steps are the history of what is done to the list of lots, and that of the shop's own values: each place, [Board] or [Bench],
// has its own. All that a [Shelf] and [Marks] change of the list is a step of the Board.
type Steps interface {
	// Keep keeps a setting as a step of the Bench.
	Keep(ctx context.Context, label, name string, value any) error
	UndoAt(ctx context.Context, at Place) (label string, done bool, err error)
	RedoAt(ctx context.Context, at Place) (label string, done bool, err error)
	ReachAt(ctx context.Context, at Place) (Reach, error)
}

// Settings keep what the window remembers between two starts.
type Settings interface {
	Setting(ctx context.Context, name string, into any) (bool, error)
	PutSetting(ctx context.Context, name string, value any) error
}

// Book keeps everything.
type Book interface {
	Shelf
	Marks
	Ledger
	Steps
	Settings
	Diary
	Lessons
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
	// Open returns what the file holds and how its columns and figures seem to be meant; currency is that of the case.
	// Errors: the file is no table, with the reason.
	Open(data []byte, currency string) (Sheet, error)
	// Read returns the rows that the sheet gives as it is stated, and every refused one.
	Read(s Sheet) ([]resale.Row, []Refusal, error)
	// Merge adds incoming rows to those there are; what is already there is not added again.
	Merge(existing, incoming []resale.Row) ([]resale.Row, Counts)
	// Refused writes the refused rows of a sheet as a CSV file that can be corrected and imported again.
	Refused(s Sheet) ([]byte, error)
}

// Sheet is a table on its way in: its columns, what they are taken for, and how its figures are written.
type Sheet struct {
	Data   []byte
	Header []string
	Added  int        // the last so many columns say why rows of an earlier table were refused
	Sample [][]string // the first rows
	Rows   int
	Fields []string // what a column can be
	Stated Stated
	Doubts []Doubt

	Why      []string // per column, why it is taken for what it is
	Nameless bool     // no line names the columns: how it is read is not remembered
	Held     any      // what its reader keeps of the file, so that it is taken apart once
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
	Titles   map[string]string `json:"titles,omitempty"` // what a word of a title means: clear, a brand, or unknown
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
	Word         string   // of a title, that is asked for
}

// Refusal is one row that cannot be used.
type Refusal struct {
	Line          int
	Reason        string // every reason, with its column and value
	Column, Value string // of the first bad cell; empty: the row as a whole is bad
}

// Preview is what a table gives as it is stated, before anything is taken.
type Preview struct {
	Rows    int        // that are usable
	Columns []string   // what First shows, after the line
	First   [][]string // the first rows as they will stand, each led by its line
	Refused []Refusal
	Skipped []Refusal // rows that are none: totals, captions, headings met again
	Open    []Doubt
}

// Previewer shows what a sheet gives. It may run on any goroutine, and what it read is not read again to be taken.
type Previewer interface {
	Preview(s Sheet) (Preview, error)
}

// Counts say what an import did: Read = New + Same + Changed + Refused.
type Counts struct {
	Read, New, Same, Changed, Refused int
}
