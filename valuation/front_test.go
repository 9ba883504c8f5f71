package valuation_test

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// shipped reads the catalogues and the prior that the program ships.
func shipped(t testing.TB) valuation.Knowledge {
	t.Helper()
	k, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return k
}

// lossRule is one rule that the whole distribution moves.
func lossRule() bid.Rules {
	most := .2
	return bid.Rules{MaxLossChance: &most, MinProfit: usd(900)}
}

// small is the uncertain case with few scenarios.
func small(seed int64) valuation.Case {
	c := uncertain(seed, lossRule())
	c.Run.Scenarios = 512
	return c
}

func value(t *testing.T, c valuation.Case, k valuation.Knowledge) valuation.Answer {
	t.Helper()
	if faults := c.Check(); len(faults) > 0 {
		t.Fatal(faults)
	}
	a, err := valuation.Value(c, k)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// most returns the walk-away bid, 0 where there is none.
func most(a valuation.Answer) money.Amount {
	if a.WalkAway == nil {
		return 0
	}
	return *a.WalkAway
}

// worse are changes that leave the buyer with no more money in any scenario.
var worse = map[string]func(*valuation.Case){
	"a higher fee": func(c *valuation.Case) {
		for i := range c.Buying.Fees[0].Rows {
			c.Buying.Fees[0].Rows[i].Flat += 7500
		}
	},
	"a fixed fee": func(c *valuation.Case) {
		c.Buying.Fixed = append(c.Buying.Fixed, invoice.Fixed{Name: "gate", Amount: 8000})
	},
	"a dearer part":          func(c *valuation.Case) { dearer(&c.Repair.Lines[0].Parts[0].Options[1].Price) },
	"a dearer first part":    func(c *valuation.Case) { dearer(&c.Repair.Lines[0].Parts[0].Options[0].Price) },
	"a dearer fallback":      func(c *valuation.Case) { dearer(&c.Repair.Lines[0].Parts[0].Fallback.Price) },
	"dearer materials":       func(c *valuation.Case) { dearer(&c.Repair.Lines[0].Materials) },
	"dearer work bought in":  func(c *valuation.Case) { dearer(&c.Repair.Lines[1].Outside) },
	"a likelier line":        func(c *valuation.Case) { *c.Repair.Lines[1].Chance = .6 },
	"a likelier risk":        func(c *valuation.Case) { c.Hidden.Risks[1].Chance.A = 4 },
	"a dearer risk":          func(c *valuation.Case) { dearer(&c.Hidden.Risks[0].Cost) },
	"a higher rate of labor": func(c *valuation.Case) { c.Labour.Rates["body"] = 45 },
	"a higher rate of money": func(c *valuation.Case) { c.Time.CapitalRate = .25 },
	"dearer days":            func(c *valuation.Case) { c.Time.HoldingPerDay = 11 },
	"a dearer sale":          func(c *valuation.Case) { c.Selling.Percent = .05 },
	"dearer freight":         func(c *valuation.Case) { dearer(&c.Buying.Freight) },
	"dearer storage":         func(c *valuation.Case) { c.Buying.Storage.PerDay = 55 },
	"another line": func(c *valuation.Case) {
		c.Repair.Lines = append(c.Repair.Lines, repair.Line{ID: "z", Job: "glass", Materials: prob.Three{Low: 50, Likely: 120, High: 300}})
	},
	"a tighter rule": func(c *valuation.Case) { c.Rules.MinProfit = usd(2500) },
}

func dearer(t *prob.Three) {
	*t = prob.Three{Low: t.Low * 1.2, Likely: t.Likely * 1.3, High: t.High * 1.4}
}

func TestWorseNeverRaisesTheBid(t *testing.T) {
	for seed := range int64(3) {
		c := small(seed + 1)
		before := most(value(t, c, valuation.Knowledge{}))
		if before == 0 {
			t.Fatal("the case to compare with has no bid")
		}
		moved := 0
		for name, change := range worse {
			d := c.Clone()
			change(&d)
			after := most(value(t, d, valuation.Knowledge{}))
			if after > before {
				t.Errorf("seed %d: %s raised the bid from %d to %d", seed+1, name, before, after)
			}
			if after < before {
				moved++
			}
		}
		if moved < len(worse)/2 {
			t.Errorf("seed %d: only %d of %d changes moved the bid at all", seed+1, moved, len(worse))
		}
	}
}

func TestBetterNeverLowersTheBid(t *testing.T) {
	c := small(1)
	before := most(value(t, c, valuation.Knowledge{}))
	better := map[string]func(*valuation.Case){
		"a higher guess":    func(c *valuation.Case) { c.Resale.Guess = &prob.Three{Low: 11900, Likely: 14600, High: 16900} },
		"one figure higher": func(c *valuation.Case) { c.Resale.Guess.Low = 11700 },
		"without a line":    func(c *valuation.Case) { c.Repair.Lines = c.Repair.Lines[:1] },
		"without the other": func(c *valuation.Case) { c.Repair.Lines = c.Repair.Lines[1:] },
		"a line struck out": func(c *valuation.Case) { c.Repair.Lines[1].Removed = true },
		"without a risk":    func(c *valuation.Case) { c.Hidden.Risks = c.Hidden.Risks[:1] },
		"a rule turned off": func(c *valuation.Case) { c.Rules.MinProfit = nil },
		"a part to be had":  func(c *valuation.Case) { *c.Repair.Lines[0].Parts[0].Options[0].Chance = 1 },
		"a likelier part":   func(c *valuation.Case) { *c.Repair.Lines[0].Parts[0].Options[1].Chance = .9 },
		"a part in reach": func(c *valuation.Case) {
			p := &c.Repair.Lines[0].Parts[0]
			p.Options = append(p.Options, repair.Option{Source: "donor", Price: prob.Three{Low: 60, Likely: 90, High: 150},
				LeadDays: prob.Certain(3)})
		},
		"no fee of the sale": func(c *valuation.Case) { c.Buying.Fees = nil },
	}
	for name, change := range better {
		d := c.Clone()
		change(&d)
		if after := most(value(t, d, valuation.Knowledge{})); after < before {
			t.Errorf("%s lowered the bid from %d to %d", name, before, after)
		}
	}
}

func TestMoreRivalsNeverRaiseTheBid(t *testing.T) {
	c := small(2)
	c.Run.WinnersAllowance = true
	c.Hidden.SharedLoading = .6
	last := money.Amount(1 << 50)
	first := last
	for i, rivals := range []int{0, 1, 2, 5, 12, 40} {
		c.Market.Rivals = others(rivals)
		got := most(value(t, c, valuation.Knowledge{}))
		if got > last {
			t.Errorf("%d rivals raised the bid from %d to %d", rivals, last, got)
		}
		if i == 0 {
			first = got
		}
		last = got
	}
	if last >= first {
		t.Errorf("forty rivals leave the bid at %d", last)
	}
}

// Arithmetic: the bars before the last add up to the last, the profit is that of the answer, the invoice adds up.
func TestWaterfallAddsUp(t *testing.T) {
	for seed := range int64(6) {
		c := small(seed + 1)
		if seed%2 == 1 {
			c.Rules.MinProfit = usd(20000) // not to be had: the waterfall stands at the lowest bid
		}
		a := value(t, c, valuation.Knowledge{})
		if (a.WalkAway == nil) != (seed%2 == 1) || (a.Decision == "bid") != (a.WalkAway != nil) {
			t.Errorf("seed %d: %s, bid %v", seed+1, a.Decision, a.WalkAway)
		}
		var sum, paid money.Amount
		last := len(a.Waterfall) - 1
		for _, b := range a.Waterfall[:last] {
			sum += b.Amount
		}
		for _, l := range a.Acquisition.Lines {
			paid += l.Amount
		}
		if sum != a.Waterfall[last].Amount || sum != a.Acquisition.Bid {
			t.Errorf("seed %d: the bars come to %d, the last is %+v", seed+1, sum, a.Waterfall[last])
		}
		if paid != a.Acquisition.Total {
			t.Errorf("seed %d: the invoice's lines come to %d of %d", seed+1, paid, a.Acquisition.Total)
		}
		if want := -float64(a.Waterfall[last-1].Amount) / 100; a.Profit.Mean != want {
			t.Errorf("seed %d: profit %g, waterfall %g", seed+1, a.Profit.Mean, want)
		}
	}
}

// priced is the small case with comparables in place of a guess. Invented.
func priced() valuation.Case {
	c := small(1)
	miles := 61000
	c.Lot.ModelYear, c.Lot.Odometer = 2019, &miles
	c.Resale.Guess = nil
	for i := range 14 {
		m := 30000 + 6500*float64(i)
		year := 2017 + i%5
		c.Resale.Rows = append(c.Resale.Rows, resale.Row{Price: money.Amount(100 * (15800 + 700*(year-2019) - int(m)/17 + 173*(i%3))),
			Mileage:   &m,
			ModelYear: year, Kind: []string{"asked", "sold"}[i%2], Date: lot.Date(fmt.Sprintf("2026-10-%02d", i+1))})
	}
	return c
}

func TestSameAnswerTwice(t *testing.T) {
	k := shipped(t)
	c := priced()
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue = true, true
	c.Damage = []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}}
	before := c.Clone()
	a, b := value(t, c, k), value(t, c, k)
	if !reflect.DeepEqual(a, b) {
		t.Error("the same case twice gives two answers")
	}
	if !reflect.DeepEqual(c, before) {
		t.Error("valuing changed the case")
	}
}

