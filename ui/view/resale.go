package view

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// ResaleColumns are the columns of the table of comparables, after the tick.
var ResaleColumns = []Column{
	{"Price", true, 76}, {"Used for", false, 178}, {"Adjusted", true, 76}, {"Weight", true, 60}, {"Moves it", true, 68}, {"Year", true, 52},
	{"Mileage", true, 96}, {"Trim", false, 56}, {"Title", false, 104}, {"Kind", false, 56}, {"Date", false, 104},
	{"Sold for", true, 64}, {"By mileage", true, 84}, {"By age", true, 60}, {"By title", true, 64}, {"By trim", true, 64},
	{"By engine", true, 76}, {"By place", true, 68}, {"By the rest", true, 80}, {"Upkeep", false, 76},
}

// ResaleRow is one comparable with its adjustments, as the table shows it.
type ResaleRow struct {
	Row    int  // position in the case
	Counts bool // the user's tick
	Cells  []string
}

// ResaleTable is the table of comparables. Rows are put in words only when they are asked for: there may be thousands.
type ResaleTable struct {
	o        desk.Open
	purse    Purse
	adjusted []*resale.Adjusted // by position in the case; nil: not valued yet, or not used
	why      []string           // by position in the case: why the last valuation did not use it
	order    []int              // positions in the case, as they are shown
}

// Comparables returns the rows of the open lot, in the case's order, with the adjustments of the last valuation.
func Comparables(o desk.Open) *ResaleTable {
	t := &ResaleTable{o: o, purse: NewPurse(o.Case.Currency), adjusted: make([]*resale.Adjusted, len(o.Case.Resale.Rows)),
		why: make([]string, len(o.Case.Resale.Rows)), order: make([]int, len(o.Case.Resale.Rows))}
	for i := range t.order {
		t.order[i] = i
	}
	if o.Valued != nil && o.Fresh {
		for i := range o.Valued.Answer.Resale.Adjusted {
			switch a := &o.Valued.Answer.Resale.Adjusted[i]; {
			case a.Row >= len(t.adjusted):
			case a.Used:
				t.adjusted[a.Row] = a
			default:
				t.why[a.Row] = a.Why
			}
		}
	}
	return t
}

// Len returns how many rows there are.
func (t *ResaleTable) Len() int { return len(t.order) }

// Position returns the place in the case of the row shown at i.
func (t *ResaleTable) Position(i int) int { return t.order[i] }

// Shown returns where the row at a place in the case is shown, -1 for nowhere.
func (t *ResaleTable) Shown(position int) int { return slices.Index(t.order, position) }

// Row returns the row shown at i, in words.
func (t *ResaleTable) Row(i int) ResaleRow {
	at := t.order[i]
	r, p := t.o.Case.Resale.Rows[at], t.purse
	cells := []string{p.Exact(r.Price), t.UsedFor(at), "", "", "", year(r.ModelYear), mileage(r), r.Trim, titleOf(r.Title), kind(r.Kind),
		Day(r.Date), "", "", "", "", "", "", "", "", upkeep(r)}
	if a := t.adjusted[at]; a != nil {
		copy(cells[2:], []string{p.Exact(p.rounded(a.Adjusted)), fmt.Sprintf("%.2f", a.Weight), p.Whole(a.Influence)})
		for i, by := range adjustments(a) {
			cells[firstAdjustment+i] = p.signed(by)
		}
	}
	return ResaleRow{at, !r.Excluded, cells}
}

// firstAdjustment is the first of the columns of what brings a row to the lot.
const firstAdjustment = 11

// adjustments returns what brings a row to the lot, in the order of the columns.
func adjustments(a *resale.Adjusted) []money.Amount {
	return []money.Amount{a.AskedToSold, a.Mileage, a.Age, a.Brand, a.Trim, a.Engine, a.Place, a.Date + a.Other}
}

// UsedFor says what the row at a place in the case is used for: the price, or what a row of another model lends.
func (t *ResaleTable) UsedFor(at int) string {
	r, x := t.o.Case.Resale.Rows[at], t.o.Case.Lot
	if why := r.Unusable(); why != "" {
		return "nothing: " + why
	}
	if t.why[at] != "" {
		return "nothing: " + t.why[at]
	}
	if x.Model != "" && r.Beside(x.Make, x.Model) != resale.Own {
		return "age, mileage: " + strings.TrimSpace(r.Make+" "+r.Model)
	}
	return "price"
}

// key returns what a column of figures sorts the row at a place in the case by, NaN where there is none; words sort by
// themselves.
func (t *ResaleTable) key(column, at int) float64 {
	r, a := t.o.Case.Resale.Rows[at], t.adjusted[at]
	switch column {
	case 0:
		return float64(r.Price)
	case 5:
		return orNaN(float64(r.ModelYear), r.ModelYear != 0)
	case 6:
		return orNaN(r.MileageIn(t.o.Case.Lot.OdometerUnit))
	case len(ResaleColumns) - 1:
		return orNaN(figure(r.Condition))
	}
	switch {
	case a == nil:
		return math.NaN()
	case column >= firstAdjustment:
		return float64(adjustments(a)[column-firstAdjustment])
	case column >= 2 && column <= 4:
		return []float64{float64(a.Adjusted), a.Weight, math.Abs(a.Influence)}[column-2]
	}
	return math.NaN()
}

func orNaN(x float64, known bool) float64 {
	if !known {
		return math.NaN()
	}
	return x
}

func figure(x *float64) (float64, bool) {
	if x == nil {
		return 0, false
	}
	return *x, true
}

