package desk_test

import (
	"fmt"
	"slices"
	"testing"

	"walkline/assets"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/resale"
)

// pells is a table of the model that sound lots are, and of another.
const pells = "price,date,year,make,model,mileage,title\n" +
	"9000,2026-11-01,2019,Orlan,Tessel,60000,clear\n9500,2026-11-01,2019,Orlan,Tessel,40000,clear\n" +
	"9900,2026-11-02,2020,Orlan,Tessel,30000,clear\n4000,2026-11-02,2020,Kettrick,Vole,30000,clear\n"

// taken takes a table in and returns what the open lot shows.
func (u *user) taken(table string) []resale.Row {
	u.t.Helper()
	sheet, err := u.OpenSheet(u.t.Context(), []byte(table), desk.Opening{Currency: "USD"})
	if err != nil {
		u.t.Fatal(err)
	}
	sheet.Stated.Kind = "asked"
	if u.takeIn(sheet); u.s.Trouble != "" {
		u.t.Fatal(u.s.Trouble)
	}
	if u.s.Open == nil {
		return nil
	}
	return u.s.Open.Case.Resale.Rows
}

// tessel is a lot of the model of the table.
func tessel(number string) valuation.Case {
	c := sound(number)
	c.Lot.Make, c.Lot.Model, c.Lot.ModelYear = "Orlan", "Tessel", 2019
	c.Resale.Rows = nil
	return c
}

// TestAnImportServesTheNextLot: what is taken in for one lot is drawn by the next of its model, whose ticks are its own.
func TestAnImportServesTheNextLot(t *testing.T) {
	u := newUser(t)
	ids := u.add(tessel("14"), tessel("15"))
	u.well(desk.OpenLot(ids[0]))
	if rows := u.taken(pells); len(rows) != 4 {
		t.Fatalf("the lot shows %d of its rows", len(rows))
	}
	u.well(desk.OpenLot(ids[1]))
	rows := u.s.Open.Case.Resale.Rows
	if len(rows) != 3 || slices.ContainsFunc(rows, func(r resale.Row) bool { return r.Model != "Tessel" || r.Shelf == 0 }) {
		t.Fatalf("the next lot draws %+v", rows)
	}
	tick := desk.EditLot("leave out", func(c *valuation.Case) { c.Resale.Rows[1].Excluded = true })
	u.well(tick)
	if !u.s.Open.Case.Resale.Rows[0].Excluded && !u.s.Open.Case.Resale.Rows[1].Excluded {
		t.Error("the tick is lost")
	}
	out := func() (n int) {
		for _, r := range u.s.Open.Case.Resale.Rows {
			if r.Excluded {
				n++
			}
		}
		return n
	}
	u.start()
	u.well(desk.OpenLot(ids[1]))
	if out() != 1 || len(u.lot(ids[1]).Case.Resale.Rows) != 1 {
		t.Errorf("after a restart %d are left out, the lot keeps %d", out(), len(u.lot(ids[1]).Case.Resale.Rows))
	}
	u.well(desk.OpenLot(ids[0]))
	if out() != 0 {
		t.Error("the other lot's tick is seen")
	}
	u.well(desk.OpenLot(ids[1]), desk.Undo())
	if out() != 0 || len(u.lot(ids[1]).Case.Resale.Rows) != 0 {
		t.Errorf("undone, %d are left out", out())
	}
	u.well(desk.OpenLot(ids[0]), desk.Undo())
	if n := len(u.s.Open.Case.Resale.Rows); n != 0 {
		t.Errorf("taken back, %d rows are there", n)
	}
}

// TestTheSameAdvertisementIsOneRow: a second table with a lower price of one of them is a price history, not another row; a tick stands.
func TestTheSameAdvertisementIsOneRow(t *testing.T) {
	u := newUser(t)
	ids := u.add(tessel("14"))
	u.well(desk.OpenLot(ids[0]))
	u.taken(pells)
	u.well(desk.EditLot("leave out", func(c *valuation.Case) { c.Resale.Rows[0].Excluded = true }))
	cheaper := "price,date,year,make,model,mileage,title\n8500,2026-11-09,2019,Orlan,Tessel,60000,clear\n"
	rows := u.taken(cheaper)
	if len(rows) != 4 {
		t.Fatalf("%d rows", len(rows))
	}
	shelf, _ := u.kept.Shelf(t.Context())
	want := []book.Earlier{{Price: 900000, Kind: "asked", Date: "2026-11-01"}}
	if c := shelf[0]; c.Row.Price != 850000 || !slices.Equal(c.Earlier, want) {
		t.Errorf("on the shelf: %+v", c)
	}
	if at := slices.IndexFunc(rows, func(r resale.Row) bool { return r.Shelf == shelf[0].ID }); rows[at].Price != 850000 ||
		!rows[at].Excluded {
		t.Errorf("in the lot: %+v", rows[at])
	}
	u.well(desk.Undo())
	if shelf, _ := u.kept.Shelf(t.Context()); shelf[0].Row.Price != 900000 || shelf[0].Earlier != nil {
		t.Errorf("undone: %+v", shelf[0])
	}
}

