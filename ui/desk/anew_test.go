package desk_test

import (
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// A result changes what lots like it go for: the Board's rows of lots that were looked at are marked, those in sight come first, and they
// come to what the worksheet comes to. Taken back, the figures from before return.
func TestTheBoardsRowsFollowAResult(t *testing.T) {
	u := newUser(t)
	ids := u.add(sound("14"), sound("27"), sound("31"))
	u.guessed(ids)
	before := answers(u.s)
	u.well(desk.OpenLot(ids[0]), desk.Go(desk.Live), desk.Call(250000), desk.RecordResult(lot.Lost), desk.Go(desk.Board))
	if !u.s.GuessesDue() {
		t.Fatal("after a result nothing is due")
	}
	var marked [][]bool
	var last desk.Guesses
	teaching, waits := u.s.Teaching(), desk.NewWaiting(ids)
	waits.Pace = 0
	waits.First([]int64{ids[2]})
	err := u.Guess(t.Context(), u.s.Factors, waits, func(g desk.Guesses) {
		last = g
		a := answers(u.s.Guessed(g))
		marked = append(marked, []bool{a[ids[1]].Old, a[ids[2]].Old})
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(marked) < 3 || !marked[0][0] || !marked[0][1] || !marked[1][0] || marked[1][1] || marked[2][0] {
		t.Errorf("27 and 31 are marked as %v; 31 is in sight", marked)
	}
	u.s = u.s.GuessesChecked(teaching, last)
	after := answers(u.s)
	u.well(desk.OpenLot(ids[1]))
	u.valued()
	v := u.s.Open.Valued.Answer
	if a := after[ids[1]]; *a.WinChance == *before[ids[1]].WinChance || *a.WinChance != *v.WinChance || *a.ExpectedGain != *v.ExpectedGain {
		t.Errorf("the Board says %v, %v before, the worksheet %v", *a.WinChance, *before[ids[1]].WinChance, *v.WinChance)
	}
	u.well(desk.Go(desk.Live), desk.Undo(), desk.Go(desk.Board))
	u.guessed(ids)
	same := func(a, b book.Summary) bool { return *a.WinChance == *b.WinChance && a.MeanProfit == b.MeanProfit }
	if now := answers(u.s); !same(now[ids[1]], before[ids[1]]) || !same(now[ids[2]], before[ids[2]]) {
		t.Errorf("taken back: %+v, before %+v", now, before)
	}
}
