package view

import (
	"cmp"
	"slices"
	"strings"

	"walkline/store/book"
	"walkline/ui/damage"
	"walkline/valuation"
)

// Column is one column of a table: its heading, whether figures stand in it, and its share of the width.
type Column struct {
	Title   string
	Figures bool
	Width   float32
}

// Pictured reports whether pictures stand in a column of the Board.
func (c BoardColumn) Pictured() bool { return c.At() >= columnPhoto }

// BoardColumns are the columns of the Board.
var BoardColumns = []Column{
	{"Sale day", false, 104}, {"Lot", false, 46}, {"Vehicle", false, 164}, {"Walk-away bid", true, 104}, {"Plan", false, 88},
	{"Set by", false, 150}, {"Loss chance", true, 86}, {"Expected profit", true, 104}, {"Chance to win", true, 94},
	{"Expected gain", true, 96}, {"Per hour", true, 66}, {"State", false, 92}, {"Worth a look", true, 86},
	{"Sale", false, 120}, {"Odometer", true, 90}, {"Title", false, 110}, {"Damage", false, 150},
	{PhotoColumn, false, 84}, {PlanColumn, false, 84},
}

// The columns of the Board that show pictures.
const (
	PhotoColumn = "First photo"
	PlanColumn  = "Damage plan"
)

// boardShown is how many of the columns are shown until others are chosen: the first ones.
const boardShown = columnLook + 1

// BoardColumn is one of BoardColumns that is shown on the Board, by its title, and the width that it was given; 0: its own.
type BoardColumn struct {
	Title string  `json:"title"`
	Width float32 `json:"width,omitempty"`
}

// At returns the place of the column among BoardColumns, -1 where there is none of its title.
func (c BoardColumn) At() int {
	return slices.IndexFunc(BoardColumns, func(b Column) bool { return b.Title == c.Title })
}

// FirstColumns returns the columns that are shown until others are chosen.
func FirstColumns() []BoardColumn {
	var first []BoardColumn
	for i, c := range BoardColumns[:boardShown] {
		if i != columnHour && i != columnWin { // there is no room for them at the usual width of the window
			first = append(first, BoardColumn{Title: c.Title})
		}
	}
	return first
}

// LongestNumber returns the longest lot number of some rows.
func LongestNumber(rows []*BoardRow) string {
	longest := ""
	for _, r := range rows {
		if len(r.entry.Number) > len(longest) {
			longest = r.entry.Number
		}
	}
	return longest
}

// fillLook writes how the lot looks.
func fillLook(cells []string, l book.Look) {
	if l.Odometer != nil {
		cells[columnOdometer] = strings.TrimSpace(NewPurse("").Whole(float64(*l.Odometer)) + " " + l.Unit)
	}
	title := l.Brands
	if len(title) == 0 && l.Document != "" {
		title = []string{l.Document}
	}
	cells[columnTitle] = strings.Join(AllWords(title), ", ")
	var areas []string
	for _, d := range l.Damage {
		areas = append(areas, damage.Short(d.Area))
	}
	cells[columnDamage] = strings.Join(areas, ", ")
	cells[columnDrawn] = cells[columnDamage]
	if l.Photo != nil {
		cells[columnPhoto] = l.Photo.Name
	}
}

// BoardRow is one lot of the Board.
type BoardRow struct {
	ID    int64
	entry book.Entry
	words string // all that it says, in small letters: what a search looks at
}

// Look returns what the row's pictures are drawn from.
func (r *BoardRow) Look() book.Look { return r.entry.Look }

// Filter is what of the Board is shown and in which order.
type Filter struct {
	Search   string
	Sort     int // column
	Down     bool
	Archived bool
}

// Listing is the lots of the Board, made ready to be searched and sorted.
type Listing struct{ all []*BoardRow }

// List returns the listing of some lots.
func List(entries []book.Entry) Listing {
	rows := make([]BoardRow, len(entries))
	all := make([]*BoardRow, len(entries))
	for i, e := range entries {
		rows[i] = BoardRow{ID: e.ID, entry: e}
		all[i] = &rows[i]
	}
	return Listing{all}
}

// Rows returns the rows that the filter lets through, in its order; what has nothing to sort by comes last, rising and falling.
func (l Listing) Rows(f Filter) []*BoardRow {
	wanted := strings.Fields(strings.ToLower(f.Search))
	var keys []key
	for _, r := range l.all {
		if (f.Archived || !r.entry.Archived) && r.says(wanted) {
			keys = append(keys, r.key(f.Sort))
		}
	}
	slices.SortStableFunc(keys, func(a, b key) int { return a.compare(b, f.Down) })
	rows := make([]*BoardRow, len(keys))
	for i, k := range keys {
		rows[i] = k.row
	}
	return rows
}

// says reports whether every word stands somewhere in the row.
func (r *BoardRow) says(wanted []string) bool {
	if len(wanted) == 0 {
		return true
	}
	if r.words == "" {
		r.words = strings.ToLower(strings.Join(r.Cells(), " ") + " " + r.entry.Sale + " " + r.Listed())
	}
	return !slices.ContainsFunc(wanted, func(w string) bool { return !strings.Contains(r.words, w) })
}