// TestWhatIsTakenOffTheShelfLeavesEveryLot: and comes back with its undo, ticks and all.
func TestWhatIsTakenOffTheShelfLeavesEveryLot(t *testing.T) {
	u := newUser(t)
	ids := u.add(tessel("14"), tessel("15"))
	u.well(desk.OpenLot(ids[0]))
	u.taken(pells)
	u.well(desk.OpenLot(ids[1]), desk.EditLot("leave out", func(c *valuation.Case) { c.Resale.Rows[0].Excluded = true }))
	off := u.s.Open.Case.Resale.Rows[0].Shelf
	u.well(desk.Go(desk.Bench), desk.ShowSection(desk.ShelfSection), desk.RemoveComparables("take a row off", off))
	if len(u.s.Shelf) != 3 || len(u.s.Open.Case.Resale.Rows) != 2 || u.s.Open.Fresh {
		t.Errorf("on the shelf %d, in the lot %d", len(u.s.Shelf), len(u.s.Open.Case.Resale.Rows))
	}
	u.well(desk.Undo())
	if rows := u.s.Open.Case.Resale.Rows; len(rows) != 3 || !rows[0].Excluded {
		t.Errorf("put back: %+v", rows)
	}
}

// TestAPredictionKeepsWhatTheLotDrew: what is frozen is valued with the rows of the shelf, and holds them.
func TestAPredictionKeepsWhatTheLotDrew(t *testing.T) {
	u := newUser(t)
	prior, err := resale.ParsePrior(assets.ResalePrior())
	if err != nil {
		t.Fatal(err)
	}
	u.Know.Prior = prior
	u.start()
	ids := u.add(tessel("14"), tessel("15"))
	u.well(desk.OpenLot(ids[0]))
	u.taken(pells)
	u.well(desk.MarkLots(lot.Bid, ids[1]))
	cases, _, err := u.kept.FrozenCases(t.Context())
	if err != nil || len(cases[ids[1]].Resale.Rows) != 3 {
		t.Errorf("frozen with %d rows: %v", len(cases[ids[1]].Resale.Rows), err)
	}
}

// TestTheShelfTeachesTheShopsMarket: what its rows teach is used from then on, is remembered, and is not worked out again for the same
// rows.
func TestTheShelfTeachesTheShopsMarket(t *testing.T) {
	u := newUser(t)
	prior, err := resale.ParsePrior(assets.ResalePrior())
	if err != nil {
		t.Fatal(err)
	}
	u.Know.Prior = prior
	ids := u.add(tessel("14"))
	u.well(desk.OpenLot(ids[0]))
	table := "price,date,year,make,model,mileage,title\n"
	for i := range 50 {
		table += fmt.Sprintf("%d,2026-11-02,%d,Kettrick,Vole %c,%d,clear\n", 19000-300*i, 2020-i%4, 'A'+i%5, 20000+1700*i)
	}
	u.taken(table)
	if !u.s.Market.Stale {
		t.Error("the market is not to be worked out")
	}
	m, err := u.FitMarket(t.Context(), u.s.Market)
	u.s = u.MarketFitted(t.Context(), u.s, m, err)
	markets := u.Knowledge().Prior.Markets
	if n := len(prior.Markets); len(markets) != n+1 || markets[n].Name != resale.ShopName || markets[n].Models != 5 || u.s.Market.Stale {
		t.Fatalf("%d markets, %+v, %s", len(markets), u.s.Market, u.s.Trouble)
	}
	u.start()
	if len(u.Knowledge().Prior.Markets) != len(markets) {
		t.Error("after a restart it is forgotten")
	}
	if again, err := u.FitMarket(t.Context(), u.s.Market); err != nil || !slices.EqualFunc(again.Markets, m.Markets,
		func(a, b resale.Market) bool {
			return a.Effects["age"] == b.Effects["age"]
		}) || again.Stale {
		t.Errorf("again: %+v, %v", again, err)
	}
}

// A row that was asked for and is then typed as sold keeps what was asked, even at the same price: such pairs teach what haggling takes
// off.
func TestARowThatIsSoldKeepsWhatWasAsked(t *testing.T) {
	u := newUser(t)
	u.well(desk.OpenLot(u.add(tessel("14"))[0]))
	u.taken(pells)
	first := func() book.Comparable { shelf, _ := u.kept.Shelf(t.Context()); return shelf[0] }
	if _, known := first().Sold(); known {
		t.Error("a row that is asked for is sold")
	}
	u.well(desk.TypeComparable(first().ID, map[string]string{"kind": "sold", "price": "9,000"}))
	if p, known := first().Sold(); !known || p.Asked != 900000 || p.Sold != 900000 {
		t.Errorf("%+v, %v of %+v", p, known, first())
	}
	if u.well(desk.Undo()); len(first().Earlier) != 0 {
		t.Errorf("undone: %+v", first())
	}
}

// A table that was read for one lot is not taken in before another, whose money may be another.
func TestATableIsTakenInForTheLotItWasReadFor(t *testing.T) {
	u := newUser(t)
	other := tessel("15")
	other.Currency = "CAD"
	ids := u.add(tessel("14"), other)
	u.well(desk.OpenLot(ids[0]))
	sheet, err := u.OpenSheet(t.Context(), []byte(pells), desk.Opening{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	sheet.Stated.Kind = "asked"
	take := u.TakeFor(ids[0])
	for name, away := range map[string]desk.Action{"another lot": desk.OpenLot(ids[1]), "the Board": desk.Go(desk.Board)} {
		u.well(away)
		if _, err := take(t.Context(), u.s, sheet); err == nil {
			t.Errorf("%s: the table of the first lot is taken in", name)
		}
	}
	if shelf, err := u.kept.Shelf(t.Context()); err != nil || len(shelf) > 0 {
		t.Errorf("%v: on the shelf are %+v", err, shelf)
	}
	u.well(desk.OpenLot(ids[0]))
	if got, err := take(t.Context(), u.s, sheet); err != nil || got.Counts.New != 4 {
		t.Errorf("%+v, %v", got.Counts, err)
	}
}
