package valuation_test

import (
	"math"
	"testing"

	"walkline/valuation"
	"walkline/valuation/checks"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// oneLook is the uncertain case with one more risk that one look tells of, and a guess of the hammer price.
func oneLook() (valuation.Case, hidden.Risk) {
	c := small(1)
	c.Rules = lossRule()
	c.Rules.MaxLossChance = nil
	c.Run.Scenarios = 16384
	c.Time.CapitalRate = 0
	none := 0.0
	r := hidden.Risk{ID: "gear", Name: "Transmission broken", Chance: hidden.Beta{A: 3, B: 7}, Loading: &none,
		Cost:     prob.Three{Low: 400, Likely: 900, High: 2000},
		Findings: []hidden.Evidence{{Finding: "case_wet", IfPresent: .8, IfAbsent: .15}}}
	c.Hidden.Risks = append(c.Hidden.Risks, r)
	return c, r
}

func worthOf(a valuation.Answer, id string) *float64 {
	for _, i := range a.Checklist {
		if i.ID == id {
			return i.Worth
		}
	}
	return nil
}

// The worth of a look against three valuations of the whole case: as it is, after "yes", and after "no". The surplus of
// each is summed by its own arithmetic from the profit at the lowest bid, which moves one for one with the money out.
func TestWorthOfALookAgainstWholeValuations(t *testing.T) {
	c, r := oneLook()
	at := *value(t, c, valuation.Knowledge{}).WalkAway
	mid := float64(at) / 100
	c.Market.HammerGuess = &prob.Three{Low: mid - 600, Likely: mid - 100, High: mid + 700}
	now := value(t, c, valuation.Knowledge{})
	after := map[string]float64{}
	for _, word := range []string{"yes", "no", ""} {
		d := c.Clone()
		if word != "" {
			d.Findings = map[string]string{"case_wet": word}
		}
		after[word] = kept(t, d)
	}
	yes := r.Chance.Mean()*.8 + (1-r.Chance.Mean())*.15
	want := yes*after["yes"] + (1-yes)*after["no"] - after[""]
	got := worthOf(now, "case_wet")
	if got == nil || math.Abs(*got-want) > .03*want+1 || want < 5 {
		t.Errorf("worth %v, by whole valuations %g", got, want)
	}
	if now.Looks.Basis != checks.Guess || *now.Looks.Perfect < *got {
		t.Errorf("%+v", now.Looks)
	}
}

// kept returns the mean of what is kept over the guess of the hammer price when every lot is bought that leaves the
// least profit.
func kept(t *testing.T, c valuation.Case) float64 {
	t.Helper()
	cur, _ := money.Lookup(c.Currency)
	a := value(t, c, valuation.Knowledge{})
	low := a.Ladder[0]
	most := low.MeanProfit - cur.Major(*c.Rules.MinProfit) + cur.Major(low.Acquisition)
	const n = 4000
	sum := 0.0
	for i := range n {
		h := c.Market.HammerGuess.Quantile((float64(i) + .5) / n)
		sum += max(0, most-cur.Major(c.Buying.Total(cur.FromMajor(h), cur).Total)) / n
	}
	return sum
}

func TestWithoutAGuessAStandInIsNamed(t *testing.T) {
	c, _ := oneLook()
	a := value(t, c, valuation.Knowledge{})
	if w := worthOf(a, "case_wet"); a.Looks.Basis != checks.StandIn || w == nil || *w <= 0 {
		t.Errorf("%+v, worth %v", a.Looks, w)
	}
	c.Rules.MinProfit = usd(900000)
	if a := value(t, c, valuation.Knowledge{}); a.WalkAway != nil || a.Looks.Basis != checks.NoBasis || worthOf(a, "case_wet") != nil {
		t.Errorf("no bid and no guess: %+v", a.Looks)
	}
	c, _ = oneLook()
	c.Lot.Title = lot.Title{Document: "junk"}
	if a := value(t, c, valuation.Knowledge{}); a.Looks.Basis != checks.NoBasis || worthOf(a, "case_wet") != nil {
		t.Errorf("a stop stands: %+v", a.Looks)
	}
}

// Properties of the whole list, over two surveys and several guesses of the hammer price: no look is worth less than
// nothing or more than knowing everything, the order is that of value per minute, no round is worth less than its best look,
// and where the hammer price is out of the bid's reach either way, no look is worth anything.
func TestTheListKeepsItsProperties(t *testing.T) {
	k := shipped(t)
	for _, area := range []string{"12", "03"} {
		c := small(1)
		c.Hidden.UseCatalogue, c.Rules = true, lossRule()
		c.Damage = []lot.Damage{{Area: area, Extent: "disabling", Depth: "structure"}}
		for _, likely := range []float64{300, 1500, 3000, 9000} {
			c.Market.HammerGuess = &prob.Three{Low: .7 * likely, Likely: likely, High: 1.5 * likely}
			inOrder(t, value(t, c, k))
		}
	}
	c, _ := oneLook()
	for _, out := range []float64{1, 1e6} {
		c.Market.HammerGuess = &prob.Three{Low: out, Likely: out, High: out}
		if w := worthOf(value(t, c, valuation.Knowledge{}), "case_wet"); w == nil || *w != 0 {
			t.Errorf("hammer at %g: %v", out, w)
		}
	}
}

// inOrder checks the properties of one answer's looks.
func inOrder(t *testing.T, a valuation.Answer) {
	t.Helper()
	last, single := math.Inf(1), map[string]float64{}
	for _, i := range a.Checklist {
		if i.Worth == nil {
			continue
		}
		single[i.ID] = *i.Worth
		if *i.Worth < 0 || *i.Worth > *a.Looks.Perfect*1.02+1 || *i.Worth/i.Minutes > last+1e-9 {
			t.Errorf("%s worth %g of %g in %g minutes, after %g a minute", i.ID, *i.Worth, *a.Looks.Perfect, i.Minutes, last)
		}
		last = *i.Worth / i.Minutes
	}
	for _, r := range a.Looks.Best {
		for _, id := range r.Looks {
			if r.Worth < single[id] || r.Spent > r.Minutes {
				t.Errorf("round %+v, %s alone %g", r, id, single[id])
			}
		}
	}
}
