package valuation_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

// twoStates is a lot that brings 10,000 for certain and needs 1,000 of work; half of such lots have 12,000 of damage behind the
// skin. As it stands it brings 3,000. Nothing else costs anything, but for the strip-down's hours. Invented.
func twoStates(stripHours float64, rules bid.Rules) valuation.Case {
	c := valuation.Defaults()
	c.Currency, c.ValuedOn = "USD", "2026-11-20"
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue, c.Run.WinnersAllowance = false, false, false
	c.Hidden.SharedLoading = 0
	c.Resale.Guess = &prob.Three{Low: 10000, Likely: 10000, High: 10000}
	c.Repair.Lines = uncertain(1, rules).Repair.Lines[:1]
	c.Repair.Lines[0].Parts, c.Repair.Lines[0].Hours, c.Repair.Lines[0].Materials = nil, map[string]prob.Three{"body": prob.Certain(10)},
		prob.Certain(800)
	c.Hidden.Risks = []hidden.Risk{{ID: "h", Name: "frame", Chance: hidden.Beta{A: 1, B: 1}, Cost: prob.Certain(12000)}}
	c.Labour.Rates = map[string]float64{"body": 20}
	c.Buying.BidSteps = uncertain(1, rules).Buying.BidSteps[:1]
	c.WaysOut.Strip.Hours = prob.Certain(stripHours)
	money := prob.Certain(3000)
	c.WaysOut.AsItStands.Money = &money
	c.Rules = rules
	return c
}

// By hand: going on leaves 9,000 or -3,000, 3,000 on average; stopping leaves 3,000 less 5 hours of the strip-down at 20. With the
// choice the mean is (9,000 + 2,900) / 2 = 5,950 less the bid, and a profit of 1,500 is had up to 4,450; without it up to 1,500;
// as it stands up to 1,500. A quarter of the bids that rivals may stop at lies below 4,450 of an even guess from 4,000 to 5,800.
func TestTwoStatesByHand(t *testing.T) {
	c := twoStates(5, bid.Rules{MinProfit: usd(1500)})
	c.Market.HammerGuess = &prob.Three{Low: 4000, Likely: 4900, High: 5800}
	a := value(t, c, valuation.Knowledge{})
	if a.Plan != valuation.Rebuild || most(a) != *usd(4450) || *a.Plans[valuation.AsItStands] != *usd(1500) || a.WayOutWorth != *usd(2950) ||
		a.StopWay != valuation.AsItStands {
		t.Errorf("plan %s, bid %d, plans %v, worth %d, way %s", a.Plan, most(a), a.Plans, a.WayOutWorth, a.StopWay)
	}
	if math.Abs(a.StopChance-.5) > 1e-9 || a.StopLine == nil || math.Abs(*a.StopLine-7000) > 1e-6 {
		t.Errorf("stops %v at %v", a.StopChance, a.StopLine)
	}
	chance, gain := 0.0, 0.0
	for b := 4000.0; b <= 4450; b += 25 { // P(hammer in the step) from the density of the beta, by the midpoint rule
		for i := range 50 {
			x := (b - 25 + (float64(i)+.5)/2 - 4000) / 1800
			if x > 0 {
				p := 30 * x * x * (1 - x) * (1 - x) / 1800 / 2 // the even PERT is a beta (3, 3)
				chance, gain = chance+p, gain+p*(5950-b)
			}
		}
	}
	if math.Abs(*a.WinChance-chance) > 1e-4 || math.Abs(*a.ExpectedGain-gain) > .5 {
		t.Errorf("wins %.5f, gain %.2f; by hand %.5f, %.2f", *a.WinChance, *a.ExpectedGain, chance, gain)
	}
	for _, bar := range a.Waterfall {
		if bar.Name == "Option to stop" && bar.Amount != *usd(2950) {
			t.Errorf("the option to stop brings %d", bar.Amount)
		}
	}
	c.WaysOut.Stop = false
	if off := value(t, c, valuation.Knowledge{}); most(off) != *usd(1500) || off.StopLine != nil || off.WayOutWorth != 0 {
		t.Errorf("with the option off %d, %v", most(off), off.StopLine)
	}
}

