package desk_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"walkline/store/casefile"
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

func rivals(n int) desk.Action {
	return desk.EditShop("rivals", func(shop *desk.Shop) { shop.Rivals = n })
}

func TestTheShopIsKeptAndUndone(t *testing.T) {
	u := newUser(t)
	s := u.well(desk.Go(desk.Bench), desk.ShowSection("Who else bids"), rivals(7))
	if again := u.Load(t.Context()); again.Shop.Rivals != 7 || again.StarterShop.Rivals != valuation.UsualRivals {
		t.Errorf("kept %d, starter %d", again.Shop.Rivals, again.StarterShop.Rivals)
	}
	if s.Reach.Undo != "rivals" {
		t.Errorf("undo on the Bench: %+v", s.Reach)
	}
	if s = u.well(desk.Undo()); s.Shop.Rivals != valuation.UsualRivals || s.Notice != "Undone: rivals." {
		t.Errorf("after undo %d rivals, %q", s.Shop.Rivals, s.Notice)
	}
	if s = u.well(desk.Redo()); s.Shop.Rivals != 7 {
		t.Errorf("after redo %d rivals", s.Shop.Rivals)
	}
}

// Undo in a section of the Bench takes back what was done there, and leaves what was done in another since.
func TestASectionOfTheBenchUndoesItsOwn(t *testing.T) {
	u := newUser(t)
	u.well(desk.Go(desk.Bench), desk.ShowSection("House rules"), rivals(7),
		desk.ShowSection("My labor"), desk.EditShop("selling",
			func(shop *desk.Shop) { shop.Selling.Percent = .06 }), desk.ShowSection("House rules"))
	if s := u.well(desk.Undo()); s.Notice != "Undone: rivals." || s.Shop.Rivals != valuation.UsualRivals || s.Shop.Selling.Percent != .06 {
		t.Errorf("%q: %d rivals, selling %g", s.Notice, s.Shop.Rivals, s.Shop.Selling.Percent)
	}
	if s := u.well(desk.Undo()); s.Notice != "There is nothing to undo or redo on this page." || s.Shop.Selling.Percent != .06 {
		t.Errorf("%q: selling %g", s.Notice, s.Shop.Selling.Percent)
	}
	if s := u.well(desk.ShowSection("My labor"), desk.Undo()); s.Shop.Selling.Percent != 0 {
		t.Errorf("%q: selling %g", s.Notice, s.Shop.Selling.Percent)
	}
}

func TestAShopThatCannotBeReadIsSaid(t *testing.T) {
	u := newUser(t)
	for _, kept := range []any{"no object", map[string]any{"format": "walkline-shop/9"}} {
		if err := u.kept.PutSetting(t.Context(), "shop", kept); err != nil {
			t.Fatal(err)
		}
		if s := u.Load(t.Context()); !strings.HasPrefix(s.Trouble, "Could not read the Bench's values") ||
			s.Shop.Format != desk.ShopFormat {
			t.Errorf("%v: %q, %+v", kept, s.Trouble, s.Shop)
		}
	}
}

// A lot says which of its terms are nobody's yet.
func TestALotNamesTheTermsThatAreStarterValues(t *testing.T) {
	u := newUser(t)
	u.newLot()
	if starters := u.s.Open.Starters; !slices.Contains(starters, desk.OtherBids) || slices.Contains(starters, desk.OfCurrency) {
		t.Errorf("a new lot: %q", starters)
	}
	s := u.well(desk.EditLot("rivals", func(c *valuation.Case) { c.Market.Rivals = new(9) }))
	if slices.Contains(s.Open.Starters, desk.OtherBids) || !slices.Contains(s.Open.Starters, desk.HouseRules) {
		t.Errorf("with rivals of its own: %q", s.Open.Starters)
	}
}

