package view

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// ResaleColumns are the columns of the table of comparables, after the tick.
var ResaleColumns = []Column{
	{"Price", true, 68}, {"Kind", false, 56}, {"Date", false, 96}, {"Year", true, 52}, {"Mileage", true, 76}, {"Trim", false, 56}, {"Title", false, 64},
	{"Sold for", true, 64}, {"by miles", true, 68}, {"by age", true, 60}, {"other", true, 60}, {"Adjusted", true, 76}, {"Weight", true, 60}, {"Moves it", true, 68},
}

// ResaleRow is one comparable with its adjustments.
type ResaleRow struct {
	Row    int  // position in the case
	Counts bool // the user's tick
	Cells  []string
	keys   []float64 // what each column of figures sorts by; NaN where there is none
}

// Comparables returns the rows of the open lot with the adjustments of the last valuation.
func Comparables(o desk.Open) []ResaleRow {
	p := NewPurse(o.Case.Currency)
	byRow := map[int]resale.Adjusted{}
	if o.Valued != nil && o.Fresh {
		for _, a := range o.Valued.Answer.Resale.Adjusted {
			byRow[a.Row] = a
		}
	}
	rows := make([]ResaleRow, len(o.Case.Resale.Rows))
	for i, r := range o.Case.Resale.Rows {
		cells := []string{p.Exact(r.Price), kind(r.Kind), string(r.Date), year(r.ModelYear), mileage(r), r.Trim, r.Title, "", "", "", "", "", "", ""}
		keys := rowKeys(p, r, o.Case.Lot.OdometerUnit)
		if a, ok := byRow[i]; ok && a.Used {
			other := a.Trim + a.Brand + a.Date + a.Other
			copy(cells[7:], []string{p.signed(a.AskedToSold), p.signed(a.Mileage), p.signed(a.Age), p.signed(other), p.Exact(p.rounded(a.Adjusted)), fmt.Sprintf("%.2f", a.Weight), p.Whole(a.Influence)})
			for k, x := range []money.Amount{a.AskedToSold, a.Mileage, a.Age, other, a.Adjusted} {
				keys[7+k] = p.Major(x)
			}
			keys[12], keys[13] = a.Weight, math.Abs(a.Influence)
		}
		rows[i] = ResaleRow{i, !r.Excluded, cells, keys}
	}
	return rows
}

// rowKeys returns what a row's own columns sort by; words sort by themselves and have none.
func rowKeys(p Purse, r resale.Row, unit string) []float64 {
	keys := make([]float64, len(ResaleColumns))
	for i := range keys {
		keys[i] = math.NaN()
	}
	keys[0] = p.Major(r.Price)
	if r.ModelYear != 0 {
		keys[3] = float64(r.ModelYear)
	}
	if x, ok := r.MileageIn(unit); ok {
		keys[4] = x
	}
	return keys
}

// SortComparables puts the rows in the order of a column; those without a figure come last either way.
func SortComparables(rows []ResaleRow, column int, falling bool) {
	slices.SortStableFunc(rows, func(a, b ResaleRow) int {
		x, y := a.keys[column], b.keys[column]
		if math.IsNaN(x) != math.IsNaN(y) {
			if math.IsNaN(x) {
				return 1
			}
			return -1
		}
		c := cmp.Compare(x, y)
		if math.IsNaN(x) {
			c = cmp.Compare(a.Cells[column], b.Cells[column])
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

// Dot is one comparable of the scatter.
type Dot struct {
	Row              int // position in the case
	X, Price, Weight float64
	Used, Branded    bool
	Words            string
}

// Scatter is what the price chart shows. Units: X in the lot's unit of mileage, or model year; prices in major units.
type Scatter struct {
	XLabel, YLabel string
	Years          bool // X is a model year
	Words          string
	Dots           []Dot
	Band           []valuation.BandPoint
	Subject        *float64 // where the subject stands on X; nil: not known
	P10, P50, P90  float64
}

// ByMileage returns the chart of price against mileage.
func ByMileage(o desk.Open) Scatter {
	unit := o.Case.Lot.OdometerUnit
	s := scatter(o, "mileage, "+unit, func(r resale.Row) (float64, bool) { return r.MileageIn(unit) })
	if o.Case.Lot.Odometer != nil {
		x := float64(*o.Case.Lot.Odometer)
		s.Subject = &x
	}
	if o.Valued != nil {
		s.Band = o.Valued.ByMileage
	}
	return s
}

// ByYear returns the chart of price against model year.
func ByYear(o desk.Open) Scatter {
	s := scatter(o, "model year", func(r resale.Row) (float64, bool) { return float64(r.ModelYear), r.ModelYear != 0 })
	s.Years = true
	if o.Case.Lot.ModelYear != 0 {
		x := float64(o.Case.Lot.ModelYear)
		s.Subject = &x
	}
	if o.Valued != nil {
		s.Band = o.Valued.ByYear
	}
	return s
}

func scatter(o desk.Open, x string, at func(resale.Row) (float64, bool)) Scatter {
	p := NewPurse(o.Case.Currency)
	s := Scatter{XLabel: x, YLabel: p.Code}
	weight := map[int]float64{}
	if o.Valued != nil {
		a := o.Valued.Answer
		s.P10, s.P50, s.P90 = a.Resale.P10, a.Resale.P50, a.Resale.P90
		s.Words = "this lot: " + p.Whole(a.Resale.P50) + ", eight times in ten " + p.Range(a.Resale.P10, a.Resale.P90)
		for _, r := range a.Resale.Adjusted {
			weight[r.Row] = r.Weight
		}
	}
	for i, r := range o.Case.Resale.Rows {
		v, ok := at(r)
		if !ok {
			continue
		}
		words := fmt.Sprintf("%s %s, %s, %s", p.Show(r.Price), kind(r.Kind), Vehicle(r.ModelYear, r.Trim), mileage(r))
		s.Dots = append(s.Dots, Dot{Row: i, X: v, Price: p.Major(r.Price), Weight: weight[i], Used: !r.Excluded, Branded: r.Title != "" && r.Title != "clear", Words: words})
	}
	return s
}

// ResaleWords says what the finished vehicle is expected to bring.
func ResaleWords(o desk.Open) string {
	if o.Valued == nil {
		return ""
	}
	r, p := o.Valued.Answer.Resale, NewPurse(o.Case.Currency)
	from := "from your guess alone"
	if r.RowsUsed > 0 {
		from = "from " + Count(r.RowsUsed, "comparable")
	}
	return fmt.Sprintf("Expected %s %s, eight times in ten %s, %s.", p.Code, p.Whole(r.Mean), p.Range(r.P10, r.P90), from)
}