// A stop trades a gamble for a small sure loss, so it may worsen a rule on losses: then none is planned, and both figures are said. A way
// never lowers the bid.
func TestAWayOutNeverLowersTheBid(t *testing.T) {
	kept, helped := 0, 0
	for n := range 40 {
		rng := rand.New(rand.NewPCG(uint64(n), 8))
		c := doubtful(int64(n), lossRule())
		c.Run.Scenarios, c.Run.WinnersAllowance = 512, n%2 == 0
		stands := prob.Certain(500 + 6000*rng.Float64())
		c.WaysOut.AsItStands.Money, c.WaysOut.ForParts.Money = &stands, nil
		c.WaysOut.Plans = []string{valuation.Rebuild}
		with := value(t, c, valuation.Knowledge{})
		c.WaysOut.Stop = false
		without := value(t, c, valuation.Knowledge{})
		if slices.ContainsFunc(with.Warnings, func(w string) bool { return strings.HasPrefix(w, "No stop is planned") }) {
			kept++
		} else if with.WayOutWorth > 0 {
			helped++
		}
		if most(with) < most(without) || with.WayOutWorth != most(with)-most(without) {
			t.Errorf("lot %d: %d with a way out, %d without, worth %d", n, most(with), most(without), with.WayOutWorth)
		}
	}
	t.Logf("a way out helped %d lots, and was not planned for %d", helped, kept)
	if helped < 5 || kept < 1 {
		t.Errorf("the lots are too much alike: helped %d, not planned %d", helped, kept)
	}
}

// A way that is never taken is worth nothing and changes no figure but its own; where finishing is never worth it and the strip-down
// costs nothing, the rebuild's bid is the way's own.
func TestWaysThatAreNeverOrAlwaysTaken(t *testing.T) {
	c := doubtful(3, lossRule())
	c.WaysOut.ForParts.Money, c.WaysOut.Plans = nil, []string{valuation.Rebuild}
	nothing := prob.Certain(0)
	c.WaysOut.AsItStands = valuation.Standing{Money: &nothing, Days: prob.Certain(900)}
	a := value(t, c, valuation.Knowledge{})
	c.WaysOut = valuation.Defaults().WaysOut
	if plain := value(t, c, valuation.Knowledge{}); a.WayOutWorth != 0 || a.StopChance != 0 || most(a) != most(plain) ||
		a.Profit.Mean != plain.Profit.Mean {
		t.Errorf("worth %d, stops %g, bid %d, without a way %d", a.WayOutWorth, a.StopChance, most(a), most(plain))
	}
	for _, allowance := range []bool{false, true} {
		c = doubtful(3, bid.Rules{MinProfit: usd(700), MaxWorstTenthLoss: usd(300)})
		c.Run.WinnersAllowance, c.WaysOut.Strip = allowance, valuation.Strip{}
		c.Repair.Lines[0].Outside = prob.Certain(30000)
		a = value(t, c, valuation.Knowledge{})
		if own, rebuilt := a.Plans[valuation.AsItStands], a.Plans[valuation.Rebuild]; own == nil || rebuilt == nil || *own != *rebuilt ||
			a.StopChance < 1-1e-9 {
			t.Errorf("as it stands %v, rebuild %v, stops %g", show(own), show(rebuilt), a.StopChance)
		}
	}
}

// More spread of the damage at the same mean and chance raises what a way out is worth.
func TestMoreHiddenVarianceRaisesTheWorthOfAWayOut(t *testing.T) {
	last := money.Amount(-1)
	for _, half := range []float64{500, 3000, 5500} {
		c := doubtful(2, bid.Rules{MinProfit: usd(500)})
		c.Hidden.Risks[1].Loading = nil
		c.Hidden.SharedLoading = .8 // by the factor the amount is known at the strip-down
		c.Hidden.Risks[1].Cost = prob.Three{Low: 6000 - half, Likely: 6000, High: 6000 + half}
		c.WaysOut.Plans = []string{valuation.Rebuild}
		worth := value(t, c, valuation.Knowledge{}).WayOutWorth
		if worth <= last {
			t.Errorf("half width %g: worth %d, narrower %d", half, worth, last)
		}
		last = worth
	}
}

// A title that forbids the road leaves the plan for parts, with its caution; with that plan off it is "do not bid".
func TestATitleThatForbidsTheRoadLeavesThePartsPlan(t *testing.T) {
	c := doubtful(1, bid.Rules{MinProfit: usd(300)})
	c.Lot.Title.Document = "junk"
	c.WaysOut.Plans = []string{valuation.Rebuild, valuation.ForParts}
	a := value(t, c, valuation.Knowledge{})
	if a.Plan != valuation.ForParts || a.WalkAway == nil || a.Plans[valuation.Rebuild] != nil {
		t.Fatalf("plan %s, bid %v, %v", a.Plan, a.WalkAway, a.Reasons)
	}
	if said := strings.Join(a.Reasons, " "); !strings.Contains(said, "may need a license") || a.StopLine != nil || a.StopChance != 0 {
		t.Errorf("a rebuild that is stopped has a stop line %v, or the caution is missing: %s", a.StopLine, said)
	}
	c.WaysOut.Plans = []string{valuation.Rebuild}
	if a = value(t, c, valuation.Knowledge{}); a.WalkAway != nil || a.BindingRule != valuation.Stopped {
		t.Errorf("bid %v, %s", a.WalkAway, a.BindingRule)
	}
}