func TestOrderOfComparablesIsIrrelevant(t *testing.T) {
	k := shipped(t)
	c := priced()
	want := value(t, c, k)
	slices.Reverse(c.Resale.Rows)
	rows := c.Resale.Rows
	c.Resale.Rows = append(slices.Clone(rows[5:]), rows[:5]...)
	got := value(t, c, k)
	if most(got) != most(want) || most(got) == 0 {
		t.Errorf("bid %d, in another order %d", most(want), most(got))
	}
	for _, p := range [][2]float64{{got.Resale.P10, want.Resale.P10}, {got.Resale.P50, want.Resale.P50}, {got.Resale.P90, want.Resale.P90}} {
		if d := p[0] - p[1]; d > .01 || d < -.01 {
			t.Errorf("a price of %.4f, in another order %.4f", p[1], p[0])
		}
	}
}

// More cells, a wider extent or a deeper damage never lower the expected repair cost, over the whole shipped catalogue.
func TestMoreDamageNeverLowersTheRepair(t *testing.T) {
	cost := expectedRepair(t)
	for _, area := range lot.Areas {
		for i, extent := range lot.Extents {
			for j, depth := range lot.Depths {
				one := lot.Damage{Area: area, Extent: extent, Depth: depth}
				worse := [][]lot.Damage{{one, {Area: "06", Extent: "minor", Depth: "skin"}}}
				if i+1 < len(lot.Extents) {
					worse = append(worse, []lot.Damage{{Area: area, Extent: lot.Extents[i+1], Depth: depth}})
				}
				if j+1 < len(lot.Depths) {
					worse = append(worse, []lot.Damage{{Area: area, Extent: extent, Depth: lot.Depths[j+1]}})
				}
				for _, survey := range worse {
					before, after := cost(lot.Lot{}, one), cost(lot.Lot{}, survey...)
					if after < before-1e-6*before {
						t.Errorf("%v: repair %.2f, with %v %.2f", one, before, survey, after)
					}
				}
			}
		}
	}
}

