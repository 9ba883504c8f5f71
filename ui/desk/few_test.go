package desk_test

import (
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// One bad diary, from a trial: every hour and bill ran far over and the car was sold dear. None of what it proposes moves an open bid by
// two steps of 25 unless it is taken knowingly.
func TestOneBadDiaryMovesNoOpenBidByTwoSteps(t *testing.T) {
	u := newUser(t)
	figures, err := valuation.Foretell(workshop(), u.Know, at(300000))
	if err != nil {
		t.Fatal(err)
	}
	b := finished()
	b.Hours[0].Hours, b.Sale.Price = 180, at(1600000)
	b.Risks = []build.Seen{{Risk: "h", State: build.Found}}
	b.Receipts = append(b.Receipts, build.Receipt{Kind: "part", Line: "h", Amount: 200000})
	u.buy(lot.Won, b, figures)
	open := u.add(workshop())[0]
	u.learn()
	bid := func() money.Amount {
		v, err := u.Value(t.Context(), u.lot(open).Case.With(u.s.Factors))
		if err != nil || v.Answer.WalkAway == nil {
			t.Fatalf("%v", err)
		}
		return *v.Answer.WalkAway
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
		for _, p := range u.s.Record.Proposals {
			if p.Key != key {
				continue
			}
			effects, err := u.Effects(t.Context(), *u.s.Record, p)
			if err != nil {
				t.Fatal(err)
			}
			u.s = u.s.Shown(key, effects, nil)
			if effects[0].Share < 1 {
				held++
				if effects[0].Whole.Steps < 2 {
					t.Errorf("%s is held back for nothing: %+v", key, effects[0])
				}
			}
		}
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