// An hour a week instead of thirty lowers the bid though neither days nor money cost anything: the price falls meanwhile. Growing older
// is what a year takes over the mean days, within what their spread bends.
func TestPriceOnTheDayOfSale(t *testing.T) {
	c := small(1)
	c.Time.HoldingPerDay, c.Time.CapitalRate = 0, 0
	c.Resale.YearlyChange = &prob.Three{Low: -.12, Likely: -.1, High: -.07}
	a := value(t, c, valuation.Knowledge{})
	c.Time.HoursPerWeek = 1
	if slow := value(t, c, valuation.Knowledge{}); most(slow) >= most(a) {
		t.Errorf("an hour a week bids %d, twelve %d", most(slow), most(a))
	}
	grown, price := float64(bar(t, a, "Growing older"))/100, a.Resale.Mean
	if want := price * (math.Pow(1+c.Resale.YearlyChange.Mean(), a.Days.Mean/365) - 1); math.Abs(grown-want) > .01*math.Abs(want) {
		t.Errorf("growing older %.2f, want about %.2f", grown, want)
	}
	c.Time.HoursPerWeek, c.Resale.YearlyChange = 12, &prob.Three{}
	if still := value(t, c, valuation.Knowledge{}); bar(t, still, "Growing older") != 0 || most(still) <= most(a) {
		t.Errorf("still: %d, bid %d", bar(t, still, "Growing older"), most(still))
	}
	c.Resale.Season = []float64{1, 1, 1.1, 1.1, 1.1, 1.1, 1, 1, 1, 1, 1, 1} // valued in November, sold in spring
	c.Lot.SaleDate = "2027-02-20"
	if spring := value(t, c, valuation.Knowledge{}); bar(t, spring, "Growing older") <= 0 {
		t.Errorf("in spring %d", bar(t, spring, "Growing older"))
	}
}

// By hand, with certain costs and a bare guess: half of the price's variance is level, s = sd sqrt(1/2) (1 - selling), and of it a bidder's
// own error is k; the allowance is c(n) k s. Winning leaves L = 1 - k^2 (1 - v(n)) of the level's half.
// Source: Milgrom and Weber 1982; c(5) by the order statistics' quadrature, v(5) = 0.299755.
func TestAllowanceAndNarrowingByHand(t *testing.T) {
	c := twoStates(0, bid.Rules{MinProfit: usd(0)})
	c.Hidden.Risks, c.WaysOut = nil, valuation.Defaults().WaysOut
	c.Resale.Guess = &prob.Three{Low: 8000, Likely: 10000, High: 12000}
	c.Selling.Percent, c.Resale.YearlyChange = .1, &prob.Three{}
	table := resale.Fit(nil, resale.Subject{}, resale.Beliefs{Guess: c.Resale.Guess, Today: c.ValuedOn,
		Currency: money.Currency{Code: "USD", Digits: 2}}, prior(t)).Distribution()
	sd := table.SD()
	off := value(t, c, valuation.Knowledge{})
	width := off.Profit.P90 - off.Profit.P10
	c.Run.WinnersAllowance, c.Market.Rivals = true, others(4)
	for _, x := range []struct {
		k      float64
		narrow bool
	}{{.5, true}, {1, true}, {1, false}, {0, true}} {
		c.Market.OwnShare, c.Market.Narrowing = x.k, x.narrow
		a := value(t, c, valuation.Knowledge{})
		want := prob.WinnersConstant(5) * x.k * sd * math.Sqrt(.5) * .9
		if got := -float64(bar(t, a, "Winner's allowance")) / 100; math.Abs(got-want) > .01 {
			t.Errorf("%+v: allowance %.2f, want %.2f", x, got, want)
		}
		left := 1.0
		if x.narrow {
			left = 1 - x.k*x.k*(1-.299755)
		}
		if got := (a.Profit.P90 - a.Profit.P10) / width; math.Abs(got-math.Sqrt(1-(1-left)/2)) > .002 {
			t.Errorf("%+v: spread %.4f, want %.4f", x, got, math.Sqrt(1-(1-left)/2))
		}
	}
	c.Market.OwnShare, c.Market.Narrowing, c.Market.Rivals = .5, true, nil
	unknown := value(t, c, valuation.Knowledge{})
	c.Market.Rivals = others(4)
	if known := value(t, c, valuation.Knowledge{}); most(unknown) != most(known) || len(unknown.Warnings) != len(known.Warnings)+1 {
		t.Errorf("rivals unknown: %d, four: %d; warnings %q", most(unknown), most(known), unknown.Warnings)
	}
}
