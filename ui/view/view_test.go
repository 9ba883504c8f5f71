package view_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

func usd(x int64) *money.Amount { a := money.Amount(100 * x); return &a }

func board() []book.Entry {
	hour := 41.6
	return []book.Entry{
		{ID: 1, Number: "12", SaleDate: "2026-11-25", Make: "Tarn", Model: "Vale", ModelYear: 2019, Currency: "USD", Sale: "Harrow Flats",
			State: "bid",
			Answer: &book.Summary{WalkAway: usd(5250), Binding: "min_profit", LossChance: .123, MeanProfit: 1499.6, PerHour: &hour,
				Said: book.Said{Plan: "for_parts", WinChance: fraction(.23), ExpectedGain: fraction(345)}}},
		{ID: 2, Number: "7", SaleDate: "2026-11-25", Make: "Orrin", Currency: "USD", State: "to look at"},
		{ID: 3, Number: "110", SaleDate: "2026-11-24", Make: "Tarn", Currency: "USD", State: "to look at",
			Answer: &book.Summary{WalkAway: usd(800), Binding: "max_cash", LossChance: .031, MeanProfit: 2000, Stale: true}},
		{ID: 4, Number: "9", Make: "Pell", Currency: "USD", State: "passed", Answer: &book.Summary{Binding: "max_days"}},
		{ID: 6, Number: "15", Make: "Pell", Currency: "USD", State: "to look at", Archived: true, Answer: &book.Summary{Binding: "missing",
			Said: book.Said{Needs: []string{"lot.title.document", "damage", "market.exchange_rates.USD"}}}},
		{ID: 5, Number: "8", Make: "Tarn", Currency: "USD", State: "lost", Archived: true},
	}
}

func ids(rows []*view.BoardRow) string {
	var out []string
	for _, r := range rows {
		out = append(out, fmt.Sprint(r.ID))
	}
	return strings.Join(out, " ")
}

