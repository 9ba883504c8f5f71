package assets_test

import (
	"testing"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// bidOn returns the walk-away bid on a lot with one risk and answers to its looks; the price is certain, the bid is counted in cents.
func bidOn(t *testing.T, r hidden.Risk, answers map[string]string) money.Amount {
	t.Helper()
	c, least := valuation.Defaults(), money.Amount(0)
	c.Currency, c.ValuedOn, c.Run.Scenarios, c.Run.WinnersAllowance = "USD", "2026-11-20", 256, false
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue = false, false
	c.Lot.ModelYear, c.Lot.Title.Document = 2019, "salvage"
	c.Labour.Rates = map[string]float64{}
	for _, trade := range lot.Trades {
		c.Labour.Rates[trade] = ownHour
	}
	c.Resale.Guess = &prob.Three{Low: 79000, Likely: 80000, High: 81000}
	c.Buying.BidSteps, c.Rules.MinProfit = []invoice.Step{{From: 0, Step: 1}}, &least
	c.Hidden.Risks, c.Findings = []hidden.Risk{r}, answers
	a, err := valuation.Value(c, valuation.Knowledge{})
	if err != nil || a.WalkAway == nil {
		t.Fatalf("%s, %v: %v, %v", r.ID, answers, err, a.Reasons)
	}
	return *a.WalkAway
}

// Every finding moves the bid the right way for every risk that it tells of: a yes speaks for trouble and never raises it, a no never
// lowers it, and between them lies what was bid before anybody looked.
func TestEveryFindingMovesTheBidTheRightWay(t *testing.T) {
	told := 0
	for _, e := range risks(t).Risks {
		before := bidOn(t, e.Risk, nil)
		for _, f := range e.Findings {
			yes, no := bidOn(t, e.Risk, map[string]string{f.Finding: "yes"}), bidOn(t, e.Risk, map[string]string{f.Finding: "no"})
			if yes > before || no < before || yes == no {
				t.Errorf("%s tells of %s: the bid is %d after yes, %d before, %d after no", f.Finding, e.ID, yes, before, no)
			}
			told++
		}
		if chance := e.Chance.Mean(); chance <= 0 || chance >= 1 {
			t.Errorf("%s has the chance %v", e.ID, chance)
		}
	}
	if told < 200 {
		t.Errorf("only %d findings tell of a risk", told)
	}
}

// On whole lots, where one finding tells of several risks and these bring work along, an answer moves the bid the same way: all risks of
// the lot together, under the least profit alone and at a certain price, so that nothing but the damage is told.
func TestEveryFindingMovesTheBidOfAWholeLotTheRightWay(t *testing.T) {
	asked := map[string]bool{}
	for _, name := range wreckNames(t) {
		c, k, memory := wreck(t, name), starter(t), valuation.NewMemory()
		least := money.Amount(0)
		c.Rules, c.Run.Scenarios, c.Run.WinnersAllowance = bid.Rules{MinProfit: &least}, 512, false
		c.Resale, c.WaysOut = valuation.Resale{Guess: &prob.Three{Low: 79000, Likely: 80000, High: 81000}}, valuation.WaysOut{}
		value := func(answers map[string]string) valuation.Answer {
			c.Findings = answers
			a, err := memory.Value(c, k)
			if err != nil || a.WalkAway == nil {
				t.Fatalf("%s, %v: %v, %v", name, answers, err, a.Reasons)
			}
			return a
		}
		a := value(nil)
		for _, item := range a.Checklist {
			if asked[item.ID] {
				continue
			}
			asked[item.ID] = true
			before, yes, no := *a.WalkAway, *value(map[string]string{item.ID: "yes"}).WalkAway, *value(map[string]string{item.ID: "no"}).WalkAway
			if yes > before || no < before {
				t.Errorf("%s: %s moves the bid from %d to %d by yes, to %d by no", name, item.ID, before, yes, no)
			}
		}
	}
	if len(asked) < 90 {
		t.Errorf("only %d findings were asked", len(asked))
	}
}
