package valuation_test

import (
	"math"
	"testing"

	"walkline/valuation"
	"walkline/valuation/hammer"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/patterns"
	"walkline/valuation/prob"
)

// listed is the demo lot as a run list has it: nobody has looked.
func listed(t testing.TB) valuation.Case {
	t.Helper()
	c := demoLot(t)
	c.Damage, c.Findings, c.Repair.Lines, c.Hidden.Risks, c.Survey, c.Lot.Airbags = nil, nil, nil, nil, nil, nil
	c.Lot.Loss, c.Lot.Condition, c.Lot.Keys = []string{"collision"}, "unknown", nil
	c.Resale.Rows, c.Resale.Guess = nil, &prob.Three{Low: 13000, Likely: 16000, High: 18000}
	c.Market.HammerGuess = &prob.Three{Low: 1500, Likely: 3500, High: 6500}
	return c
}

// guessed values a lot and stops the test where that is no first guess.
func guessed(t *testing.T, g *valuation.Guesser, c valuation.Case) valuation.Answer {
	t.Helper()
	a, err := g.Value(c)
	if err != nil || a.FirstGuess == nil {
		t.Fatalf("%v, first guess %v", err, a.FirstGuess)
	}
	return a
}

// walkOf is a walk-away bid in minor units, nothing where there is none.
func walkOf(b *money.Amount) money.Amount {
	if b == nil {
		return 0
	}
	return *b
}

// One survey that is certain gives what a valuation of that survey gives, and is still called a first guess.
func TestOneCertainSurveyIsAValuation(t *testing.T) {
	k, c := shipped(t), listed(t)
	g := valuation.NewGuesser(k)
	for _, at := range []int{0, 60, 200} {
		p := patterns.Likely(patterns.Row{Loss: c.Lot.Loss, Age: 4}, patterns.Counts{})[at]
		p.Chance = 1
		a, err := g.Over(c, []patterns.Pattern{p})
		if err != nil || a.FirstGuess == nil || len(a.FirstGuess.Patterns) != 1 || *a.FirstGuess.LookGain != 0 {
			t.Fatalf("%s: %v, %+v", p.Words, err, a.FirstGuess)
		}
		plain := c
		plain.Damage, plain.Lot.Loss, plain.Lot.Airbags, plain.Survey = p.Damage, p.Loss, p.Airbags, p.Survey
		plain.Lot.Condition, plain.Lot.Keys = p.Condition, &p.Keys
		want := value(t, plain, k)
		if walkOf(a.WalkAway) != walkOf(want.WalkAway) || a.Profit.Mean != want.Profit.Mean || a.Repair.Mean != want.Repair.Mean ||
			want.FirstGuess != nil {
			t.Errorf("%s: %v, %g instead of %v, %g", p.Words, a.WalkAway, a.Profit.Mean, want.WalkAway, want.Profit.Mean)
		}
	}
}

// The scenarios of two surveys are one problem: its mean repair is the mean of theirs, and at a rule on the expected profit alone its
// bid lies between theirs, by as much as the mean of what each leaves.
func TestSurveysAreOneProblem(t *testing.T) {
	k, c := shipped(t), listed(t)
	least := money.Amount(100_000)
	c.Rules = valuation.Case{}.Rules
	c.Rules.MinProfit = &least
	c.Run.WinnersAllowance = false
	g := valuation.NewGuesser(k)
	all := patterns.Likely(patterns.Row{Loss: c.Lot.Loss, Condition: "starts", Age: 4}, patterns.Counts{})
	light, heavy := all[3], all[len(all)/2]
	light.Chance, heavy.Chance = .75, .25
	both, err := g.Over(c, []patterns.Pattern{light, heavy})
	if err != nil {
		t.Fatal(err)
	}
	light.Chance, heavy.Chance = 1, 1
	a, _ := g.Over(c, []patterns.Pattern{light})
	b, _ := g.Over(c, []patterns.Pattern{heavy})
	want := .75*a.Repair.Mean + .25*b.Repair.Mean
	if math.Abs(both.Repair.Mean-want) > .02*want {
		t.Errorf("mean repair %.0f, want %.0f", both.Repair.Mean, want)
	}
	bid := .75*float64(walkOf(a.WalkAway)) + .25*float64(walkOf(b.WalkAway))
	if x := float64(walkOf(both.WalkAway)); math.Abs(x-bid) > .03*bid {
		t.Errorf("bids %.0f, want about %.0f", x, bid)
	}
}

// A row that says less never raises the bid beyond what the best of the rows that say more gives; and knowing the survey is never worth
// less than nothing (expected value of information, Raiffa and Schlaifer 1961, from memory).
func TestSilenceNeverRaisesAFirstGuess(t *testing.T) {
	k := shipped(t)
	g := valuation.NewGuesser(k)
	for _, loss := range [][]string{nil, {"collision"}, {"flood"}, {"theft"}} {
		c := listed(t)
		c.Lot.Loss = loss
		vague := guessed(t, g, c)
		if gain := *vague.FirstGuess.LookGain; gain < 0 || vague.FirstGuess.Patterns == nil {
			t.Errorf("%v: a look is worth %g", loss, gain)
		}
		best := money.Amount(0)
		for _, state := range lot.Conditions[:4] {
			for _, keys := range []bool{true, false} {
				exact := c
				exact.Lot.Condition, exact.Lot.Keys = state, &keys
				best = max(best, walkOf(guessed(t, g, exact).WalkAway))
			}
		}
		if walkOf(vague.WalkAway) > best {
			t.Errorf("%v: nothing said bids %v, the best that can be said %v", loss, walkOf(vague.WalkAway), best)
		}
	}
}

