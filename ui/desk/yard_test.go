package desk_test

import (
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/money"
)

// A lot's fees become its yard's; the next lot of the yard takes them, and one step takes that back.
func TestALotsFeesAreKeptAsItsYards(t *testing.T) {
	u := newUser(t)
	u.well(desk.EditShop("fees", func(shop *desk.Shop) { shop.Buying = fees(1000) }))
	newAt := func(sale string) money.Amount {
		u.well(desk.NewLot(), desk.EditLot("sale", func(c *valuation.Case) { c.Lot.Sale = sale }))
		return u.s.Open.Case.Buying.Fixed[0].Amount
	}
	gate := func(a money.Amount) desk.Action {
		return desk.EditLot("gate", func(c *valuation.Case) { c.Buying.Fixed[0].Amount = a })
	}
	u.well(desk.NewLot())
	if s := u.do(desk.KeepTerms()); !strings.Contains(s.Trouble, "names no sale") || len(s.Shop.Yards) != 0 {
		t.Errorf("without a sale: %q, %v", s.Trouble, s.Shop.Yards)
	}
	newAt(" Weir Street ")
	s := u.well(gate(4000), desk.KeepTerms())
	if !strings.Contains(s.Notice, "Kept as the fees of Weir Street") || len(s.Open.Differs) != 0 || s.Open.Yard != "Weir Street" {
		t.Fatalf("%q, differs %v, yard %q", s.Notice, s.Open.Differs, s.Open.Yard)
	}
	first := s.Open.ID
	if got := newAt("weir street"); got != 4000 {
		t.Errorf("the next lot of the yard pays %d", got)
	}
	second := u.well(gate(5000), desk.KeepTerms()).Open.ID
	if y := u.s.Shop.Yards; len(y) != 1 || y[0].Buying.Fixed[0].Amount != 5000 {
		t.Errorf("kept again: %+v", y)
	}
	if got := newAt("elsewhere"); got != 1000 {
		t.Errorf("a lot of another sale pays %d", got)
	}
	if s = u.well(desk.OpenLot(first)); s.Open.Case.Buying.Fixed[0].Amount != 4000 {
		t.Error("a lot that was there has changed")
	}
	if s = u.well(desk.OpenLot(second), desk.Undo()); s.Shop.Yards[0].Buying.Fixed[0].Amount != 4000 {
		t.Errorf("undone: %q %+v", s.Notice, s.Shop.Yards)
	}
}
