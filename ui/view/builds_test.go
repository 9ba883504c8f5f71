package view_test

import (
	"slices"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/score"
)

// yard is three builds: one under way, one sold, one of which little is known; and a lost lot.
func yard() []book.Bought {
	paid, price, lost := money.Amount(300000), money.Amount(900000), money.Amount(410000)
	return []book.Bought{
		{ID: 1, State: lot.Won, Number: "3", Make: "Kettrick", Currency: "USD",
			Build: build.Build{Outcome: build.Open, Hammer: &paid, Dates: build.Dates{Bought: "2026-11-01", Home: "2026-11-03"}}},
		{ID: 2, State: lot.Won, Number: "7", Make: "Ostrane", Currency: "USD",
			Build: build.Build{Outcome: build.Sold, Hammer: &paid, Sale: build.Sale{Price: &price},
				Dates: build.Dates{Bought: "2026-05-01", Sold: "2026-08-09"}, Receipts: []build.Receipt{{Kind: "part", Amount: 150000}}}},
		{ID: 3, State: lot.Won, Number: "9", Make: "Morrowby", Currency: "USD", Build: build.Build{Outcome: build.PartedOut}},
		{ID: 4, State: lot.Lost, Number: "12", Make: "Siskin", Currency: "USD", Build: build.Build{Hammer: &lost}},
	}
}

func builtIDs(rows []view.BuildRow) []int64 {
	var out []int64
	for _, r := range rows {
		out = append(out, r.ID)
	}
	return out
}

func TestBuildsSortByFiguresAndUnknownOnesComeLast(t *testing.T) {
	outlooks := map[int64]valuation.Foresight{1: {Whole: &valuation.Spread{Mean: 1200}}}
	profit := len(view.BuildColumns) - 1
	for _, c := range []struct {
		filter view.BuildFilter
		want   []int64
	}{
		{view.BuildFilter{Sort: profit}, []int64{1, 2, 3}}, {view.BuildFilter{Sort: profit, Down: true}, []int64{2, 1, 3}},
		{view.BuildFilter{Sort: 4}, []int64{1, 2, 3}}, {view.BuildFilter{Search: "ostr"}, []int64{2}},
		{view.BuildFilter{Lost: true, Search: "lost"}, []int64{4}},
	} {
		if got := builtIDs(view.Builds(yard(), outlooks, "2026-11-25", c.filter)); !slices.Equal(got, c.want) {
			t.Errorf("%+v: %v, want %v", c.filter, got, c.want)
		}
	}
	rows := view.Builds(yard(), outlooks, "2026-11-25", view.BuildFilter{})
	cells := map[int64]string{}
	for _, r := range rows {
		cells[r.ID] = strings.Join(r.Cells, "|")
	}
	if cells[1] != "2026-11-01|3|Kettrick|home|24|3,000|||1,200" || cells[2] != "2026-05-01|7|Ostrane|sold|100|4,500|||4,500" ||
		cells[3] != "|9|Morrowby|parted out|||||" {
		t.Errorf("%v", cells)
	}
}

func TestAnEndedBuildSaysWhatItCameTo(t *testing.T) {
	o := desk.OpenBuild{Bought: yard()[1]}
	o.Foretold = &learn.Prediction{Profit: learn.Figure{Mean: 2000, Q: make([]float64, len(score.Chances))},
		Terms: learn.Terms{Rates: map[string]float64{"body": 50}}}
	o.Build.Hours = []build.Work{{Trade: "body", Hours: 10}}
	v := view.NewBuildSide(o)
	if v.Figure != "USD 4,000" || v.Headline != "Profit it came to" || len(v.Ways) > 0 {
		t.Errorf("%+v", v)
	}
	o.Build.Sale.Price = nil
	if v = view.NewBuildSide(o); v.Figure != "not known" || !strings.Contains(v.Notes[0], "what it brought") {
		t.Errorf("%+v", v)
	}
}

