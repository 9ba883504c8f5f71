package desk_test

import (
	"testing"

	"walkline/assets"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// One bad diary, from a trial: every hour and bill ran far over and the car was sold dear. None of what it proposes moves an open bid by
// two steps of 25 unless it is taken knowingly.
func TestOneBadDiaryMovesNoOpenBidByTwoSteps(t *testing.T) {
	for name, add := range map[string]func(u *user) int64{
		"a price judged by the user": func(u *user) int64 { return u.add(workshop())[0] },
		"comparables of the shelf":   onlyShelved,
	} {
		t.Run(name, func(t *testing.T) { badDiary(t, add) })
	}
}

// onlyShelved adds a lot whose price comes from what is on the shop's shelf.
func onlyShelved(u *user) int64 {
	c := workshop()
	c.Resale.Guess, c.Lot.Make, c.Lot.Model, c.Lot.ModelYear = nil, "Orlan", "Tessel", 2019
	id := u.add(c)[0]
	step := book.Step{Subject: book.Bench(desk.ShelfSection), Label: "prices"}
	for i := range 6 {
		row := resale.Row{ID: string(rune('a' + i)), Price: money.Amount(980000 + i*10000), Kind: "sold", Date: "2026-11-01", Title: "clear",
			Make: "Orlan", Model: "Tessel", ModelYear: 2019}
		step.Shelf = append(step.Shelf, book.Shelved{After: &book.Comparable{Row: row, Currency: "USD", On: "2026-11-01"}})
	}
	if _, err := u.kept.Do(u.t.Context(), step); err != nil {
		u.t.Fatal(err)
	}
	return id
}

// weighed has the effects of a proposal come back, and returns 1 where it is held back.
func (u *user) weighed(key string) (held int) {
	u.t.Helper()
	for _, p := range u.s.Record.Proposals {
		if p.Key != key {
			continue
		}
		effects, err := u.Effects(u.t.Context(), *u.s.Record, p)
		if err != nil {
			u.t.Fatal(err)
		}
		u.s = u.s.Shown(*u.s.Record, key, effects, nil)
		if effects[0].Share < 1 {
			held = 1
			if effects[0].Whole.Steps < 2 {
				u.t.Errorf("%s is held back for nothing: %+v", key, effects[0])
			}
		}
	}
	return held
}

func badDiary(t *testing.T, add func(u *user) int64) {
	u := newUser(t)
	prior, err := resale.ParsePrior(assets.ResalePrior())
	if err != nil {
		t.Fatal(err)
	}
	u.Know.Prior = prior
	u.start()
	figures, err := valuation.Foretell(workshop(), u.Know, at(300000))
	if err != nil {
		t.Fatal(err)
	}
	b := finished()
	b.Hours[0].Hours, b.Sale.Price = 180, at(1600000)
	b.Risks = []build.Seen{{Risk: "h", State: build.Found}}
	b.Receipts = append(b.Receipts, build.Receipt{Kind: "part", Line: "h", Amount: 200000})
	u.buy(lot.Won, b, figures)
	open := add(u)
	u.learn()
	bid := func() money.Amount {
		r, err := u.NewRating(t.Context(), u.s.Factors)
		if err != nil {
			t.Fatal(err)
		}
		one, _, err := r.Rate(t.Context(), open)
		if err != nil || one.Answer.WalkAway == nil {
			t.Fatalf("%v %s", err, one.Trouble)
		}
		return *one.Answer.WalkAway
	}
	today, held := bid(), 0
	keys := []string{}
	for _, p := range u.s.Record.Proposals {
		keys = append(keys, p.Key)
	}
	for _, key := range keys {
		before := bid()
		if s := u.do(desk.Accept(key)); s.Notice == "" || !s.Factors.Empty() && before == today && held == 0 && len(s.Record.Effects) == 0 {
			t.Errorf("%s was taken before its effect was known: %q", key, s.Notice)
		}
		held += u.weighed(key)
		u.do(desk.Accept(key))
		if moved := bid() - before; moved >= 5000 || moved <= -5000 {
			t.Errorf("%s moved the bid by %d", key, moved)
		}
		u.learn()
	}
	if held == 0 {
		t.Error("the test holds nothing back: it shows nothing")
	}
}
