package wire_test

import (
	"reflect"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
)

func TestTheShopIsKeptWholeInTheStore(t *testing.T) {
	d, _ := open(t)
	s := d.Load(t.Context())
	if faults := s.Shop.Faults(); len(faults) > 0 {
		t.Fatalf("the starter's shop has the faults %v", faults)
	}
	s = d.Do(t.Context(), s, desk.EditShop("yard", func(shop *desk.Shop) {
		shop.Yards = []desk.Yard{{Sale: "Harrow Flats yard", Buying: valuation.Copy(shop.Buying)}}
		shop.Rules.MaxDays = nil
		shop.Yards[0].Buying.Fixed[0].Amount++
	}))
	again := d.Load(t.Context())
	if s.Trouble != "" || !reflect.DeepEqual(desk.Differing(again.Shop.Onto(valuation.Defaults()), s.Shop.Onto(valuation.Defaults())),
		[]string(nil)) ||
		len(again.Shop.Yards) != 1 || again.Shop.Yards[0].Buying.Fixed[0].Amount != s.Shop.Yards[0].Buying.Fixed[0].Amount {
		t.Errorf("%q\nkept %+v\nwant %+v", s.Trouble, again.Shop, s.Shop)
	}
}

func TestACurrencyWithoutCentsRefusesFiguresThatHaveThem(t *testing.T) {
	d, _ := open(t)
	s := d.Do(t.Context(), d.Load(t.Context()), desk.SetCurrency("JPY"))
	if s.Trouble != "" || s.Shop.Buying.BidSteps[0].Step != 20 {
		t.Fatalf("%q: a step of 20.00 is %d yen", s.Trouble, s.Shop.Buying.BidSteps[0].Step)
	}
	s = d.Do(t.Context(), s, desk.SetCurrency("USD"))
	s = d.Do(t.Context(), s, desk.EditShop("fee", func(shop *desk.Shop) { shop.Buying.Fixed[0].Amount = 7550 }))
	after := d.Do(t.Context(), s, desk.SetCurrency("JPY"))
	if !strings.Contains(after.Trouble, "fixed[0].amount") || after.Shop.Currency != "USD" {
		t.Errorf("%q, now in %s", after.Trouble, after.Shop.Currency)
	}
}

func TestAShopWithAnUnknownKeyIsNotRead(t *testing.T) {
	d, book := open(t)
	if err := book.PutSetting(t.Context(), "shop", map[string]any{"format": desk.ShopFormat, "currency": "USD", "rivls": 3}); err != nil {
		t.Fatal(err)
	}
	if s := d.Load(t.Context()); !strings.Contains(s.Trouble, "rivls") || !strings.Contains(s.Trouble, "rivals") {
		t.Errorf("trouble %q", s.Trouble)
	}
}
