package sale_test

import (
	"testing"

	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// step is how far legal bids lie apart here.
const step = unit / 80

// What binds a bid, found by hand: lots that are worth 40, of prices spread evenly over 0..40, with a walk-away bid of 40.
func TestABidSaysWhatKeepsItDown(t *testing.T) {
	much := sale.Purse{Cash: 100 * unit, Hours: 100, Bays: 9}
	for name, c := range map[string]struct {
		purse sale.Purse
		lots  int
		hours float64
		later sale.Later
		bid   money.Amount // 0: none
		by    sale.Bound
	}{
		"enough for all":           {much, 2, 10, sale.Later{}, unit - step, sale.Loss}, // at 40 nothing is left
		"cash for half the price":  {sale.Purse{Cash: unit / 2, Hours: 100, Bays: 9}, 1, 10, sale.Later{}, unit / 2, sale.NoCash},
		"no bay":                   {sale.Purse{Cash: much.Cash, Hours: 100}, 2, 10, sale.Later{}, 0, sale.NoBay},
		"hours for half a build":   {sale.Purse{Cash: much.Cash, Hours: 5, Bays: 9}, 1, 10, sale.Later{}, 0, sale.NoHours},
		"one bay for two lots":     {sale.Purse{Cash: much.Cash, Hours: 100, Bays: 1}, 2, 10, sale.Later{}, unit / 2, sale.KeepBay},
		"hours for one of two":     {sale.Purse{Cash: much.Cash, Hours: 10, Bays: 9}, 2, 10, sale.Later{}, unit / 2, sale.KeepHours},
		"a bay is worth 10 later":  {much, 1, 10, sale.Later{Bay: 10}, unit * 3 / 4, sale.NextSale},
		"an hour is worth 1 later": {much, 1, 10, sale.Later{Hour: 1}, unit * 3 / 4, sale.NextSale},
	} {
		s := sale.Sale{Currency: usd, Purse: c.purse, Later: c.later, Lots: priced(c.lots, uniform{unit / 100.}, unit)}
		for i := range s.Lots {
			s.Lots[i].Hours, s.Lots[i].Steps[0].Step = c.hours, step
		}
		got, bid := sale.New(s).Answer().Lots[0], money.Amount(0)
		if got.Bid != nil {
			bid = *got.Bid
		}
		if got.By != c.by || bid < c.bid-step || bid > c.bid {
			t.Errorf("%s: %d by %q, want %d by %q", name, bid, got.By, c.bid, c.by)
		}
	}
}

// Cash for two lots at half their price each is shared; a lot that is worth less than its walk-away bid is not won at a loss.
func TestCashIsKeptAndALossIsRefused(t *testing.T) {
	s := sale.Sale{Currency: usd, Purse: sale.Purse{Cash: unit, Bays: 9}, Lots: priced(2, uniform{unit / 100.}, unit)}
	if first := sale.New(s).Answer().Lots[0]; first.By != sale.KeepCash || *first.Bid >= unit {
		t.Errorf("cash for one at its full price: %d by %q", *first.Bid, first.By)
	}
	s = sale.Sale{Currency: usd, Purse: sale.Purse{Cash: 100 * unit, Bays: 9}, Lots: priced(1, uniform{unit / 100.}, unit/2)}
	if first := sale.New(s).Answer().Lots[0]; first.By != sale.Loss || *first.Bid != unit/2-1 {
		t.Errorf("worth half its walk-away bid: %d by %q", *first.Bid, first.By)
	}
	s.Lots = priced(1, uniform{unit / 100.}, 2*unit)
	if first := sale.New(s).Answer().Lots[0]; first.By != sale.Unbound || *first.Bid != unit {
		t.Errorf("enough of all: %d by %q", *first.Bid, first.By)
	}
	if none := sale.New(sale.Sale{Currency: usd, Lots: []sale.Lot{{ID: "a"}}}).Answer().Lots[0]; none.By != sale.Unbound {
		t.Errorf("without a walk-away bid: %q", none.By)
	}
}
