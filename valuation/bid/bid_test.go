package bid_test

import (
	"math"
	"sort"
	"testing"

	"github.com/shopspring/decimal"

	"walkline/valuation/bid"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("%s = %.6g, want %.6g", what, got, want)
	}
}

func usd(x int64) *money.Amount { a := money.Amount(100 * x); return &a }

func fraction(x float64) *float64 { return &x }

func fill(n int, x float64) []float64 {
	c := make([]float64, n)
	for i := range c {
		c[i] = x
	}
	return c
}

// certain is a lot sold for 10,000 with costs of 3,000, 1,000 of them own labour of 40 hours, 2,000 cash, 60 days; bids
// rise by 25 and a bid costs 500 in fees.
func certain(r bid.Rules) bid.Problem {
	cur, _ := money.Lookup("USD")
	return bid.Problem{Cost: fill(8, 3000), Days: fill(8, 60), Cash: fill(8, 2000), Hours: fill(8, 40), Labour: fill(8, 1000),
		Resale: prob.CertainTable(10000), Currency: cur, Steps: []invoice.Step{{Step: 2500}},
		Terms: invoice.Terms{Fixed: []invoice.Fixed{{Name: "fee", Amount: 50000}}, Tax: invoice.Tax{Base: "hammer"}}, Rules: r}
}

// By hand: profit = 10,000 - 3,000 - 500 - bid = 6,500 - bid; margin m: 7,000 - A >= m (3,000 + A);
// per hour: (6,500 - bid + 1,000) / 40; cash: bid + 500 + 2,000. The tie belongs to the rule that holds.
func TestEachRuleAndItsCeiling(t *testing.T) {
	for _, c := range []struct {
		name  string
		rules bid.Rules
		want  int64
	}{
		{bid.MinProfit, bid.Rules{MinProfit: usd(1500)}, 5000},
		{bid.MinProfit, bid.Rules{MinProfit: usd(1501)}, 4975},
		{bid.MinMargin, bid.Rules{MinMargin: fraction(.25)}, 4500}, // A = (7,000 - 750) / 1.25 = 5,000
		{bid.MaxLossChance, bid.Rules{MaxLossChance: fraction(.2)}, 6500},
		{bid.MaxWorstTenthLoss, bid.Rules{MaxWorstTenthLoss: usd(100)}, 6600},
		{bid.MinPerHour, bid.Rules{MinPerHour: usd(50)}, 5500},
		{bid.MaxCash, bid.Rules{MaxCash: usd(4000)}, 1500},
	} {
		p := certain(c.rules)
		a := bid.Find(&p)
		if a.Bid == nil || *a.Bid != 100*money.Amount(c.want) || a.Binding != c.name {
			t.Errorf("%s: %+v, want %d", c.name, a, c.want)
			continue
		}
		if len(a.Ceilings) != 1 || *a.Ceilings[0].Bid != *a.Bid || a.Ceilings[0].Any || a.Gap != nil {
			t.Errorf("%s: ceilings %+v, gap %v", c.name, a.Ceilings, a.Gap)
		}
		if !p.Judge(*a.Bid).Holds || p.Judge(*a.Bid+2500).Holds {
			t.Errorf("%s: holds at the bid %v, at the next %v", c.name, p.Judge(*a.Bid).Holds, p.Judge(*a.Bid+2500).Holds)
		}
	}
}

func TestTheTightestRuleBinds(t *testing.T) {
	p := certain(bid.Rules{MinProfit: usd(1500), MinPerHour: usd(50), MaxCash: usd(6000), MaxDays: fraction(60)})
	a := bid.Find(&p)
	if a.Bid == nil || *a.Bid != *usd(3500) || a.Binding != bid.MaxCash || len(a.Ceilings) != 4 {
		t.Fatalf("%+v", a)
	}
	for _, c := range a.Ceilings {
		if c.Any != (c.Rule == bid.MaxDays) {
			t.Errorf("%s holds at any bid: %v", c.Rule, c.Any)
		}
	}
}