// By hand: 9,000 less 3,000, 1,500 of bills, 10 h at 50 and 3,000 x 0.73 x 100/365 = 600 for the money tied up is 3,400.
func TestAnEndedBuildIsCountedAsItsForecastWas(t *testing.T) {
	o := desk.OpenBuild{Bought: yard()[1]}
	o.Foretold = &learn.Prediction{Profit: learn.Figure{Mean: 2000, Q: make([]float64, len(score.Chances))},
		Terms: learn.Terms{Rates: map[string]float64{"body": 50}, CapitalRate: 0.73}}
	o.Build.Hours = []build.Work{{Trade: "body", Hours: 10}}
	v := view.NewBuildSide(o)
	if v.Figure != "USD 3,400" || !slices.Contains(v.Lines, [2]string{"Cost of the money tied up", "600"}) {
		t.Errorf("%+v", v)
	}
	row := view.Builds([]book.Bought{o.Bought}, nil, "2026-11-25", view.BuildFilter{})[0]
	if got := row.Cells[len(row.Cells)-1]; got != "3,400" {
		t.Errorf("the list says %s", got)
	}
	years := view.Years([]book.Bought{o.Bought})
	if got := years[0].Cells[6:8]; !slices.Equal(got, []string{"600", "3,400"}) {
		t.Errorf("the year says %q", got)
	}
	without := o.Bought
	without.Foretold = nil
	if got := view.Years([]book.Bought{o.Bought, without})[0].Cells[4:8]; !slices.Equal(got, []string{"2", "18,000", "600 (1 ?)", "7,900"}) {
		t.Errorf("the year of one without a forecast says %q", got)
	}
	if o.Build.Dates.Sold = ""; !strings.Contains(strings.Join(view.NewBuildSide(o).Notes, " "), "is not counted") {
		t.Error("nothing is said of the money tied up")
	}
}

// What no bill says counts as forecast and is said so. By hand: 9,000 less 3,000, 1,500 of bills, 185 of freight and 100 days at 6.
func TestWhatNoBillSaysIsShownAsForecast(t *testing.T) {
	o := desk.OpenBuild{Bought: yard()[1]}
	o.Foretold = &learn.Prediction{Profit: learn.Figure{Mean: 2000, Q: make([]float64, len(score.Chances))},
		Terms: learn.Terms{HoldingPerDay: 6}, Money: learn.Ledger{Freight: 18500}}
	v := view.NewBuildSide(o)
	row := view.Builds([]book.Bought{o.Bought}, nil, "2026-11-25", view.BuildFilter{})[0]
	if v.Figure != "USD 3,715" || row.Cells[len(row.Cells)-1] != "3,715" || !slices.Contains(v.Lines, [2]string{"Paid out", row.Cells[5]}) ||
		!slices.Contains(v.Lines, [2]string{"  Freight, as forecast", "185"}) ||
		!slices.Contains(v.Lines, [2]string{"  Keeping it, as forecast", "600"}) ||
		!strings.Contains(strings.Join(v.Notes, " "), "counts as it was forecast") {
		t.Errorf("%+v beside %q", v, row.Cells)
	}
}

// Unknown is never zero: a build without a bill has not cost nothing.
func TestNoBillIsNotABillOfNothing(t *testing.T) {
	o := desk.OpenBuild{Bought: yard()[0], Forecast: &valuation.Foresight{Currency: "USD", Best: -1}}
	if lines := view.NewBuildSide(o).Lines; !slices.Contains(lines, [2]string{"Bills so far", "none entered"}) {
		t.Errorf("%q", lines)
	}
}