// An empty survey is not "no damage": the guess expects work, and bids less than for the same lot where none was seen.
func TestAnEmptySurveyIsNotNoDamage(t *testing.T) {
	k, c := shipped(t), listed(t)
	a := guessed(t, valuation.NewGuesser(k), c)
	c.Findings = map[string]string{valuation.NothingSeen: "no"}
	none := value(t, c, k)
	if none.FirstGuess != nil || !(a.Repair.Mean > none.Repair.Mean) || walkOf(a.WalkAway) >= walkOf(none.WalkAway) {
		t.Errorf("guess: repair %.0f, bid %v; no damage seen: %.0f, %v", a.Repair.Mean, walkOf(a.WalkAway), none.Repair.Mean,
			walkOf(none.WalkAway))
	}
}

// A guesser answers as Value does, to the bit, whatever it valued before.
func TestAGuesserChangesNothing(t *testing.T) {
	k, c := shipped(t), listed(t)
	g := valuation.NewGuesser(k)
	for _, state := range []string{"unknown", "drives", "unknown"} {
		c.Lot.Condition = state
		a, plain := guessed(t, g, c), value(t, c, k)
		if walkOf(a.WalkAway) != walkOf(plain.WalkAway) || a.Profit.Mean != plain.Profit.Mean || a.Hidden.Mean != plain.Hidden.Mean {
			t.Errorf("%s: %v, %g and %v, %g", state, a.WalkAway, a.Profit.Mean, plain.WalkAway, plain.Profit.Mean)
		}
	}
}

// BenchmarkFirstGuess guesses lots of a list as "walk rank" does; lots/s is what counts: a thousand in ten seconds are 100.
func BenchmarkFirstGuess(b *testing.B) {
	c, k := listed(b), shipped(b)
	c.Run.Scenarios, c.Market.HammerGuess = valuation.ListScenarios, nil
	model := hammer.Starter()
	k.Hammer = &model
	g := valuation.NewGuesser(k)
	for i := 0; b.Loop(); i++ {
		c.Lot.ModelYear, c.Lot.Condition = 2010+i%12, lot.Conditions[i%5]
		c.Lot.Loss = []string{[]string{"collision", "flood", "theft"}[i%3]}
		c.Resale.Guess.Likely++
		if _, err := g.Value(c); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "lots/s")
}

// Whoever has looked bids more where the lot is sound. So a bid on results is no higher than one on a guess of the price that tells nothing
// of the damage, whatever wrecked the lot, and lower for most; what it is expected to bring is never a loss: the winner's curse against
// informed rivals (Milgrom and Weber 1982, from memory).
func TestAFirstGuessFearsThoseWhoHaveLooked(t *testing.T) {
	causes, lower := []string{"collision", "flood", "theft", "vandalism", "hail", "mechanical", "fire"}, 0
	for _, loss := range causes {
		c, k := listed(t), shipped(t)
		c.Run.WinnersAllowance = false
		least := money.Amount(40_000)
		c.Rules = valuation.Case{}.Rules
		c.Rules.MinProfit = &least
		c.Market.HammerGuess = nil
		c.Lot.Loss = []string{loss}
		model := hammer.Starter()
		unaware := guessed(t, valuation.NewGuesser(k), c)
		k.Hammer = &model
		aware := guessed(t, valuation.NewGuesser(k), c)
		if unaware.WalkAway == nil || walkOf(aware.WalkAway) > walkOf(unaware.WalkAway) {
			t.Errorf("%s: bids %v, and %v where nobody knows what others see", loss, walkOf(aware.WalkAway), walkOf(unaware.WalkAway))
		}
		if walkOf(aware.WalkAway) < walkOf(unaware.WalkAway) {
			lower++
		}
		if aware.WalkAway != nil && !(*aware.ExpectedGain > 0) {
			t.Errorf("%s: a bid of %v is expected to bring %g", loss, *aware.WalkAway, *aware.ExpectedGain)
		}
	}
	if 2*lower <= len(causes) {
		t.Errorf("of %d causes, those who have looked are feared with %d", len(causes), lower)
	}
}

// That a part is gone from a burnt lot tells nothing of the fire: the lot stays one that nobody has looked at, and no bid rises by it.
// Common practice, no source: what nobody has answered is not known.
func TestAnAnswerBesideTheCauseIsNoLook(t *testing.T) {
	for loss, told := range map[string]lot.Survey{"fire": {Fire: &lot.Fire{Where: []string{"engine"}, Reach: lot.FireReaches[0]}},
		"flood": {Water: &lot.Water{Height: lot.WaterHeights[0]}}, "hail": {Hail: &lot.Hail{Count: lot.HailCounts[0], Size: lot.HailSizes[0]}},
		"mechanical": {Causes: lot.Causes[:1]}, "collision": {}} {
		c := listed(t)
		c.Lot.Loss = []string{loss}
		g := valuation.NewGuesser(shipped(t))
		before := guessed(t, g, c)
		c.Survey = &lot.Survey{Missing: []string{"catalytic_converter"}}
		if after := guessed(t, g, c); walkOf(after.WalkAway) > walkOf(before.WalkAway) || after.Repair.Mean+after.Hidden.Mean <
			before.Repair.Mean+before.Hidden.Mean {
			t.Errorf("%s: bid %v, with a part gone %v; work %v, then %v", loss, walkOf(before.WalkAway), walkOf(after.WalkAway),
				before.Repair.Mean+before.Hidden.Mean, after.Repair.Mean+after.Hidden.Mean)
		}
		if c.Survey = &told; told.Hurt() && c.Unlooked() {
			t.Errorf("%s: what the survey says of it is no look", loss)
		}
	}
}
