package valuation_test

import (
	"math"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/learn"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// demoLot is the first lot of the demo, priced by the buyer's guess alone.
func demoLot(t testing.TB) valuation.Case {
	t.Helper()
	data, err := assets.Demo("front.json")
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read(data)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	c.Resale.Comparables, c.Run.Scenarios = "", 2048
	return c
}

// every returns factors that put one ratio on everything that costs.
func every(x, logSD float64) learn.Factors {
	r := learn.Ratio{Factor: x, LogSD: logSD}
	f := learn.Factors{Hours: map[string]learn.Ratio{}, Parts: map[string]learn.Ratio{}, Materials: &r, Outside: &r, Hidden: &r}
	for _, trade := range []string{"body", "structure", "mechanical", "paint", "electrical", "trim"} {
		f.Hours[trade] = r
	}
	for _, source := range []string{"used", "new_aftermarket", "new_maker", "repaired", "made"} {
		f.Parts[source] = r
	}
	return f
}

// A ratio on the hours is that ratio on the hours of the answer, exactly, and on nothing else.
func TestFactorsOnHoursAndMoney(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	plain := value(t, c, k)
	f := every(1, 0)
	for trade := range f.Hours {
		f.Hours[trade] = learn.Ratio{Factor: 1.3}
	}
	a := value(t, c.With(f), k)
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*math.Abs(want) {
			t.Errorf("%s: %g, want %g", what, got, want)
		}
	}
	near("hours", a.Hours.Mean, 1.3*plain.Hours.Mean)
	near("your labor", a.Labour.Mean, 1.3*plain.Labour.Mean)
	near("resale", a.Resale.P50, plain.Resale.P50)
	if a.Repair.Mean-plain.Repair.Mean > a.Labour.Mean-plain.Labour.Mean+1e-6 {
		t.Error("longer hours made more than the hours dearer")
	}
	if most(a) >= most(plain) {
		t.Errorf("30 %% more hours leave the bid at %d, before %d", most(a), most(plain))
	}
	if same := value(t, c.With(every(1, 0)), k); most(same) != most(plain) {
		t.Error("ratios of 1 move the bid")
	}
}

// What builds scatter beyond their judgements widens the cost and leaves its median; the mean rises as a lognormal's.
func TestFactorsWiden(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	c.Run.Scenarios = 8192
	plain, wide := value(t, c, k), value(t, c.With(every(1, 0.3)), k)
	if ratio := wide.Hours.Mean / plain.Hours.Mean; math.Abs(ratio-math.Exp(0.045)) > 0.02 {
		t.Errorf("mean hours rise to %.3f of what they were, want about %.3f", ratio, math.Exp(0.045))
	}
	if wide.Repair.P90-wide.Repair.P10 <= plain.Repair.P90-plain.Repair.P10 {
		t.Error("the range of the repair cost does not widen")
	}
	if most(wide) > most(plain) {
		t.Error("more that is unsure raised the bid")
	}
}

// Each factor that costs more, sells lower or later, or is likelier to be hurt never raises the bid.
func TestWorseFactorsNeverRaiseTheBid(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	before := most(value(t, c, k))
	r := &learn.Ratio{Factor: 1.25}
	for name, f := range map[string]learn.Factors{
		"costs": every(1.2, 0), "used parts": {Parts: map[string]learn.Ratio{"used": {Factor: 1.5}}}, "materials": {Materials: r},
		"hidden": {Hidden: r}, "slow": {DaysToSell: &learn.Ratio{Factor: 3}}, "resale": {Resale: &learn.Bias{Factor: 0.9, Spread: 1}},
		"unsure": {Resale: &learn.Bias{Factor: 1, Spread: 1.6}}, "risk": {Risks: map[string]learn.Chance{"radiator_leak": {A: 8, B: 2}}},
		"together": {Loading: &learn.Loading{Value: 0.7}},
	} {
		if got := most(value(t, c.With(f), k)); got > before {
			t.Errorf("%s: the bid rose from %d to %d", name, before, got)
		} else if got == before && (name == "costs" || name == "resale") {
			t.Errorf("%s: the bid stays at %d", name, got)
		}
	}
}

// The resale price is moved and widened about its median, quantile by quantile.
func TestFactorsOnTheResalePrice(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	plain := value(t, c, k).Resale
	got := value(t, c.With(learn.Factors{Resale: &learn.Bias{Factor: 0.95, Spread: 1.5}}), k).Resale
	for _, q := range [][2]float64{{plain.P10, got.P10}, {plain.P50, got.P50}, {plain.P90, got.P90}} {
		if want := plain.P50 * 0.95 * math.Pow(q[0]/plain.P50, 1.5); math.Abs(q[1]-want) > 1e-3*want {
			t.Errorf("quantile %g went to %g, want %g", q[0], q[1], want)
		}
	}
}

