package desk_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// fees is what a yard charges: one fixed fee.
func fees(amount money.Amount) valuation.Buying {
	b := valuation.Defaults().Buying
	b.BidSteps = []invoice.Step{{Step: 2500}}
	b.Fixed = []invoice.Fixed{{Name: "Gate", Amount: amount}}
	return b
}

func TestTheShopIsKeptAndUndone(t *testing.T) {
	d, _ := newDesk()
	s := d.Load(t.Context())
	s = d.EditShop(t.Context(), s, "rivals", func(shop *desk.Shop) { shop.Rivals = 7 })
	s.Place = desk.Bench
	if again := d.Load(t.Context()); s.Trouble != "" || again.Shop.Rivals != 7 || again.StarterShop.Rivals != valuation.UsualRivals {
		t.Errorf("%q, kept %d, starter %d", s.Trouble, again.Shop.Rivals, again.StarterShop.Rivals)
	}
	if s.Reach().Undo != "rivals" {
		t.Errorf("undo on the Bench: %+v", s.Reach())
	}
	if s = d.Undo(t.Context(), s); s.Shop.Rivals != valuation.UsualRivals || s.Notice != "Undone: rivals." {
		t.Errorf("after undo %d rivals, %q", s.Shop.Rivals, s.Notice)
	}
	if s = d.Redo(t.Context(), s); s.Shop.Rivals != 7 {
		t.Errorf("after redo %d rivals", s.Shop.Rivals)
	}
}

func TestAShopThatCannotBeReadIsSaid(t *testing.T) {
	d, b := newDesk()
	for _, kept := range []any{"no object", map[string]any{"format": "walkline-shop/9"}} {
		text, err := json.Marshal(kept)
		if err != nil {
			t.Fatal(err)
		}
		b.settings["shop"] = text
		if s := d.Load(t.Context()); !strings.HasPrefix(s.Trouble, "Could not read the Bench's values") || s.Shop.Format != desk.ShopFormat {
			t.Errorf("%s: %q, %+v", text, s.Trouble, s.Shop)
		}
	}
}

// A lot says which of its terms are nobody's yet.
func TestALotNamesTheTermsThatAreStarterValues(t *testing.T) {
	d, _ := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	if !slices.Contains(s.Open.Starters, desk.OtherBids) || slices.Contains(s.Open.Starters, desk.OfCurrency) {
		t.Errorf("a new lot: %q", s.Open.Starters)
	}
	others := 9
	s = d.Edit(t.Context(), s, "rivals", func(c *valuation.Case) { c.Market.Rivals = &others })
	if slices.Contains(s.Open.Starters, desk.OtherBids) || !slices.Contains(s.Open.Starters, desk.HouseRules) {
		t.Errorf("with rivals of its own: %q", s.Open.Starters)
	}
}

func TestALotTakesTheTermsOfItsYard(t *testing.T) {
	d, _ := newDesk()
	s := d.EditShop(t.Context(), d.Load(t.Context()), "yards", func(shop *desk.Shop) {
		shop.Buying = fees(1000)
		shop.Yards = []desk.Yard{{Sale: "North yard", Buying: fees(2000)}, {Sale: "South yard", Buying: fees(3000)}}
	})
	s = d.NewLot(t.Context(), s)
	gate := func() money.Amount { return s.Open.Case.Buying.Fixed[0].Amount }
	for _, step := range []struct {
		sale string
		gate money.Amount
	}{{"", 1000}, {"North y", 1000}, {" north YARD ", 2000}, {"South yard", 3000}, {"elsewhere", 1000}} {
		s = d.Edit(t.Context(), s, "sale", func(c *valuation.Case) { c.Lot.Sale = step.sale })
		if gate() != step.gate || len(s.Open.Differs) != 0 {
			t.Errorf("at %q the gate takes %d, want %d; differs %v", step.sale, gate(), step.gate, s.Open.Differs)
		}
	}
	s = d.Edit(t.Context(), s, "gate", func(c *valuation.Case) { c.Buying.Fixed[0].Amount = 4000 })
	s = d.Edit(t.Context(), s, "sale", func(c *valuation.Case) { c.Lot.Sale = "North yard" })
	if gate() != 4000 || !slices.Equal(s.Open.Differs, []string{"what the sale charges"}) || s.Open.Yard != "North yard" {
		t.Errorf("a fee set by hand: %d, differs %v, yard %q", gate(), s.Open.Differs, s.Open.Yard)
	}
	s = d.TakeTerms(t.Context(), s)
	if gate() != 2000 || len(s.Open.Differs) != 0 || s.Open.Reach.Undo != "take the Bench's terms" {
		t.Errorf("taken: %d, differs %v, %+v", gate(), s.Open.Differs, s.Open.Reach)
	}
	if s = d.Undo(t.Context(), s); gate() != 4000 || len(s.Open.Differs) != 1 {
		t.Errorf("undone: %d, differs %v", gate(), s.Open.Differs)
	}
}

func TestTermsAreComparedByWhatTheySay(t *testing.T) {
	a, b := valuation.Defaults(), valuation.Defaults()
	a.Buying.Tax.Rate, b.Buying.Tax.Rate = decimal.RequireFromString("0.10"), decimal.RequireFromString("0.1")
	a.Buying.Fixed, a.Labour.Rates = []invoice.Fixed{}, map[string]float64{}
	if got := desk.Differing(a, b); len(got) != 0 {
		t.Errorf("the same terms differ in %v", got)
	}
	least := money.Amount(1)
	b.Rules.MinProfit, b.Currency, b.Time.HoursPerWeek = &least, "EUR", 12
	if got := desk.Differing(a, b); !slices.Equal(got, []string{"house rules", "time", "currency"}) {
		t.Errorf("differs in %v", got)
	}
}

func TestFaultsOfTheShopNameTheYard(t *testing.T) {
	d, _ := newDesk()
	shop := d.Load(t.Context()).Shop
	shop.Buying, shop.Yards = fees(1000), []desk.Yard{{Sale: "North yard"}}
	var keys []string
	for _, f := range shop.Faults() {
		keys = append(keys, f.Key)
	}
	if !slices.Contains(keys, "North yard: buying.bid_steps") || slices.Contains(keys, "buying.bid_steps") || slices.Contains(keys, "resale") || !slices.Contains(keys, "rules") {
		t.Errorf("faults %q", keys)
	}
}

func TestPricesInAnotherCurrencyRefuseTheTerms(t *testing.T) {
	d, _ := newDesk()
	s := d.NewLot(t.Context(), d.Load(t.Context()))
	s, _ = d.Apply(t.Context(), s, mustSheet(t, d))
	s = d.SetCurrency(t.Context(), s, "EUR")
	if s.Shop.Currency != "EUR" || !strings.Contains(s.Notice, "nothing was converted") {
		t.Fatalf("%q, %q", s.Shop.Currency, s.Trouble)
	}
	if after := d.TakeTerms(t.Context(), s); after.Open.Case.Currency != "USD" || !strings.Contains(after.Trouble, "nothing converts them") {
		t.Errorf("%q in %s", after.Trouble, after.Open.Case.Currency)
	}
	if after := d.SetCurrency(t.Context(), s, "XQX"); !strings.Contains(after.Trouble, "ISO 4217") {
		t.Errorf("%q", after.Trouble)
	}
}

func mustSheet(t *testing.T, d *desk.Desk) desk.Sheet {
	t.Helper()
	sheet, err := d.OpenSheet(t.Context(), []byte("price\n100\n"), "USD")
	if err != nil {
		t.Fatal(err)
	}
	return sheet
}