// word returns what a column of words sorts the row at a place in the case by, nothing for columns of figures.
func (t *ResaleTable) word(column, at int) string {
	r := t.o.Case.Resale.Rows[at]
	switch column {
	case 1:
		return t.UsedFor(at)
	case 7:
		return r.Trim
	case 8:
		return titleOf(r.Title)
	case 9:
		return kind(r.Kind)
	case 10:
		return string(r.Date)
	}
	return ""
}

// Sort puts the rows in the order of a column; those without a figure come last either way.
func (t *ResaleTable) Sort(column int, falling bool) {
	keys := make([]float64, len(t.order))
	for at := range keys {
		keys[at] = t.key(column, at)
	}
	slices.SortStableFunc(t.order, func(a, b int) int {
		x, y := keys[a], keys[b]
		if math.IsNaN(x) != math.IsNaN(y) {
			if math.IsNaN(x) {
				return 1
			}
			return -1
		}
		c := cmp.Compare(x, y)
		if math.IsNaN(x) {
			c = cmp.Compare(t.word(column, a), t.word(column, b))
		}
		if falling {
			return -c
		}
		return c
	})
}

// rounded drops the minor digits.
func (p Purse) rounded(a money.Amount) money.Amount {
	return p.Round(p.Decimal(a).Round(0))
}

// signed writes an adjustment with its sign, nothing for none.
func (p Purse) signed(a money.Amount) string {
	switch a = p.rounded(a); {
	case a == 0:
		return ""
	case a > 0:
		return "+" + p.Exact(a)
	}
	return p.Exact(a)
}

// titleOf writes the title of a comparable; one that nobody states is taken for clear, and says so.
func titleOf(title string) string {
	if title == "" {
		return "not stated, as clear"
	}
	return title
}

func kind(k string) string {
	if k == "" {
		return "asked"
	}
	return k
}

func year(y int) string {
	if y == 0 {
		return ""
	}
	return fmt.Sprint(y)
}

func upkeep(r resale.Row) string {
	if r.Condition == nil {
		return ""
	}
	if *r.Condition != math.Trunc(*r.Condition) {
		return fmt.Sprintf("%g of 5", *r.Condition)
	}
	return Words(resale.UpkeepOf(*r.Condition))
}

func mileage(r resale.Row) string {
	if r.Mileage == nil {
		return ""
	}
	unit := r.Unit
	if unit == "" {
		unit = "mi"
	}
	figure := NewPurse("JPY").Whole(*r.Mileage) // JPY: whole numbers, grouped
	if unit == "mi" {
		return figure
	}
	return figure + " " + unit
}

// ResaleWords says what the finished vehicle is expected to bring, and with which title: the adjusted prices of the table are for that
// title too.
func ResaleWords(o desk.Open) string {
	if o.Valued == nil {
		return ""
	}
	r, p := o.Valued.Answer.Resale, NewPurse(o.Case.Currency)
	from := "from your guess alone"
	if r.RowsUsed > 0 {
		from = "from " + Count(r.RowsUsed, "comparable")
	}
	title := Words(cmp.Or(o.Valued.Of.Resale.Subject.Brand, "rebuilt"))
	return fmt.Sprintf("Sold with title %s. Mean %s %s %s; half bring %s or more, 8 times in 10 from %s.", title, p.Code,
		p.Whole(r.Mean), from, p.Whole(r.P50), p.Range(r.P10, r.P90))
}

// Doubt is a warning on the resale price: what is the case, what it means and what to do, and the rows that it speaks of,
// by position in the case.
type Doubt struct {
	Text, Meaning string
	Rows          []int
}

// ResaleDoubts returns the warnings on the resale price of the open lot.
func ResaleDoubts(o desk.Open) []Doubt {
	if o.Valued == nil {
		return nil
	}
	var doubts []Doubt
	for _, w := range o.Valued.Answer.Resale.Warnings {
		doubts = append(doubts, Doubt{sentence(strings.TrimSuffix(w.Text, ".")) + ".", w.Code.Meaning(), w.Rows})
	}
	return doubts
}

// mostMoving is how many rows are named as those that move the price most.
const mostMoving = 3

// MovesMost names the rows without which the price would be most another one.
func MovesMost(o desk.Open) string {
	if o.Valued == nil || !o.Fresh {
		return ""
	}
	p := NewPurse(o.Case.Currency)
	var used []resale.Adjusted
	for _, a := range o.Valued.Answer.Resale.Adjusted {
		if a.Used && math.Abs(a.Influence) >= 1 && a.Row < len(o.Case.Resale.Rows) {
			used = append(used, a)
		}
	}
	if len(used) == 0 {
		return ""
	}
	slices.SortStableFunc(used, func(a, b resale.Adjusted) int { return cmp.Compare(math.Abs(b.Influence), math.Abs(a.Influence)) })
	var named []string
	for _, a := range used[:min(len(used), mostMoving)] {
		r := o.Case.Resale.Rows[a.Row]
		named = append(named, fmt.Sprintf("%s (%s, %s) by %s", p.Exact(r.Price), Vehicle(r.ModelYear, r.Trim), kind(r.Kind),
			p.signedWhole(a.Influence)))
	}
	return "Moved most by " + strings.Join(named, "; ") + "."
}

// signedWhole writes a figure in whole units with its sign.
func (p Purse) signedWhole(x float64) string {
	if x > 0 {
		return "+" + p.Whole(x)
	}
	return p.Whole(x)
}