func TestFactorsSurviveTheCaseFile(t *testing.T) {
	c := demoLot(t)
	f := every(1.1, 0.2)
	f.Risks, f.HalfLife = map[string]learn.Chance{"radiator_leak": {A: 3.5, B: 9, When: "2026-01-02", From: 4}}, 365
	f.Resale, f.Loading = &learn.Bias{Factor: 0.97, Spread: 1.1, From: 9}, &learn.Loading{Value: 0.4}
	c = c.With(f)
	back, faults := casefile.Read(casefile.Write(c))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if got := back.Factors; got == nil || got.Hours["paint"] != f.Hours["paint"] || *got.Resale != *f.Resale ||
		got.Risks["radiator_leak"] != f.Risks["radiator_leak"] || got.HalfLife != 365 {
		t.Errorf("factors came back as %+v", got)
	}
	c.Factors.Hours["body"] = learn.Ratio{Factor: 0}
	c.Factors.Hours["welding"] = learn.Ratio{Factor: 1}
	if faults := c.Check(); len(faults) != 2 {
		t.Errorf("a ratio of nothing and a trade that is none: %v", faults)
	}
}

// The prediction that is frozen says what the answer says.
func TestPredictionAgreesWithTheAnswer(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	c = c.With(every(1.1, 0.15))
	a := value(t, c, k)
	p, err := valuation.Foretell(c, k, nil)
	if err != nil {
		t.Fatal(err)
	}
	if *p.WalkAway != *a.WalkAway || p.At != *a.WalkAway || p.Factors.Hours["body"].Factor != 1.1 {
		t.Errorf("prediction at %d, walk-away %v, answer %v", p.At, p.WalkAway, a.WalkAway)
	}
	cur, _ := money.Lookup("USD")
	near := func(what string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within {
			t.Errorf("%s: %g, want %g", what, got, want)
		}
	}
	near("profit", cur.Major(p.Money.Profit(p.At)), a.Profit.Mean, 0.06)
	near("cost", cur.Major(p.Money.Repair+p.Money.Hidden+p.Money.Labour), p.Cost.Mean, 0.03)
	near("loss chance", p.LossChance, a.Profit.LossChance, 1e-12)
	near("median profit", p.Profit.Q[11], a.Profit.P50, 1e-3)
	near("allowance", p.Terms.ResaleAllow+p.Terms.CostAllow, cur.Major(p.Money.Allowance), 0.01)
	hours, cash := 0.0, 0.0
	for _, i := range p.Items {
		if i.Kind == learn.HoursKind {
			hours += i.Chance * i.Mean
		} else {
			cash += i.Chance * i.Mean
		}
	}
	widened := math.Exp(0.15 * 0.15 / 2) // the items are without what the factors add
	near("hours of the items", hours*widened, p.Hours.Mean, 0.03*p.Hours.Mean)
	near("money of the items", cash*widened, cur.Major(p.Money.Repair+p.Money.Hidden), 0.03*cash)
}

// At another hammer price, profit moves by what is paid, to the rounding of the capital cost.
func TestPredictionAtTheHammerPrice(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	p, err := valuation.Foretell(c, k, nil)
	if err != nil {
		t.Fatal(err)
	}
	paid := p.At - 50_000
	q, err := valuation.Foretell(c, k, &paid)
	if err != nil {
		t.Fatal(err)
	}
	gained := q.Money.Profit(paid) - p.Money.Profit(p.At)
	saved := 50_000 + p.Money.Fees - q.Money.Fees + p.Money.Capital - q.Money.Capital
	if gained != saved || q.At != paid || *q.WalkAway != *p.WalkAway {
		t.Errorf("paying 500.00 less gains %d, want %d", gained, saved)
	}
}