func TestBoardFilterAndOrder(t *testing.T) {
	for _, c := range []struct {
		name   string
		filter view.Filter
		want   string
	}{
		{"by sale day, unknown last", view.Filter{}, "3 2 1 4"},
		{"with archived, by lot", view.Filter{Sort: 1, Archived: true}, "2 5 4 1 6 3"},
		{"by bid, none last", view.Filter{Sort: 3}, "3 1 2 4"},
		{"by chance of loss", view.Filter{Sort: 6}, "3 1 2 4"},
		{"by profit", view.Filter{Sort: 7}, "1 3 2 4"},
		{"one word", view.Filter{Search: "tarn"}, "3 1"},
		{"two words anywhere", view.Filter{Search: "2019 TARN"}, "1"},
		{"by the sale's name", view.Filter{Search: "harrow"}, "1"},
		{"nothing", view.Filter{Search: "zebra"}, ""},
		{"archived stay hidden", view.Filter{Search: "lost"}, ""},
	} {
		if got := ids(view.List(board()).Rows(c.filter)); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// Falling is rising turned round, but for lots that have nothing to sort by: they stay last.
func TestBoardDown(t *testing.T) {
	for column, want := range map[int]string{0: "2 1 3 4", 1: "3 1 4 2", 3: "1 3 2 4", 8: "1 2 4 3", 9: "1 2 4 3", 10: "1 2 4 3"} {
		if got := ids(view.List(board()).Rows(view.Filter{Sort: column, Down: true})); got != want {
			t.Errorf("column %d, falling: %s, want %s", column, got, want)
		}
	}
}

func TestBoardCells(t *testing.T) {
	rows := map[int64][]string{}
	for _, r := range view.List(board()).Rows(view.Filter{Archived: true}) {
		rows[r.ID] = r.Cells()
		if len(r.Cells()) != len(view.BoardColumns) {
			t.Errorf("%d cells under %d headings", len(r.Cells()), len(view.BoardColumns))
		}
	}
	for id, want := range map[int64][]string{
		1: {"2026-11-25", "12", "2019 Tarn Vale", "USD 5,250", "For parts", "least profit", "12 %", "1,500", "23 %", "345", "42", "bid", ""},
		2: {"2026-11-25", "7", "Orrin", "", "", "not valued yet", "", "", "", "", "", "to look at", ""},
		3: {"2026-11-24", "110", "Tarn", "USD 800", "", "cash tied up (edited since)", "3.1 %", "2,000", "", "", "", "to look at", ""},
		4: {"", "9", "Pell", "do not bid", "", "longest time", "", "", "", "", "", "passed", ""},
		6: {"", "15", "Pell", "not yet", "", "needs title document, damage, exchange rate", "", "", "", "", "", "to look at, archived", ""},
	} {
		if !slices.Equal(rows[id][:len(want)], want) {
			t.Errorf("lot %d: %q, want %q", id, rows[id], want)
		}
	}
	worth := 7.046
	guess := view.List([]book.Entry{{ID: 1, Currency: "USD", State: "to look at",
		Answer: &book.Summary{WalkAway: usd(520), Binding: "max_loss_chance",
			Said: book.Said{FirstGuess: true, LookWorth: &worth}}}}).Rows(view.Filter{})[0].Cells()
	if guess[3] != "USD 520" || guess[5] != "first guess: chance of a loss" || guess[12] != "7.05/min" {
		t.Errorf("a first guess: %q", guess)
	}
	walk := money.Amount(52000)
	for was, want := range map[*money.Amount]string{nil: " (was do not bid)", &walk: " (was 520)"} {
		e := book.Entry{Currency: "USD", Answer: &book.Summary{Decision: "do_not_bid", Binding: "loss_chance",
			Said: book.Said{FirstGuess: true, Shift: &book.Shift{Was: was}}}}
		if got := view.List([]book.Entry{e}).Rows(view.Filter{})[0].Cells()[5]; !strings.HasSuffix(got, want) {
			t.Errorf("a first guess that moved: %q, want %q", got, want)
		}
	}
	if last := rows[5][11]; last != "lost, archived" {
		t.Errorf("state %q", last)
	}
}

func TestPercent(t *testing.T) {
	for x, want := range map[float64]string{0: "0.0 %", .045: "4.5 %", .0994: "9.9 %", .0996: "10 %", .123: "12 %", 1: "100 %",
		-.02: "-2.0 %", -.3: "-30 %"} {
		if got := view.Percent(x); got != want {
			t.Errorf("%g reads %q, want %q", x, got, want)
		}
	}
	if got := view.Percent(math.NaN()); got != "" {
		t.Errorf("no number reads %q", got)
	}
}

func TestVerdictOfAnUnfinishedLot(t *testing.T) {
	o := desk.Open{Case: valuation.Defaults()}
	o.Faults = []valuation.Fault{{Key: "resale"}, {Key: "time.hours_per_week", Value: "0", Want: "more"}}
	o.Case.Lot.Make, o.Case.Lot.Title.Document = "Ostrane", "salvage"
	v := view.NewVerdict(o)
	if pin := view.NewPin(o); pin.Moved != "needs resale price, time.hours per week" { // a first guess stands in for damage
		t.Errorf("the head says %q", pin.Moved)
	}
	if v.Figure != view.NotYet || v.Settled || v.Refused || len(v.Next) != 2 || !strings.HasPrefix(v.Next[0], "Resale: import") ||
		!strings.Contains(v.Next[1], "hours per week") {
		t.Errorf("%+v", v)
	}
	for i := range 7 {
		o.Faults = append(o.Faults, valuation.Fault{Key: fmt.Sprint("time.", i)})
	}
	if v = view.NewVerdict(o); len(v.Next) != 7 || v.Next[6] != "and 3 more" {
		t.Errorf("nine faults: %q", v.Next)
	}
}

func TestVerdictOfARefusedLot(t *testing.T) {
	o := desk.Open{Fresh: true, Valued: &desk.Valued{Answer: valuation.Answer{Currency: "USD", Decision: "do_not_bid",
		Reasons:     []string{"too slow"},
		Acquisition: valuation.Acquisition{Bid: 2500}, Profit: valuation.Profit{LossChance: .6}}}}
	v := view.NewVerdict(o)
	if v.Figure != "Do not bid" || !v.Refused || !v.Settled || v.Binds != "" || v.Reasons[0] != "too slow" ||
		v.Lines[0] != [2]string{"Chance of a loss at 25", "60 %"} {
		t.Errorf("%+v", v)
	}
}

func TestVerdictOfABid(t *testing.T) {
	a := valuation.Answer{Currency: "USD", WalkAway: usd(5250), BindingRule: "min_profit",
		Profit:  valuation.Profit{LossChance: .08, Mean: 1500, P10: -200, P90: 3100},
		Drivers: []valuation.Driver{{Name: "a", Share: .5}, {Name: "b", Share: .3}, {Name: "c", Share: .1}, {Name: "d", Share: .1}}}
	v := view.NewVerdict(desk.Open{Valued: &desk.Valued{Answer: a}})
	if v.Figure != "USD 5,250" || v.Refused || v.Settled || v.Binds != "Set by: least expected profit" || len(v.Drivers) != 3 {
		t.Errorf("%+v", v)
	}
	for _, want := range [][2]string{{"Chance of a loss at this bid", "8.0 %"}, {"Expected profit", "1,500"},
		{"Profit, 8 times in 10", "-200 to 3,100"}} {
		if !slices.Contains(v.Lines, want) {
			t.Errorf("no line %q in %q", want, v.Lines)
		}
	}
}

// By hand: a fee of 100 below 20,000 and 2 % from there on, and 10 % tax on the hammer.
func TestFeeCurve(t *testing.T) {
	c := valuation.Defaults()
	c.Currency = "USD"
	c.Buying.Tax.Rate = decimal.RequireFromString("0.1")
	c.Buying.Fees = []invoice.Schedule{{Name: "fee", Mode: "whole", Rows: []invoice.Row{{Flat: *usd(100)},
		{From: *usd(20000), Percent: decimal.RequireFromString("0.02")}}}}
	v := view.FeeCurve(c)
	last := v.Points[len(v.Points)-1]
	if last != [2]float64{30000, 3600} || v.Points[0] != [2]float64{0, 100} {
		t.Errorf("from %v to %v", v.Points[0], last)
	}
	for i, p := range v.Points {
		want := p[0]*.1 + 100
		if p[0] >= 20000 {
			want = p[0] * .12
		}
		if math.Abs(p[1]-want) > .0051 || i > 0 && p[0] <= v.Points[i-1][0] {
			t.Errorf("point %d: %v, want %.2f", i, p, want)
		}
	}
	c.Buying.Fees[0].Rows = nil
	if v = view.FeeCurve(c); len(v.Points) != 0 {
		t.Errorf("a schedule without rows has %d points", len(v.Points))
	}
}

func TestComparables(t *testing.T) {
	miles, km := 61234.0, 98000.0
	good := 4.5
	o := desk.Open{Fresh: true, Case: valuation.Case{Currency: "USD"}}
	o.Case.Resale.Rows = []resale.Row{
		{Price: *usd(12500), Kind: "sold", Date: "2026-10-02", ModelYear: 2019, Mileage: &miles, Trim: "S", Title: "clear", Condition: &good},
		{Price: *usd(11000), Mileage: &km, Unit: "km", Excluded: true},
	}
	o.Valued = &desk.Valued{Answer: valuation.Answer{Resale: resale.Price{Adjusted: []resale.Adjusted{
		{Row: 0, Used: true, Mileage: *usd(-340), Age: *usd(220), Trim: *usd(50), Brand: *usd(-50), Adjusted: 1238049, Weight: .873,
			Influence: -61.4}, {Row: 1}}}}}
	want := [][]string{
		{"12,500", "price", "12,380", "0.87", "-61", "2019", "61,234", "S", "clear", "sold", "2026-10-02", "", "-340", "+220", "-50", "+50",
			"", "", "", "4.5 of 5"},
		{"11,000", "nothing: left out by hand", "", "", "", "", "98,000 km", "", "not stated, as clear", "asked",
			"", "", "", "", "", "", "", "", "", ""},
	}
	rows := view.Comparables(o)
	for i := range rows.Len() {
		if r := rows.Row(i); !slices.Equal(r.Cells, want[i]) || r.Counts != (i == 0) || len(r.Cells) != len(view.ResaleColumns) {
			t.Errorf("row %d: counts %v, %q, want %q", i, r.Counts, r.Cells, want[i])
		}
	}
	o.Fresh = false
	if cells := view.Comparables(o).Row(0).Cells; cells[2] != "" {
		t.Errorf("an answer to an older case still adjusts: %q", cells)
	}
}

// TestARowSaysWhatItIsUsedFor: of another model it lends how prices fall with age and mileage, without a year nothing, and why.
func TestARowSaysWhatItIsUsedFor(t *testing.T) {
	o := desk.Open{Fresh: true, Case: valuation.Case{Currency: "USD"}}
	o.Case.Lot.Make, o.Case.Lot.Model = "Ostrane", "Pell"
	row := resale.Row{Price: *usd(9000), ModelYear: 2019, Make: "ostrane", Model: "Pell"}
	other, yearless, unnamed, again := row, row, row, row
	other.Make, other.Model, yearless.ModelYear, unnamed.Make, unnamed.Model = "Kettrick", "Vole", 0, "", ""
	o.Case.Resale.Rows = []resale.Row{row, other, yearless, unnamed, again}
	o.Valued = &desk.Valued{Answer: valuation.Answer{Resale: resale.Price{Adjusted: []resale.Adjusted{{Row: 4,
		Why: "the same vehicle as row 1"}}}}}
	rows := view.Comparables(o)
	for at, want := range []string{"price", "age, mileage: Kettrick Vole", "nothing: no model year", "price",
		"nothing: the same vehicle as row 1"} {
		if got := rows.UsedFor(at); got != want {
			t.Errorf("row %d is used for %q, want %q", at, got, want)
		}
	}
}

func TestComparablesSort(t *testing.T) {
	low, high := 40_000.0, 90_000.0
	o := desk.Open{Fresh: true, Case: valuation.Case{Currency: "USD"}}
	o.Case.Lot.OdometerUnit = "mi"
	o.Case.Resale.Rows = []resale.Row{{Price: *usd(9000), Trim: "S", Mileage: &high}, {Price: *usd(7000), Trim: "B"},
		{Price: *usd(8000), Trim: "C", Mileage: &low}}
	o.Valued = &desk.Valued{Answer: valuation.Answer{Resale: resale.Price{Adjusted: []resale.Adjusted{
		{Row: 0, Used: true, Influence: 10}, {Row: 1, Used: true, Influence: -90}, {Row: 2}}}}}
	for _, c := range []struct {
		column  int
		falling bool
		want    []int
	}{
		{0, false, []int{1, 2, 0}}, {0, true, []int{0, 2, 1}},
		{6, false, []int{2, 0, 1}}, {6, true, []int{0, 2, 1}}, // not known comes last both ways
		{7, false, []int{1, 2, 0}}, {7, true, []int{0, 2, 1}},
		{4, true, []int{1, 0, 2}}, // by how far a row moves the price, either way
	} {
		rows := view.Comparables(o)
		rows.Sort(c.column, c.falling)
		var got []int
		for i := range rows.Len() {
			got = append(got, rows.Position(i))
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("by %s, falling %v: %v, want %v", view.ResaleColumns[c.column].Title, c.falling, got, c.want)
		}
		if rows.Shown(c.want[2]) != 2 {
			t.Errorf("the row at place %d is shown at %d", c.want[2], rows.Shown(c.want[2]))
		}
	}
}

func TestWords(t *testing.T) {
	if got := view.Vehicle(0, " ", ""); got != "(vehicle not entered)" {
		t.Errorf("%q", got)
	}
	if view.Count(1, "row") != "1 row" || view.Count(0, "row") != "0 rows" {
		t.Error("counts do not read")
	}
}