// A rule so wide that it is as good as off (99,999,999 as "no limit") leaves the bid of the others as it is: nothing above that
// bid can hold, however many legal bids there are, and the wide rule holds at every bid that is looked at.
func TestAWideRuleIsNoReasonForDoubt(t *testing.T) {
	p := certain(bid.Rules{MinProfit: usd(1500), MaxCash: usd(99_999_999)})
	a := bid.Find(&p)
	if a.Bid == nil || *a.Bid != *usd(5000) {
		t.Errorf("%+v, want 5,000 without doubt", a)
	}
	for _, c := range a.Ceilings {
		if c.Any != (c.Rule == bid.MaxCash) {
			t.Errorf("%s holds at any bid: %v", c.Rule, c.Any)
		}
	}
	p.Rules.MaxWorstTenthLoss = usd(4000) // a bid of 10,500 is above the price, and still a ceiling
	if a := bid.Find(&p); a.Ceilings[1].Any || *a.Ceilings[1].Bid != *usd(10500) {
		t.Errorf("%+v", a.Ceilings)
	}
	p.Rules.MaxWorstTenthLoss = nil
	p.Rules.MinProfit = nil // 4 million bids of 25 reach it: 99,999,999 - 2,000 cash - 500 fees
	if a := bid.Find(&p); a.Bid == nil || *a.Bid != *usd(99_997_475) {
		t.Errorf("%+v, want 99,997,475", a)
	}
}

// Steps of a cent are as good as any: the bid stands where the rule breaks, to the cent.
func TestFineStepsHaveNoLimit(t *testing.T) {
	p := certain(bid.Rules{MinProfit: usd(1500)})
	p.Steps = []invoice.Step{{Step: 1}}
	if a := bid.Find(&p); a.Bid == nil || *a.Bid != *usd(5000) || !p.Judge(*a.Bid).Holds || p.Judge(*a.Bid+1).Holds {
		t.Errorf("%+v, want 5,000", a)
	}
}

func TestDoNotBid(t *testing.T) {
	for name, r := range map[string]bid.Rules{
		bid.MaxDays:   {MinProfit: usd(0), MaxDays: fraction(59)},
		bid.MinProfit: {MinProfit: usd(6480)},
		bid.MaxCash:   {MinProfit: usd(0), MaxCash: usd(2520)},
	} {
		p := certain(r)
		a := bid.Find(&p)
		if a.Bid != nil || a.Binding != name || a.Lowest != 2500 {
			t.Errorf("%s: %+v", name, a)
		}
		if broken := p.Judge(a.Lowest).Broken; len(broken) != 1 || broken[0] != name {
			t.Errorf("%s: broken at the lowest bid %v", name, broken)
		}
	}
}

// A fee that falls from 2,000 to 100 at 5,000, with 6,900 for the invoice: bids of 4,925 to 4,975 fail, while 6,800 passes.
func TestAGapWhereTheFeeFalls(t *testing.T) {
	p := certain(bid.Rules{MinProfit: usd(100)}) // invoice at most 6,900
	p.Terms.Fixed = nil
	p.Terms.Fees = []invoice.Schedule{{Name: "fee", Mode: "whole", Rows: []invoice.Row{{Flat: *usd(2000)},
		{From: *usd(5000), Flat: *usd(100)}}}}
	a := bid.Find(&p)
	if a.Bid == nil || *a.Bid != *usd(6800) || a.Gap == nil || a.Gap.Fails != *usd(4925) || a.Gap.Passes != *usd(6800) {
		t.Errorf("%+v, gap %+v", a, a.Gap)
	}
}