// contains reports whether every word of the search stands somewhere in the cells.
func contains(cells []string, search string) bool {
	all := strings.ToLower(strings.Join(cells, " "))
	for _, word := range strings.Fields(strings.ToLower(search)) {
		if !strings.Contains(all, word) {
			return false
		}
	}
	return true
}

// Listed returns what the run list says of the row's lot, empty where it says nothing.
func (r *BoardRow) Listed() string {
	says := ListSays(r.entry.Listed, r.entry.Currency)
	if len(says) == 0 {
		return ""
	}
	return "The list says: " + strings.Join(says, " · ")
}

// Cells returns what the row says.
func (r *BoardRow) Cells() []string {
	e := r.entry
	state := string(e.State)
	if e.Archived {
		state += ", archived"
	}
	cells := make([]string, len(BoardColumns))
	cells[columnDay], cells[columnNumber], cells[columnVehicle] = Day(e.SaleDate), e.Number, Vehicle(e.ModelYear, e.Make, e.Model, e.Trim)
	cells[columnBinds], cells[columnState] = "not valued yet", state
	cells[columnSale] = e.Sale
	fillLook(cells, e.Look)
	if a := e.Answer; a != nil {
		fillAnswer(cells, *a, NewPurse(e.Currency))
	}
	return cells
}

// fillAnswer writes what the last valuation said.
func fillAnswer(cells []string, a book.Summary, p Purse) {
	cells[columnBid], cells[columnBinds] = "do not bid", shortRule(a.Binding)
	if a.Binding == valuation.Unready {
		cells[columnBid] = NotYet
		if words := needWords(a.Needs); words != "" {
			cells[columnBinds] = words
		}
	}
	if a.WalkAway != nil {
		cells[columnBid], cells[columnPlan] = p.Show(*a.WalkAway), planNames[a.Plan]
		cells[columnLoss], cells[columnProfit] = Percent(a.LossChance), p.Whole(a.MeanProfit)
		if a.PerHour != nil {
			cells[columnHour] = p.Whole(*a.PerHour)
		}
		if a.WinChance != nil && a.ExpectedGain != nil {
			cells[columnWin], cells[columnGain] = Percent(*a.WinChance), p.Whole(*a.ExpectedGain)
		}
	}
	if a.FirstGuess {
		cells[columnBinds] = "first guess: " + cells[columnBinds]
		if a.LookWorth != nil {
			cells[columnLook] = p.Exact(p.Currency.FromMajor(*a.LookWorth)) + "/min"
		}
	}
	if a.Shift != nil {
		cells[columnBinds] += " (was " + Amount(p.Currency.Code, a.Shift.Was) + ")"
	}
	switch {
	case a.Stale:
		cells[columnBinds] += " (edited since)"
	case a.Old:
		cells[columnBinds] += " (being valued anew)"
	}
}

// key is what a row is sorted by: figures by their value, lot numbers by their length first, so that 9 stands before 10.
type key struct {
	row    *BoardRow
	known  bool
	figure float64
	words  string
}

// The columns of the Board.
const (
	columnDay = iota
	columnNumber
	columnVehicle
	columnBid
	columnPlan
	columnBinds
	columnLoss
	columnProfit
	columnWin
	columnGain
	columnHour
	columnState
	columnLook
	columnSale
	columnOdometer
	columnTitle
	columnDamage
	columnPhoto // from here on pictures
	columnDrawn
)

func (r *BoardRow) key(column int) key {
	e, k := r.entry, key{row: r}
	switch column {
	case columnDay:
		k.words = string(e.SaleDate)
	case columnNumber:
		k.words = e.Number
		k.figure = float64(len(e.Number))
	case columnVehicle:
		k.words = Vehicle(e.ModelYear, e.Make, e.Model, e.Trim)
	case columnOdometer:
		if k.known = e.Odometer != nil; k.known {
			k.figure = float64(*e.Odometer)
		}
		return k
	case columnBid, columnLoss, columnProfit, columnWin, columnGain, columnHour, columnLook:
		k.figure, k.known = r.figure(column)
		return k
	default:
		k.words = r.Cells()[column]
	}
	k.known = k.words != ""
	return k
}

// figure returns a figure of the row's answer, and whether there is one.
func (r *BoardRow) figure(column int) (float64, bool) {
	a := r.entry.Answer
	switch {
	case a != nil && a.LookWorth != nil && column == columnLook:
		return *a.LookWorth, true
	case a == nil || a.WalkAway == nil:
		return 0, false
	case column == columnBid:
		return float64(*a.WalkAway), true
	case column == columnLoss:
		return a.LossChance, true
	case column == columnProfit:
		return a.MeanProfit, true
	}
	x := map[int]*float64{columnWin: a.WinChance, columnGain: a.ExpectedGain, columnHour: a.PerHour}[column]
	if x == nil {
		return 0, false
	}
	return *x, true
}

// compare orders two keys; what is not known comes last both ways, and ties stand in the order of the lot numbers.
func (k key) compare(o key, down bool) int {
	if k.known != o.known {
		if k.known {
			return -1
		}
		return 1
	}
	c := cmp.Or(cmp.Compare(k.figure, o.figure), cmp.Compare(k.words, o.words))
	if down {
		c = -c
	}
	a, b := k.row.entry.Number, o.row.entry.Number
	return cmp.Or(c, cmp.Compare(len(a), len(b)), cmp.Compare(a, b))
}
