package desk_test

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// What the Board lacks is guessed and called a first guess; a lot without a price stays without, and is not asked for again and again.
func TestTheBoardGetsFirstGuesses(t *testing.T) {
	u := newUser(t)
	u.ready()
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
	var seen desk.Guesses
	if err := u.Guess(t.Context(), u.s.Factors, desk.NewWaiting(ids), func(g desk.Guesses) { seen = g }); err != nil {
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

// ready gives the shop the terms that a first guess needs.
func (u *user) ready() {
	u.t.Helper()
	u.well(desk.EditShop("terms", func(shop *desk.Shop) {
		least := money.Amount(100_000)
		shop.Rules.MinProfit = &least
		shop.Buying.BidSteps = []invoice.Step{{Step: 2500}}
		shop.Time.HoursPerWeek = 30
	}))
}

// dozen returns a user with twelve lots that nobody has looked at, and their ids.
func dozen(t *testing.T) (u *user, ids []int64) {
	t.Helper()
	u = newUser(t)
	u.ready()
	var list strings.Builder
	list.WriteString("Lot,Year,Make,Model,Odometer (mi),Title,Loss,Value before,Currency\n")
	for i := range 12 {
		fmt.Fprintf(&list, "%d,2019,Ostrane,Pell,%d,salvage,collision,16500,USD\n", 100+i, 60000+5000*i)
	}
	u.enlist(list.String(), "North yard")
	for _, e := range u.s.Entries {
		ids = append(ids, e.ID)
	}
	return u, ids
}

// What comes in sight while others are guessed comes next.
func TestWhatComesInSightIsGuessedNext(t *testing.T) {
	u, ids := dozen(t)
	u.Share = nil // one after the other
	waits := desk.NewWaiting(ids)
	waits.Pace = 0
	waits.First(ids[8:10])
	var order []int64
	see := func(g desk.Guesses) {
		for _, e := range g.Entries {
			if !desk.Unrated(e) && !slices.Contains(order, e.ID) {
				order = append(order, e.ID)
			}
		}
		if len(order) == 1 {
			waits.First(ids[6:8])
		}
	}
	if err := u.Guess(t.Context(), u.s.Factors, waits, see); err != nil || len(order) != 12 {
		t.Fatalf("%v, guessed %v", err, order)
	}
	if want := []int64{ids[8], ids[6], ids[7], ids[9], ids[0]}; !slices.Equal(order[:5], want) {
		t.Errorf("guessed %v, wanted first %v", order, want)
	}
}

// The Board is shown again after the first lot and after the last, and between them no more often than its pace.
func TestTheBoardStandsWhileLotsAreGuessed(t *testing.T) {
	u, ids := dozen(t)
	waits := desk.NewWaiting(ids)
	waits.Pace = time.Hour
	shown := 0
	err := u.Guess(t.Context(), u.s.Factors, waits, func(desk.Guesses) { shown++ })
	if err != nil || shown != 2 {
		t.Errorf("%v, shown %d times, want 2", err, shown)
	}
}

// Several workers guess each lot once, and come to what one comes to.
func TestWorkersGuessWhatOneGuesses(t *testing.T) {
	var answers [][]book.Summary
	for _, workers := range []int{1, 3} {
		u, ids := dozen(t)
		u.Share = func(n int, begin func() func(int) error) error {
			errs := make([]error, workers)
			var busy sync.WaitGroup
			for w := range workers {
				busy.Go(func() {
					do := begin()
					for k := w; k < n && errs[w] == nil; k += workers {
						errs[w] = do(k)
					}
				})
			}
			busy.Wait()
			return errors.Join(errs...)
		}
		var seen desk.Guesses
		if err := u.Guess(t.Context(), u.s.Factors, desk.NewWaiting(ids), func(g desk.Guesses) { seen = g }); err != nil {
			t.Fatal(err)
		}
		var all []book.Summary
		for _, e := range seen.Entries {
			all = append(all, *e.Answer)
		}
		answers = append(answers, all)
	}
	if len(answers[0]) != 12 || !reflect.DeepEqual(answers[0], answers[1]) {
		t.Errorf("one comes to %+v, three to %+v", answers[0], answers[1])
	}
}

// Asked to stop, guessing stops.
func TestGuessingIsCancelled(t *testing.T) {
	u := newUser(t)
	u.enlist(runList, "North yard")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := u.Guess(ctx, u.s.Factors, desk.NewWaiting([]int64{u.s.Entries[0].ID}), func(desk.Guesses) {}); err == nil ||
		!strings.Contains(err.Error(), "cancel") {
		t.Errorf("%v", err)
	}
}

// guessed has the lots guessed as the window does, and returns what came last.
func (u *user) guessed(ids []int64) desk.Guesses {
	u.t.Helper()
	var last desk.Guesses
	teaching := u.s.Teaching()
	if err := u.Guess(u.t.Context(), u.s.Factors, desk.NewWaiting(ids), func(g desk.Guesses) { last = g }); err != nil {
		u.t.Fatal(err)
	}
	u.s = u.s.GuessesChecked(teaching, last)
	return last
}

// answers returns what the Board says of the lots, by id.
func answers(s desk.State) map[int64]book.Summary {
	out := map[int64]book.Summary{}
	for _, e := range s.Entries {
		if e.Answer != nil {
			out[e.ID] = *e.Answer
		}
	}
	return out
}

// What was learned since makes kept guesses anew, come to what guessing for the first time comes to; those that moved say so, and nothing
// is made anew twice. What is taken back brings the guesses from before.
func TestGuessesAreMadeAnewWhenSomethingWasLearned(t *testing.T) {
	u, ids := dozen(t)
	if !u.s.GuessesDue() {
		t.Error("nothing is due before the first look")
	}
	first := u.guessed(ids)
	if u.s.GuessesDue() || len(first.Moved) > 0 || len(answers(u.s)) != len(ids) {
		t.Fatalf("guessed for the first time: due %v, moved %q, %d answers", u.s.GuessesDue(), first.Moved, len(answers(u.s)))
	}
	before := answers(u.s)
	if u.guessed(ids); !reflect.DeepEqual(answers(u.s), before) {
		t.Error("made anew although nothing was learned")
	}
	u.well(desk.EditShop("terms", func(shop *desk.Shop) { shop.Time.HoldingPerDay++ }))
	if !u.s.GuessesDue() {
		t.Error("a step that was kept is not looked at")
	}
	u.s.Factors.Resale = &learn.Bias{Factor: .8, Spread: 1, From: 9}
	anew := u.guessed(ids)
	after := answers(u.s)
	if len(anew.Moved) == 0 || !strings.Contains(u.s.Notice, "Bids moved with what they rest on: "+anew.Moved[0]) {
		t.Fatalf("with lower prices %q moved, said %q", anew.Moved, u.s.Notice)
	}
	for _, e := range u.s.Entries {
		was, is := before[e.ID], after[e.ID]
		moved := !reflect.DeepEqual(was.WalkAway, is.WalkAway)
		if was.Rests == is.Rests || is.Stale || moved != (is.Shift != nil) || moved != slices.Contains(anew.Moved, e.Number) ||
			moved && !reflect.DeepEqual(is.Shift.Was, was.WalkAway) {
			t.Errorf("lot %s: was %+v, is %+v, moved %q", e.Number, was, is, anew.Moved)
		}
	}
	fresh, others := dozen(t)
	fresh.s.Factors = u.s.Factors
	fresh.guessed(others)
	for i, id := range ids {
		if a, b := after[id], answers(fresh.s)[others[i]]; !reflect.DeepEqual(a.WalkAway, b.WalkAway) || a.MeanProfit != b.MeanProfit {
			t.Errorf("made anew %+v, for the first time %+v", a, b)
		}
	}
	u.s.Factors = learn.Factors{}
	if u.guessed(ids); !sameFigures(answers(u.s), before) {
		t.Error("taken back, the guesses are not those from before")
	}
}

func sameFigures(a, b map[int64]book.Summary) bool {
	for id := range b {
		if !reflect.DeepEqual(a[id].WalkAway, b[id].WalkAway) || a[id].MeanProfit != b[id].MeanProfit || a[id].Rests != b[id].Rests {
			return false
		}
	}
	return len(a) == len(b)
}

// What lots went for, what a survey found, a comparable, and an entry of the catalogue each make guesses anew; they know which is in sight.
func TestWhatGuessesRestOn(t *testing.T) {
	u, ids := dozen(t)
	u.guessed(ids)
	rests := answers(u.s)[ids[5]].Rests
	for _, step := range []struct {
		what string
		do   func()
	}{
		{"a survey", func() {
			u.well(desk.OpenLot(ids[0]), desk.EditLot("damage", func(c *valuation.Case) {
				c.Damage = []lot.Damage{{Area: "12", Extent: "disabling", Depth: "structure"}}
				c.Resale.Guess = &prob.Three{Low: 14000, Likely: 15000, High: 16000}
			}))
		}},
		{"a result", func() {
			u.well(desk.OpenLot(ids[0]))
			u.valued()
			u.well(desk.Go(desk.Live), desk.Call(250000), desk.RecordResult(lot.Lost))
		}},
		{"a catalogue entry", func() {
			u.well(desk.EditOwn("a finding", func(o *valuation.Own) {
				o.Currency = "USD"
				o.Findings = append(o.Findings, hidden.Finding{ID: "smell"})
			}))
		}},
	} {
		step.do()
		u.well(desk.Go(desk.Board))
		if !u.s.GuessesDue() {
			t.Errorf("%s is not looked at", step.what)
		}
		u.guessed(ids)
		if now := answers(u.s)[ids[5]].Rests; now == rests {
			t.Errorf("%s: guesses are not made anew", step.what)
		} else {
			rests = now
		}
	}
}

// A first guess that rests on its list's own value is made anew with other factors like any other bid.
func TestAFirstGuessOnTheListsValueIsValuedAnew(t *testing.T) {
	u := newUser(t)
	u.ready()
	u.enlist("Lot,Year,Make,Model,Odometer (mi),Title,Loss,Value before,Currency\n14,2019,Ostrane,Pell,61200,salvage,collision,16500,USD\n",
		"North yard")
	id := u.s.Entries[0].ID
	if !u.lot(id).Case.Unlooked() || len(u.lot(id).Case.Check()) == 0 {
		t.Fatal("the lot is no first guess on its list's value alone")
	}
	of := book.Answered{Lot: id, Revision: u.lot(id).Revision}
	if err := u.kept.NoteAnswer(t.Context(), of, valuation.Answer{Decision: "bid", WalkAway: at(1)}); err != nil {
		t.Fatal(err)
	}
	if e := u.guessed([]int64{id}).Entries; len(e) != 1 || e[0].Answer == nil || (e[0].Answer.WalkAway != nil && *e[0].Answer.WalkAway == 1) {
		t.Errorf("the answer stays %+v", e)
	}
	if a := u.s.Entries[0].Answer; a == nil || (a.WalkAway != nil && *a.WalkAway == 1) {
		t.Error("the Board shows the old answer")
	}
}

// A bid of what a lot was before is made anew for the Board: its lot was left before it was valued again, or moved to another yard.
func TestAnOldBidOnTheBoardIsMadeAnew(t *testing.T) {
	u := newUser(t)
	ids := u.add(sound("14"), sound("15"))
	guess := func() {
		t.Helper()
		if err := u.Guess(t.Context(), u.s.Factors, desk.NewWaiting(ids), func(g desk.Guesses) { u.s = u.s.Guessed(g) }); err != nil {
			t.Fatal(err)
		}
	}
	guess()
	edit := desk.EditLot("price", func(c *valuation.Case) { c.Resale.Guess.Likely, c.Resale.Guess.High = 9500, 12000 })
	was := *u.s.Entries[0].Answer.WalkAway
	u.well(desk.OpenLot(ids[0]), edit, desk.Go(desk.Board), desk.MoveLots("Lower Pans", "2026-12-11", ids[1]))
	for _, e := range u.s.Entries {
		if !desk.Unrated(e) || !e.Answer.Stale {
			t.Errorf("lot %s stays as it is: %+v", e.Number, e.Answer)
		}
	}
	if guess(); u.s.Entries[0].Answer.Stale || u.s.Entries[1].Answer.Stale {
		t.Errorf("still old: %+v", u.s.Entries)
	}
	for _, e := range u.s.Entries {
		if e.ID == ids[0] && *e.Answer.WalkAway <= was {
			t.Errorf("the bid stays %d at a higher price", *e.Answer.WalkAway)
		}
	}
}