// unsure is a lot whose costs, days and price all spread. Invented.
func unsure(n int) bid.Problem {
	p := certain(bid.Rules{MaxLossChance: fraction(.2)})
	d := prob.NewDraws(n, 11)
	col := func(name string, mean, sd float64) []float64 {
		c := make([]float64, n)
		d.Column(name, c)
		for i, z := range c {
			c[i] = mean + sd*z
		}
		return c
	}
	p.Cost, p.Days = col("cost", 3000, 500), col("days", 60, 10)
	p.Cash, p.Hours, p.Labour = fill(n, 2000), fill(n, 40), fill(n, 1000)
	p.Resale = prob.NewTable([]float64{0, .1, .5, .9, 1}, []float64{7000, 8500, 10000, 11200, 14000})
	p.SellPercent, p.SellFlat, p.CapitalRate = .03, 120, .1
	return p
}

// The engine integrates the price out; here every scenario meets 400 evenly spaced prices and the profits are sorted.
func TestOddsAgreeWithADirectSample(t *testing.T) {
	const n, prices = 1024, 400
	p := unsure(n)
	bid.Find(&p)
	at := *usd(4500)
	total := p.Currency.Major(p.Terms.Total(at, p.Currency).Total)
	var profits []float64
	for i := range n {
		for k := range prices {
			r := p.Resale.Quantile((float64(k) + .5) / prices)
			profits = append(profits, r*(1-.03)-120-p.Cost[i]-total*(1+.1*p.Days[i]/365))
		}
	}
	sort.Float64s(profits)
	f := p.Judge(at)
	near(t, "mean", f.Mean, prob.Mean(profits), 2)
	near(t, "chance of a loss", f.LossChance, float64(sort.SearchFloat64s(profits, 0))/float64(len(profits)), .001)
	near(t, "worst tenth", f.WorstTenth, prob.Mean(profits[:len(profits)/10]), 4)
	for _, q := range []float64{.05, .1, .5, .9} {
		near(t, "quantile", p.Quantile(q, total), prob.Quantile(profits, q), 5)
	}
	if f.PerHour == nil {
		t.Fatal("no return per hour")
	}
	near(t, "per hour", *f.PerHour, (f.Mean+1000)/40, 1e-9)
}

// A rule that the allowance touches comes down with it, by the allowance and the capital on it: never up.
func TestAllowanceLowersTheBid(t *testing.T) {
	last := money.Amount(math.MaxInt64)
	for _, allowance := range []float64{0, 150, 400, 900} {
		p := unsure(512)
		p.Allowance = allowance
		a := bid.Find(&p)
		if a.Bid == nil || *a.Bid >= last {
			t.Errorf("allowance %g: bid %v after %d", allowance, a.Bid, last)
			continue
		}
		last = *a.Bid
	}
	for _, c := range []struct{ allowance, bid int64 }{{0, 5000}, {300, 4700}} {
		p := certain(bid.Rules{MinProfit: usd(1500)})
		p.Allowance = float64(c.allowance)
		if a := bid.Find(&p); a.Bid == nil || *a.Bid != *usd(c.bid) {
			t.Errorf("allowance %d: %+v, want %d", c.allowance, a, c.bid)
		}
	}
}

// By hand: tax of 10 % on the hammer makes A = 1.1 b + 500; profit 1,500 leaves A = 5,500, b = 4,545.45, so 4,525.
func TestTaxComesOffTheBid(t *testing.T) {
	p := certain(bid.Rules{MinProfit: usd(1500)})
	p.Terms.Tax.Rate = decimal.RequireFromString("0.1")
	if a := bid.Find(&p); a.Bid == nil || *a.Bid != *usd(4525) {
		t.Errorf("%+v", a)
	}
}

func TestBounding(t *testing.T) {
	for _, c := range []struct {
		rules bid.Rules
		want  bool
	}{
		{bid.Rules{}, false}, {bid.Rules{MaxDays: fraction(9)}, false}, {bid.Rules{MaxLossChance: fraction(1)}, false},
		{bid.Rules{MaxLossChance: fraction(.9)}, true}, {bid.Rules{MaxCash: usd(1)}, true}, {bid.Rules{MinMargin: fraction(0)}, true},
	} {
		if got := c.rules.Bounding(); got != c.want {
			t.Errorf("%+v: %v", c.rules, got)
		}
	}
}