// expectedRepair returns the mean cost of what the shipped catalogue plans for a survey, every trade at 30 an hour; lines
// are drawn one by one, so that one of the same figures always costs the same.
func expectedRepair(t *testing.T) func(lot.Lot, ...lot.Damage) float64 {
	jobs := shipped(t).Jobs
	s := repair.Setting{Draws: prob.NewDraws(256, 1), Factor: make([]float64, 256), Rates: map[string]float64{}}
	for _, trade := range lot.Trades {
		s.Rates[trade] = 30
	}
	known := map[string]float64{}
	return func(l lot.Lot, survey ...lot.Damage) float64 {
		var sum float64
		for _, l := range repair.Plan(nil, jobs, l, survey) {
			key := fmt.Sprint(l.ID, *l.Chance)
			cost, ok := known[key]
			if !ok {
				out := l.Draw(s)
				cost = 0
				for _, column := range [][]float64{out.Cash, out.Labour} {
					for _, x := range column {
						cost += x / 256
					}
				}
				known[key] = cost
			}
			sum += cost
		}
		return sum
	}
}

// A wider extent or a deeper damage never lowers the known and the hidden cost together either, whatever the loss was: a risk that
// becomes a job, or a job that becomes another, costs no less for it.
func TestMoreDamageNeverLowersTheWholeCost(t *testing.T) {
	repaired := expectedRepair(t)
	known := map[string]float64{}
	risks := shipped(t).Risks
	rates := map[string]float64{}
	for _, trade := range lot.Trades {
		rates[trade] = 30
	}
	for _, loss := range lot.Losses {
		whole := func(d lot.Damage) float64 {
			at := fmt.Sprint(loss, d)
			if sum, ok := known[at]; ok {
				return sum
			}
			l := lot.Lot{Loss: []string{loss}}
			sum := repaired(l, d)
			for _, r := range hidden.Raise(nil, risks, l, []lot.Damage{d}) {
				m := r.MeanIfPresent(r.Chance.Mean(), .3, rates)
				sum += r.Chance.Mean() * (m.Cash + m.Labour)
			}
			known[at] = sum
			return sum
		}
		everyWorse(func(d, worse lot.Damage) {
			if before, after := whole(d), whole(worse); after < before-1e-6*before {
				t.Errorf("%s, %v: %.0f, with %v %.0f", loss, d, before, worse, after)
			}
		})
	}
}

// everyWorse calls f with every damage and the same one step wider in extent, then one step deeper.
func everyWorse(f func(d, worse lot.Damage)) {
	for _, area := range lot.Areas {
		for i, extent := range lot.Extents {
			for j, depth := range lot.Depths {
				d := lot.Damage{Area: area, Extent: extent, Depth: depth}
				if i+1 < len(lot.Extents) {
					f(d, lot.Damage{Area: area, Extent: lot.Extents[i+1], Depth: depth})
				}
				if j+1 < len(lot.Depths) {
					f(d, lot.Damage{Area: area, Extent: extent, Depth: lot.Depths[j+1]})
				}
			}
		}
	}
}

// A title that can't be rebuilt stops the bid, whatever the numbers say.
func TestAStopBeatsTheNumbers(t *testing.T) {
	c := small(1)
	c.Lot.Title.Document = "junk"
	if a := value(t, c, valuation.Knowledge{}); a.Decision != "do_not_bid" || a.WalkAway != nil || len(a.Reasons) != 1 ||
		a.BindingRule != valuation.Stopped {
		t.Errorf("%s, %v, %q, %s", a.Decision, a.WalkAway, a.Reasons, a.BindingRule)
	}
}