// With the items' own figures as what came, and no damage found, learning says that the forecast was right.
func TestForetoldComingTrueTeachesNothing(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	p, err := valuation.Foretell(c, k, nil)
	if err != nil {
		t.Fatal(err)
	}
	var builds []learn.Build
	for i := range 12 {
		b := learn.Build{ID: int64(i), Currency: "USD", Ending: learn.Sold, Closed: "2026-11-01", Foretold: &p}
		for _, item := range p.Items {
			if item.Risk == "" && item.Kind == learn.HoursKind {
				b.Came.Worked = append(b.Came.Worked, learn.Worked{Line: item.Line, Trade: item.Key, Hours: item.Mean})
			}
		}
		builds = append(builds, b)
	}
	now := learn.Factors{}
	for _, q := range learn.Propose(builds, "2026-11-20", now, k.Starter()) {
		if q.Unit == learn.RatioUnit {
			allowed := math.Log1p(p.Terms.CostAllow / p.Cost.Mean)
			if math.Abs(math.Log(q.Proposed.At)+allowed) > 0.06 {
				t.Errorf("%s is proposed at %.3f", q.Name, q.Proposed.At)
			}
		}
		now = learn.Apply(now, q)
	}
	if faults := c.With(now).Check(); len(faults) > 0 {
		t.Error(faults)
	}
}

func TestReplayCountsWhatItRefuses(t *testing.T) {
	k, c := shipped(t), demoLot(t)
	walk := most(value(t, c, k))
	low, high, loss := walk-10_000, walk+10_000, money.Amount(-70_000)
	m := valuation.NewMemory()
	var all []valuation.Replayed
	for _, b := range []learn.Build{{ID: 1, Ending: learn.Sold, Hammer: &low}, {ID: 2, Ending: learn.Sold, Hammer: &high},
		{ID: 3, Ending: learn.LostTo, Hammer: &low},
		{ID: 4, Ending: learn.LostTo, Hammer: &high}, {ID: 5, Ending: learn.Sold}} {
		b.Foretold = &learn.Prediction{Engine: valuation.Engine}
		r, err := m.Replay(b, &c, k, learn.Factors{})
		if err != nil {
			t.Fatal(err)
		}
		if b.ID == 2 {
			r.Profit = &loss
		}
		all = append(all, r)
	}
	s := valuation.Sum(all)
	if s.Bought != 1 || s.Refused != 1 || s.WouldBuy != 1 || s.Left != 1 || s.NotReplayed != 1 || s.LossAvoided != 70_000 ||
		s.Selection == "" {
		t.Errorf("%+v", s)
	}
	dear := every(1.6, 0.2)
	effect, err := m.Compare(c, k, learn.Factors{}, dear)
	if err != nil || effect.Moved() >= 0 || effect.Moved() != most(value(t, c.With(dear), k))-walk {
		t.Errorf("effect %+v, %v", effect, err)
	}
}

// A narrowed belief keeps its middle; a rescaled certain price stays certain.
func TestRescaling(t *testing.T) {
	three := prob.Three{Low: 0.9, Likely: 0.95, High: 1}
	if n := three.Narrowed(0.5); math.Abs(n.Low-0.925) > 1e-12 || n.Likely != 0.95 || math.Abs(n.High-0.975) > 1e-12 {
		t.Errorf("narrowed to %+v", n)
	}
	if r := prob.CertainTable(8000).Rescaled(1.1, 2); !r.Certain() || math.Abs(r.Mean()-8800) > 1e-9 {
		t.Errorf("rescaled to %g", r.Mean())
	}
}

// A case that the first engine froze is played with what was in force then: all of the shared doubt is each bidder's own, winning draws
// nothing in, no day passes before the sale and nobody stops; a later one with what it holds.
func TestAFrozenCaseIsPlayedWithWhatWasInForce(t *testing.T) {
	c := doubtful(1, bid.Rules{MinProfit: usd(1500)})
	c.Run.Scenarios = 1024
	hammer := money.Amount(100000)
	replayed := func(engine string) money.Amount {
		r, err := valuation.NewMemory().Replay(learn.Build{Hammer: &hammer, Foretold: &learn.Prediction{Engine: engine}}, &c,
			valuation.Knowledge{}, learn.Factors{})
		if err != nil || r.Now == nil {
			t.Fatal(err, r)
		}
		return *r.Now
	}
	today := most(value(t, c, valuation.Knowledge{}))
	before := c.Clone()
	before.WaysOut, before.Resale.YearlyChange = valuation.WaysOut{}, &prob.Three{}
	before.Market.OwnShare, before.Market.Narrowing = 1, false
	if then := most(value(t, before, valuation.Knowledge{})); replayed(valuation.FirstEngine) != then ||
		replayed(valuation.Engine) != today || then == today {
		t.Errorf("first engine %d, then %d; today's %d, today %d", replayed(valuation.FirstEngine), then, replayed(valuation.Engine), today)
	}
}
