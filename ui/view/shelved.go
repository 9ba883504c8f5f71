package view

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// ShelfColumns are the columns of the shelf of comparables.
var ShelfColumns = []Column{{"Price", true, 110}, {"Kind", false, 56}, {"Date", false, 104}, {"Vehicle", false, 180},
	{"Mileage", true, 104}, {"Title", false, 80}, {"From", false, 120}, {"Came on", false, 104}, {"Before", true, 90}}

// The columns of the shelf that are sorted by more than their words.
const (
	shelfPrice   = 0
	shelfDate    = 2
	shelfMileage = 4
	shelfCame    = 7
	shelfBefore  = 8
)

// Shelf is the shelf of comparables as the Bench shows it, made ready to be searched and sorted. Rows are put in words only when they are
// asked for.
type Shelf struct {
	all   []book.Comparable
	words []string // of each, in small letters: what a search looks at; none until one does
	rows  []int
}

// ShelfFilter is what of the shelf is shown and in which order.
type ShelfFilter struct {
	Search string
	From   string // a source; empty: every one
	Sort   int    // column; -1: newest first
	Down   bool
}

// NewShelf returns the shelf of a state, of which nothing is shown yet.
func NewShelf(s desk.State) *Shelf { return &Shelf{all: s.Shelf} }

// Of reports whether it is the shelf of a state.
func (v *Shelf) Of(s desk.State) bool {
	return len(v.all) == len(s.Shelf) && (len(v.all) == 0 || &v.all[0] == &s.Shelf[0])
}

// Show shows the rows that have every word of a search and come from the source, in the order that is asked for; what has nothing to sort
// by comes last, rising and falling.
func (v *Shelf) Show(f ShelfFilter) {
	wanted := strings.Fields(strings.ToLower(f.Search))
	v.rows = nil
	for i := range slices.Backward(v.all) {
		if (f.From == "" || SourceOf(v.all[i]) == f.From) && v.says(i, wanted) {
			v.rows = append(v.rows, i)
		}
	}
	if f.Sort < 0 {
		return
	}
	keys := make([]shelfKey, len(v.rows))
	for n, i := range v.rows {
		keys[n] = v.key(i, f.Sort)
		keys[n].row, keys[n].place = i, n
	}
	slices.SortFunc(keys, func(a, b shelfKey) int { return cmp.Or(a.compare(b, f.Down), a.place-b.place) })
	for n := range keys {
		v.rows[n] = keys[n].row
	}
}

// says reports whether every word stands somewhere in a row.
func (v *Shelf) says(i int, wanted []string) bool {
	if len(wanted) == 0 {
		return true
	}
	if v.words == nil {
		v.words = make([]string, len(v.all))
	}
	if v.words[i] == "" {
		c := v.all[i]
		r := c.Row
		v.words[i] = strings.ToLower(strings.Join([]string{r.Make, r.Model, r.Trim, year(r.ModelYear), r.Title, r.Note, string(r.Date),
			Day(r.Date), SourceOf(c)}, " "))
	}
	return !slices.ContainsFunc(wanted, func(w string) bool { return !strings.Contains(v.words[i], w) })
}

// shelfKey is what a row of the shelf is sorted by: amounts by currency and value, days by the calendar, the rest by its words.
type shelfKey struct {
	words      string
	figure     float64
	known      bool
	row, place int // of the row, and where it stood before
}

func (k shelfKey) compare(to shelfKey, down bool) int {
	if k.known != to.known {
		if k.known {
			return -1
		}
		return 1
	}
	way := cmp.Or(cmp.Compare(k.words, to.words), cmp.Compare(k.figure, to.figure))
	if down {
		return -way
	}
	return way
}

func (v *Shelf) key(i, column int) shelfKey {
	c := v.all[i]
	var words string
	switch column {
	case shelfPrice:
		return shelfKey{words: c.Currency, figure: float64(c.Row.Price), known: true}
	case shelfBefore:
		if n := len(c.Earlier); n > 0 {
			return shelfKey{words: c.Currency, figure: float64(c.Earlier[n-1].Price), known: true}
		}
		return shelfKey{}
	case shelfMileage:
		if c.Row.Mileage == nil {
			return shelfKey{}
		}
		if c.Row.Unit == "km" {
			return shelfKey{figure: *c.Row.Mileage / lot.KilometresPerMile, known: true}
		}
		return shelfKey{figure: *c.Row.Mileage, known: true}
	case shelfDate:
		words = string(c.Row.Date)
	case shelfCame:
		words = string(c.On)
	default:
		words = shelfCells(c)[column]
	}
	return shelfKey{words: words, known: words != ""}
}

// Len returns how many rows are shown.
func (v *Shelf) Len() int { return len(v.rows) }

// At returns the comparable shown at i.
func (v *Shelf) At(i int) book.Comparable { return v.all[v.rows[i]] }

// Shown returns where the comparable of an id is shown, -1 for nowhere.
func (v *Shelf) Shown(id int64) int {
	return slices.IndexFunc(v.rows, func(i int) bool { return v.all[i].ID == id })
}

// Cells returns the cells of the row shown at i.
func (v *Shelf) Cells(i int) []string { return shelfCells(v.At(i)) }

func shelfCells(c book.Comparable) []string {
	r, p := c.Row, NewPurse(c.Currency)
	before := ""
	if n := len(c.Earlier); n > 0 {
		before = p.Exact(c.Earlier[n-1].Price)
		if n > 1 {
			before += fmt.Sprintf(" (%d)", n)
		}
	}
	price := p.Exact(r.Price)
	if c.Currency != "" {
		price = c.Currency + " " + price
	}
	return []string{price, kind(r.Kind), Day(r.Date), strings.TrimSpace(year(r.ModelYear) + " " + strings.TrimSpace(r.Make+" "+r.Model+" "+
		r.Trim)), mileage(r), r.Title, SourceOf(c), Day(c.On), before}
}
