package view

import (
	"fmt"
	"maps"
	"slices"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// QuoteWords says what a yard said: "Reeve's yard, 555-0142, said USD 180 today".
func QuoteWords(q repair.Quote, today string, p Purse) string {
	who := joined(", ", q.Yard, q.Phone)
	day := "on " + Day(q.Day)
	if string(q.Day) == today {
		day = "today"
	}
	return fmt.Sprintf("%s said %s %s %s", who, p.Code, p.Exact(p.FromMajor(q.Price)), day)
}

// ShoppingColumns are the columns of a shopping list.
var ShoppingColumns = []Column{{"Lot", false, 60}, {"Part", false, 150}, {"For", false, 190}, {"Needed", true, 62}, {"Ask", true, 40},
	{"Source", false, 136}, {"Price", true, 150}, {"Freight", true, 60}, {"Lead days", true, 70}, {"Available", true, 70},
	{"Said", false, 170}}

// ShoppedLotColumns are the columns of the lots of which a shopping list may be.
var ShoppedLotColumns = []Column{{"Lot", false, 60}, {"Vehicle", false, 200}, {"Sale", false, 160}, {"Sale day", false, 104},
	{"State", false, 80}}

// ShoppedLot returns the cells of such a lot.
func ShoppedLot(e book.Entry) []string {
	return []string{e.Number, Vehicle(e.ModelYear, e.Make, e.Model, e.Trim), e.Sale, Day(e.SaleDate), string(e.State)}
}

// ShoppingRow returns the cells of a row of a shopping list; Ask is the turn in which the source is asked.
func ShoppingRow(x valuation.Wanted, today string) []string {
	p := NewPurse(x.Currency)
	said := ""
	if x.Said != nil {
		said = QuoteWords(*x.Said, today, p)
	}
	source := SourceWords(x.Source)
	if x.Source == valuation.Fallback {
		source = "if no source has it"
	}
	return []string{x.Lot, x.Part, x.For, Percent(x.Need), fmt.Sprint(x.Turn), source, threeWords(x.Price, p), p.Whole(x.Freight.Likely),
		fmt.Sprintf("%.0f", x.LeadDays.Likely), Percent(x.Has), said}
}

// threeWords says a judgement: "110 (60 to 190)", one figure where it is certain.
func threeWords(t prob.Three, p Purse) string {
	if t.Low == t.High {
		return p.Whole(t.Likely)
	}
	return fmt.Sprintf("%s (%s)", p.Whole(t.Likely), p.Range(t.Low, t.High))
}

// ShoppingSum says how many parts a list holds, of how many lots, and in which currencies.
func ShoppingSum(list []valuation.Wanted) string {
	parts, lots, said, codes := map[string]bool{}, map[string]bool{}, 0, map[string]bool{}
	for _, x := range list {
		lots[x.Lot+x.Vehicle], codes[x.Currency] = true, true
		parts[x.Lot+x.Vehicle+x.Line+x.Part] = true
		if x.Said != nil {
			said++
		}
	}
	if len(parts) == 0 {
		return "No part is needed, as far as is known."
	}
	money := ""
	for _, code := range slices.Sorted(maps.Keys(codes)) {
		money = joined(" and ", money, code)
	}
	return fmt.Sprintf("%s for %s, %s. Prices in %s; a starter price is from memory. Ask in the order of the turns: 1 first.",
		Count(len(parts), "part"), Count(len(lots), "lot"), Count(said, "quote"), money)
}

// ShoppingCare returns the cautions of the work that a list is for, each once.
func ShoppingCare(list []valuation.Wanted) []string {
	seen := map[string]bool{"": true}
	var out []string
	for _, x := range list {
		if !seen[x.Caution] {
			seen[x.Caution] = true
			out = append(out, x.Caution)
		}
	}
	return out
}