func TestProgressAddsUpToItsLastRow(t *testing.T) {
	o := desk.OpenBuild{Bought: yard()[0]}
	o.Foretold = &learn.Prediction{Money: learn.Ledger{Freight: 20000}, Risks: []learn.Risk{{ID: "h", Name: "Mount torn"},
		{ID: "g", Name: "Transmission"}},
		Items: []learn.Item{{Line: "a", Job: "Front", Kind: learn.PartKind, Chance: 0.5, Mean: 300},
			{Line: "a", Kind: learn.HoursKind, Key: "body", Chance: 1, Mean: 8},
			{Risk: "h", Kind: learn.HiddenKind, Chance: 0.25, Mean: 400}, {Risk: "g", Kind: learn.HiddenKind, Chance: 0.1, Mean: 1000}}}
	o.Build.Receipts = []build.Receipt{{Kind: "part", Line: "a", Amount: 25000}, {Kind: "materials", Line: "h", Amount: 30000},
		{Kind: "freight", Amount: 21000}, {Kind: "other", Amount: 100}}
	o.Build.Hours = []build.Work{{Trade: "body", Line: "a", Hours: 6}, {Trade: "paint", Hours: 2}}
	var got []string
	for _, r := range view.Progress(o, false) {
		got = append(got, strings.Join(r.Cells, "|"))
	}
	want := []string{"Front|150|250|8.0|6.0|", "Hidden: Mount torn|100|300|||", "Hidden damage that has not been found|100||||",
		"Names no line of work||1||2.0|", "Freight|200|210|||", "All|550|761|8.0|8.0|"}
	if !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// By hand: 8 h at 50 were foretold beside 150 of money, 6 h at 50 were worked beside 250 of bills.
func TestMoneyOfProgressIsOfOneKindAndAgreesWithTheSide(t *testing.T) {
	o := desk.OpenBuild{Bought: yard()[0], Fresh: true}
	o.Foretold = &learn.Prediction{Terms: learn.Terms{Rates: map[string]float64{"body": 50}}, Items: []learn.Item{
		{Line: "a", Job: "Front", Kind: learn.PartKind, Chance: 0.5, Mean: 300},
		{Line: "a", Kind: learn.HoursKind, Key: "body", Chance: 1, Mean: 8}}}
	o.Build.Receipts = []build.Receipt{{Kind: "part", Line: "a", Amount: 25000}}
	o.Build.Hours = []build.Work{{Trade: "body", Line: "a", Hours: 6}}
	o.Forecast = &valuation.Foresight{Currency: "USD", ToFinish: valuation.Spread{Mean: 630}, Cash: valuation.Spread{Mean: 530}, Best: -1,
		Due: []valuation.Due{{Kind: valuation.DueWork, Line: "a", Cost: 300, Labour: 100}, {Kind: valuation.DueHidden, Cost: 200},
			{Kind: valuation.DueFreight}, {Kind: valuation.DueHolding, Cost: 130}}}
	for _, c := range []struct {
		labour      bool
		first, last string
		side        string
	}{{true, "Front|550|550|8.0|6.0|300", "All|550|550|8.0|6.0|630", "Cost to finish, with my hours"},
		{false, "Front|150|250|8.0|6.0|200", "All|150|250|8.0|6.0|530", "  of it to pay out"}} {
		rows := view.Progress(o, c.labour)
		last := rows[len(rows)-1].Cells
		if first := strings.Join(rows[0].Cells, "|"); first != c.first || strings.Join(last, "|") != c.last {
			t.Errorf("%v: %q, %q", c.labour, first, last)
		}
		for _, l := range view.NewBuildSide(o).Lines {
			if l[0] == c.side && l[1] != last[5] {
				t.Errorf("the side has %q, the table %q", l, last)
			}
			if l[0] == "Bills so far" && l[1] != "250" {
				t.Errorf("%q", l)
			}
		}
	}
}

// By hand: the forecast was made at 4,000 with 100 of fees; at 3,000 the invoice is 1,000 less.
func TestTheForecastStandsAtThePricePaid(t *testing.T) {
	o := desk.OpenBuild{Bought: yard()[0], Forecast: &valuation.Foresight{Currency: "USD", Best: -1}}
	fees := invoice.Terms{Fixed: []invoice.Fixed{{Name: "Gate", Amount: 10000}}}
	o.Foretold = &learn.Prediction{At: 400000, Invoice: &fees, Profit: learn.Figure{Mean: 1000},
		Money: learn.Ledger{Fees: 10000}}
	for _, l := range view.NewBuildSide(o).Lines {
		if l[0] == "Forecast at the price paid" && l[1] != "2,000" {
			t.Errorf("%q", l)
		}
	}
}
