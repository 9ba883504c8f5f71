package desk_test

import (
	"context"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// What the Board lacks is guessed and called a first guess; a lot without a price stays without, and is not asked for again and again.
func TestTheBoardGetsFirstGuesses(t *testing.T) {
	u := newUser(t)
	u.well(desk.EditShop("terms", func(shop *desk.Shop) {
		least := money.Amount(100_000)
		shop.Rules.MinProfit = &least
		shop.Buying.BidSteps = []invoice.Step{{Step: 2500}}
		shop.Time.HoursPerWeek = 30
	}))
	u.enlist("Lot,Year,Make,Model,Odometer (mi),Title,Loss,Value before,Currency\n14,2019,Ostrane,Pell,61200,salvage,collision,16500,USD\n"+
		"15,2019,Ostrane,Pell,61200,salvage,flood,,USD\n", "North yard")
	var ids []int64
	for _, e := range u.s.Entries {
		if desk.Unrated(e) {
			ids = append(ids, e.ID)
		}
	}
	if len(ids) != 2 {
		t.Fatalf("%d lots without figures", len(ids))
	}
	var seen []book.Entry
	if err := u.Guess(t.Context(), u.s.Factors, ids, func(e []book.Entry) { seen = e }); err != nil {
		t.Fatal(err)
	}
	u.s = u.s.Guessed(seen)
	a, b := u.s.Entries[0].Answer, u.s.Entries[1].Answer
	if a == nil || !a.FirstGuess || a.LookWorth == nil || *a.LookWorth < 0 || a.WinChance == nil || desk.Unrated(u.s.Entries[0]) {
		t.Errorf("the priced lot: %+v", a)
	}
	if b != nil && (b.FirstGuess && b.WalkAway != nil) {
		t.Errorf("the lot without a price: %+v", b)
	}
}

// Asked to stop, guessing stops.
func TestGuessingIsCancelled(t *testing.T) {
	u := newUser(t)
	u.enlist(runList, "North yard")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := u.Guess(ctx, u.s.Factors, []int64{u.s.Entries[0].ID}, func([]book.Entry) {}); err == nil ||
		!strings.Contains(err.Error(), "cancel") {
		t.Errorf("%v", err)
	}
}