func TestALotTakesTheTermsOfItsYard(t *testing.T) {
	u := newUser(t)
	u.well(desk.EditShop("yards", func(shop *desk.Shop) {
		shop.Buying = fees(1000)
		shop.Yards = []desk.Yard{{Sale: "North yard", Buying: fees(2000)}, {Sale: "South yard", Buying: fees(3000)}}
	}), desk.NewLot())
	gate := func() money.Amount { return u.s.Open.Case.Buying.Fixed[0].Amount }
	atSale := func(name string) desk.Action {
		return desk.EditLot("sale", func(c *valuation.Case) { c.Lot.Sale = name })
	}
	for _, step := range []struct {
		sale string
		gate money.Amount
	}{{"", 1000}, {"North y", 1000}, {" north YARD ", 2000}, {"South yard", 3000}, {"elsewhere", 1000}} {
		if s := u.well(atSale(step.sale)); gate() != step.gate || len(s.Open.Differs) != 0 {
			t.Errorf("at %q the gate takes %d, want %d; differs %v", step.sale, gate(), step.gate, s.Open.Differs)
		}
	}
	s := u.well(desk.EditLot("gate", func(c *valuation.Case) { c.Buying.Fixed[0].Amount = 4000 }), atSale("North yard"))
	if gate() != 4000 || !slices.Equal(s.Open.Differs, []string{"what the sale charges"}) || s.Open.Yard != "North yard" {
		t.Errorf("a fee set by hand: %d, differs %v, yard %q", gate(), s.Open.Differs, s.Open.Yard)
	}
	if s = u.well(desk.TakeTerms()); gate() != 2000 || len(s.Open.Differs) != 0 || s.Reach.Undo != "take the Bench's terms" {
		t.Errorf("taken: %d, differs %v, %+v", gate(), s.Open.Differs, s.Reach)
	}
	if s = u.well(desk.Undo()); gate() != 4000 || len(s.Open.Differs) != 1 {
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
	shop := newUser(t).s.Shop
	shop.Buying, shop.Yards = fees(1000), []desk.Yard{{Sale: "North yard"}}
	var keys []string
	for _, f := range shop.Faults() {
		keys = append(keys, f.Key)
	}
	if !slices.Contains(keys, "North yard: buying.bid_steps") || slices.Contains(keys, "buying.bid_steps") ||
		slices.Contains(keys, "resale") || !slices.Contains(keys, "rules") {
		t.Errorf("faults %q", keys)
	}
}

func TestPricesInAnotherCurrencyRefuseTheTerms(t *testing.T) {
	u := newUser(t)
	u.well(desk.OpenLot(u.add(sound("14"))[0]))
	s := u.well(desk.SetCurrency("EUR"))
	if s.Shop.Currency != "EUR" || !strings.Contains(s.Notice, "nothing was converted") {
		t.Fatalf("%q, %q", s.Shop.Currency, s.Notice)
	}
	if s = u.do(desk.TakeTerms()); s.Open.Case.Currency != "USD" || !strings.Contains(s.Trouble, "nothing converts them") {
		t.Errorf("%q in %s", s.Trouble, s.Open.Case.Currency)
	}
	if s = u.do(desk.SetCurrency("XQX")); !strings.Contains(s.Trouble, "ISO 4217") {
		t.Errorf("%q", s.Trouble)
	}
	if s = u.well(desk.SetCurrency("EUR")); s.Notice != "" {
		t.Errorf("the same currency again: %q", s.Notice)
	}
}

// The Bench's own share, narrowing and season go into new lots and are taken back like any of its values. A document that an older version
// kept says nothing of them: the starter values stand.
func TestTheMarketOfTheBench(t *testing.T) {
	u := newUser(t)
	starter := u.s.Shop
	u.well(desk.Go(desk.Bench), desk.EditShop("own share", func(s *desk.Shop) {
		s.OwnShare, s.Narrowing, s.Season = .7, false, []float64{1, 1, 1.1, 1, 1, 1, 1, 1, 1, 1, 1, 1}
	}))
	s := u.well(desk.NewLot())
	if c := s.Open.Case; c.Market.OwnShare != .7 || c.Market.Narrowing || len(c.Resale.Season) != 12 {
		t.Errorf("a new lot has %+v, season %v", c.Market, c.Resale.Season)
	}
	if s = u.well(desk.Go(desk.Bench), desk.Undo()); s.Shop.OwnShare != starter.OwnShare || !s.Shop.Narrowing || s.Shop.Season != nil {
		t.Errorf("after undo %g, %v, %v", s.Shop.OwnShare, s.Shop.Narrowing, s.Shop.Season)
	}
	if err := u.kept.PutSetting(t.Context(), "shop", map[string]any{"format": desk.ShopFormat, "currency": "USD"}); err != nil {
		t.Fatal(err)
	}
	u.start()
	if s := u.s; s.Trouble != "" || s.Shop.OwnShare != starter.OwnShare || !s.Shop.Narrowing {
		t.Errorf("of an old document: %q, %g, %v", s.Trouble, s.Shop.OwnShare, s.Shop.Narrowing)
	}
}

// A lot whose number of other bidders is emptied counts the shop's usual number, that of the day on which it took the Bench's terms: not
// the engine's own.
func TestAnEmptiedNumberOfBiddersIsTheBenchs(t *testing.T) {
	u := newUser(t)
	u.well(desk.Go(desk.Bench), rivals(9))
	s := u.well(desk.Go(desk.Board), desk.NewLot())
	s = u.well(desk.EditLot("bidders", func(c *valuation.Case) { c.Market.Rivals = nil }))
	n, entered := s.Open.Case.Market.Others()
	if n != 9 || entered {
		t.Errorf("%d others are counted, entered: %t", n, entered)
	}
	back, faults := casefile.Read(casefile.Write(s.Open.Case))
	if n, _ = back.Market.Others(); n != 9 {
		t.Errorf("after writing and reading %d others are counted: %v", n, faults)
	}
	u.well(desk.Go(desk.Bench), rivals(3))
	if s = u.well(desk.OpenLot(s.Open.ID)); s.Open.Case.Market.UsualRivals == nil || *s.Open.Case.Market.UsualRivals != 9 {
		t.Errorf("a later change on the Bench moved the lot's: %v", s.Open.Case.Market.UsualRivals)
	}
}
