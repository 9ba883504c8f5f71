package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/sheet"
	"walkline/ui/view"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// uniform is a law whose prices lie evenly from 0 to its value.
type uniform float64

func (u uniform) CDF(x float64) float64 { return min(1, max(0, x/float64(u))) }

// dayOf returns the plan of n lots with one bay for all, and of one lot that cannot pay.
func dayOf(n int) desk.DayPlan {
	usd, _ := money.Lookup("USD")
	p := desk.DayPlan{Sale: sale.Sale{Currency: usd, Purse: sale.Purse{Cash: 2_000_000, Hours: 500, Bays: 2},
		In: []sale.Income{{Day: "2026-12-01", Amount: 123400}}}, Frees: []desk.Freeing{{Day: "2026-11-30", Number: "7"}}}
	for i := range n + 1 {
		l := sale.Lot{ID: fmt.Sprint(i), Day: "2026-12-01", Worth: 600_000, WalkAway: ptr(money.Amount(550_000)),
			Hammer: uniform(6000), Steps: []invoice.Step{{Step: 10_000}}}
		if i == n {
			l.WalkAway = nil
		}
		p.Sale.Lots = append(p.Sale.Lots, l)
		p.Lots = append(p.Lots, desk.DayLot{ID: int64(i), FirstGuess: i == 0, Entry: book.Entry{Number: fmt.Sprint(100 + i),
			SaleDate: "2026-12-01", ModelYear: 2019, Make: "Ostrane", Model: "Pell"}})
	}
	p.Answer = sale.New(p.Sale).Answer()
	return p
}

func ptr[T any](x T) *T { return &x }

// A printed plan is one page for a usual sale: every lot that may be bid on with the bid after one win, those to leave by number, and the
// cautions.
func TestTheSalePlanReadsBackOnOnePage(t *testing.T) {
	p, usd := dayOf(25), view.NewPurse("USD")
	for _, paper := range []sheet.Paper{sheet.Letter, sheet.A4} {
		pdf, err := sheet.Plan(sheet.Day{Plan: p, Printed: "2026-11-30", Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		pages := read(t, pdf)
		if len(pages) != 1 {
			t.Fatalf("%s: %d pages", paper.Name, len(pages))
		}
		for _, want := range []string{"Sale plan", "2026-12-01 · USD", "Bid after a win", "100 first guess: 2019", "124 2019 Ostrane Pell",
			"Leave lot 125.", "Never bid beyond the walk-away bid.", "A first guess rests on the list alone.", "20,000",
			"Comes in on top: USD 1,234 from 2026-12-01.", "free a bay: build 7 from 2026-11-30.", "printed 2026-11-30"} {
			if !strings.Contains(pages[0], want) {
				t.Errorf("%s: the plan lacks %q in %s", paper.Name, want, pages[0])
			}
		}
		if n := strings.Count(pages[0], "Pell"); n != 25 {
			t.Errorf("%d rows", n)
		}
		if bid, after := p.Answer.Lots[9].Bid, p.Answer.Lots[9].AfterWin; *bid == *after ||
			!strings.Contains(pages[0], "109 2019 Ostrane Pell "+usd.Exact(*bid)+" "+usd.Exact(*after)+" 5,500") {
			t.Errorf("lot 109: bid %v, after one win %v in %s", *bid, *after, pages[0])
		}
	}
	if _, err := sheet.Plan(sheet.Day{Plan: p, Printed: lot.Date("x")}); err == nil {
		t.Error("a plan without a date is printed")
	}
}

// A plan of no lots says so, and one of very many loses none.
func TestAPlanOfNoneAndOfVeryMany(t *testing.T) {
	usd, _ := money.Lookup("USD")
	pdf, err := sheet.Plan(sheet.Day{Plan: desk.DayPlan{Sale: sale.Sale{Currency: usd}}, Printed: "2026-11-30"})
	if err != nil || !strings.Contains(read(t, pdf)[0], "No lot to bid on.") {
		t.Errorf("of none: %v", err)
	}
	pdf, err = sheet.Plan(sheet.Day{Plan: dayOf(120), Printed: "2026-11-30"})
	if err != nil || strings.Count(strings.Join(read(t, pdf), " "), "Pell") != 120 {
		t.Errorf("of 120: %v", err)
	}
}

// Many amounts and bays are summed, with the days of the first and the last; a plan over several days says what its own wins do to bays.
func TestWhatComesInOverManyDaysIsSummed(t *testing.T) {
	p := dayOf(3)
	p.Sale.In = nil
	for i := range 5 {
		p.Sale.In = append(p.Sale.In, sale.Income{Day: lot.Date("2026-12-05").Plus(7 * (4 - i)), Amount: 20000})
	}
	said := strings.Join(view.DayWords(&p), "\n")
	if !strings.Contains(said, "Comes in on top: USD 1,000 in 5 amounts, from "+view.Day("2026-12-05")+" to "+view.Day("2027-01-02")+".") ||
		strings.Contains(said, "bay for all these days") {
		t.Error(said)
	}
	if p.Frees = []desk.Freeing{{Day: "2026-12-03", Number: "7"}}; !strings.Contains(strings.Join(view.DayWords(&p), "\n"),
		"Their work over, these free a bay: build 7 from "+view.Day("2026-12-03")+".") {
		t.Error(view.DayWords(&p))
	}
	for i := range 4 {
		p.Frees = append(p.Frees, desk.Freeing{Day: lot.Date("2026-12-04").Plus(i), Number: "8"})
	}
	if said = strings.Join(view.DayWords(&p), "\n"); !strings.Contains(said, "Their work over, 5 builds free their bays, from "+
		view.Day("2026-12-03")+" to "+view.Day("2026-12-07")+".") {
		t.Error(said)
	}
	p.Lots[len(p.Lots)-1].Entry.SaleDate = "2026-12-08"
	if said = strings.Join(view.DayWords(&p), "\n"); !strings.Contains(said,
		"A lot that is still to be won keeps its bay for all these days.") {
		t.Error(said)
	}
}
