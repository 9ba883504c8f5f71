package sale_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"

	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/sale"
)

// small draws a sale that full enumeration can look through: fees that jump and fall, walk-away bids, hours and bays that bind.
func small(rng *rand.Rand, lots int) sale.Sale {
	cents := func(lo, hi int) money.Amount { return money.Amount(100 * (lo + rng.IntN(hi-lo))) }
	s := sale.Sale{Currency: usd, Purse: sale.Purse{Cash: cents(800, 4000), Hours: 20 + float64(rng.IntN(60)), Bays: 1 + rng.IntN(3)}}
	if rng.IntN(3) == 0 {
		s.Later = sale.Later{Cash: .05 * rng.Float64(), Hour: 3 * rng.Float64(), Bay: 100 * rng.Float64()}
	}
	for i := range lots {
		low := float64(200 + rng.IntN(1200))
		likely := low + float64(rng.IntN(600))
		l := sale.Lot{ID: fmt.Sprint(i), Worth: cents(600, 2600), Beside: cents(0, 400), Hours: float64(rng.IntN(80)) / 2,
			Hammer: prob.Three{Low: low, Likely: likely, High: likely + float64(rng.IntN(900))},
			Steps:  []invoice.Step{{Step: 10000}, {From: 100000, Step: 25000}}}
		if rng.IntN(12) > 0 {
			l.WalkAway = amount(cents(300, 2400))
		}
		rows := []invoice.Row{{Flat: 15000}, {From: 90000, Flat: cents(20, 400)}, {From: 150000, Percent: decimal.New(8, -2)}}
		l.Terms = invoice.Terms{
			Tax:       invoice.Tax{Base: "hammer", Rate: decimal.New(int64(rng.IntN(10)), -2)},
			Surcharge: decimal.New(int64(rng.IntN(4)), -2),
			Fees:      []invoice.Schedule{{Mode: "whole", Rows: rows}},
			Fixed:     []invoice.Fixed{{Amount: 7900}},
		}
		s.Lots = append(s.Lots, l)
	}
	return s
}

// byDay spreads the lots of a sale over days, and lets money and bays come in before, between and after them.
func byDay(s sale.Sale, rng *rand.Rand) sale.Sale {
	day := 1
	for i := range s.Lots {
		day += rng.IntN(2)
		s.Lots[i].Day = lot.Date(fmt.Sprintf("2026-12-%02d", day))
	}
	for range 1 + rng.IntN(3) {
		in := sale.Income{Day: lot.Date(fmt.Sprintf("2026-12-%02d", 1+rng.IntN(day+1))), Amount: money.Amount(100 * rng.IntN(2000))}
		s.In = append(s.In, in)
		s.Freed = append(s.Freed, sale.Freed{Day: lot.Date(fmt.Sprintf("2026-12-%02d", 1+rng.IntN(day+1))), Bays: rng.IntN(3)})
	}
	s.Cash, s.Bays = s.Cash/2, rng.IntN(2)
	return s
}

// enumerated returns the best value of the lots from i on by trying every bid against every price, with nothing kept, and the bids
// that are within a hair of the best.
func enumerated(s sale.Sale, i int, left sale.Purse) (value float64, good map[money.Amount]bool) {
	if i == len(s.Lots) {
		return 0, nil
	}
	l := s.Lots[i]
	today := func(day lot.Date) bool { return day <= l.Day && (i == 0 || day > s.Lots[i-1].Day) }
	for _, in := range s.In {
		if today(in.Day) {
			left.Cash += in.Amount
		}
	}
	for _, f := range s.Freed {
		if today(f.Day) {
			left.Bays += f.Bays
		}
	}
	lost, _ := enumerated(s, i+1, left)
	value, good = lost, map[money.Amount]bool{0: true}
	if l.WalkAway == nil || left.Bays < 1 || left.Hours < l.Hours {
		return value, good
	}
	sum, below := lost, 0.0
	for b := invoice.Next(l.Steps, 0); b <= *l.WalkAway; b = invoice.Next(l.Steps, b) {
		total := l.Terms.Total(b, s.Currency).Total
		after := sale.Purse{Cash: left.Cash - total - l.Beside, Hours: left.Hours - l.Hours, Bays: left.Bays - 1}
		if after.Cash < 0 {
			break
		}
		upTo := l.Hammer.CDF(s.Currency.Major(b))
		if upTo > below {
			won, _ := enumerated(s, i+1, after)
			used := s.Later.Cash*s.Currency.Major(total+l.Beside) + s.Later.Hour*l.Hours + s.Later.Bay
			sum += (upTo - below) * (s.Currency.Major(l.Worth-total) - used + won - lost)
		}
		below = max(below, upTo)
		if sum > value+1e-9 {
			value, good = sum, map[money.Amount]bool{}
		}
		good[b] = good[b] || sum > value-1e-9
	}
	return value, good
}

// The plan is worth what full enumeration finds, its bids are among the best there, and following it brings that value.
func TestPlanIsWhatEnumerationFinds(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	bids := 0
	for round := range 300 {
		s := small(rng, 1+rng.IntN(4))
		if round%2 == 1 {
			s = byDay(s, rng)
		}
		if faults := s.Check(); len(faults) > 0 {
			t.Fatal(faults)
		}
		p := sale.New(s)
		a := p.Answer()
		want, _ := enumerated(s, 0, s.Purse)
		near(t, fmt.Sprint(round, ": value"), a.Expected, want, 1e-7)
		near(t, fmt.Sprint(round, ": followed"), p.Follow(p), want, 1e-7)
		for i, b := range a.Lots {
			_, good := enumerated(s, i, met(s, i))
			var bid money.Amount
			if b.Bid != nil {
				bid = *b.Bid
				bids++
			}
			if !good[bid] {
				t.Errorf("%d: lot %d: %d is not among the best %v", round, i, bid, good)
			}
		}
	}
	if bids < 100 {
		t.Errorf("only %d bids: the sales say too little", bids)
	}
}

// met returns what there is before a lot when all before it were lost, but for what comes in that day.
func met(s sale.Sale, i int) sale.Purse {
	left := s.Purse
	for _, in := range s.In {
		if i > 0 && in.Day <= s.Lots[i-1].Day {
			left.Cash += in.Amount
		}
	}
	for _, f := range s.Freed {
		if i > 0 && f.Day <= s.Lots[i-1].Day {
			left.Bays += f.Bays
		}
	}
	return left
}

// The grid stands in with what comes in between days as it does without: within 2 % of the exact program.
func TestTheGridHoldsWithWhatComesIn(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 13))
	var exact, grid float64
	for range 40 {
		s := byDay(small(rng, 6), rng)
		s.Bays = 2
		exact += sale.New(s).Answer().Expected
		s.Effort = 1
		a := sale.New(s).Answer()
		if grid += a.Expected; a.Exact {
			t.Fatal("the exact program answers for the grid")
		}
	}
	if exact < 1000 || grid < .98*exact || grid > 1.01*exact {
		t.Errorf("the grid brings %v, the exact program %v", grid, exact)
	}
}

// A worth that is set by what bidding brings has the lot bring just that.
func TestWorthIsSetByWhatBiddingBrings(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	for range 60 {
		s := small(rng, 1)
		s.Cash, s.Hours, s.Bays, s.Later = 1_000_000, 1000, 1, sale.Later{}
		l := &s.Lots[0]
		l.WalkAway = amount(100_000)
		brings := func() (sum float64) {
			below := 0.0
			for b := invoice.Next(l.Steps, 0); b <= *l.WalkAway; b = invoice.Next(l.Steps, b) {
				upTo := l.Hammer.CDF(usd.Major(b))
				sum += (upTo - below) * usd.Major(l.Worth-l.Terms.Total(b, usd).Total)
				below = upTo
			}
			return sum
		}
		own, gain := l.Worth, 20+80*rng.Float64()
		l.Worth = l.WorthOf(gain, usd)
		if l.Hammer.CDF(1000) == 0 {
			gain = 0
			near(t, "worth of a lot that cannot be won", float64(l.Worth), float64(own), 0)
		}
		near(t, "what bidding brings", brings(), gain, .01)
	}
}

// What one more brings is the difference of two sales.
func TestOneMoreIsTheNextSalesValue(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 40 {
		s := small(rng, 4)
		a := sale.New(s).Answer()
		value := func(change func(*sale.Sale)) float64 {
			other := s
			change(&other)
			return sale.New(other).Answer().Expected - a.Expected
		}
		near(t, "a thousand", a.Thousand, value(func(s *sale.Sale) { s.Cash += 100000 }), 1e-7)
		near(t, "ten hours", a.TenHours, value(func(s *sale.Sale) { s.Hours += 10 }), 1e-7)
		near(t, "a bay", a.Bay, value(func(s *sale.Sale) { s.Bays++ }), 1e-7)
	}
}

// Reach, and the middle bid after one win, are what playing the plan shows.
func TestReachIsWhatPlayingShows(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 6 {
		s := small(rng, 5)
		p := sale.New(s)
		a := p.Answer()
		const games = 20_000
		bidOn := make([]float64, len(s.Lots))
		total := 0.0
		for range games {
			left := s
			for i, l := range s.Lots {
				bid, ok := p.Stop(i, left.Purse)
				if !ok {
					left.Lots = left.Lots[1:]
					continue
				}
				bidOn[i] += 1. / games
				price := legalAbove(l, l.Hammer.(prob.Three).Quantile(rng.Float64()))
				result := sale.Result{ID: l.ID, Won: price <= bid, Price: price}
				if result.Won {
					inv := l.Terms.Total(price, usd).Total
					total += (usd.Major(l.Worth-inv) - s.Later.Cash*usd.Major(inv+l.Beside) - s.Later.Hour*l.Hours - s.Later.Bay) / games
				}
				var faults []sale.Fault
				if left, faults = left.After([]sale.Result{result}); len(faults) > 0 {
					t.Fatal(faults)
				}
			}
		}
		near(t, "profit played", total, a.Expected, 25)
		for i, b := range a.Lots {
			near(t, "reach", bidOn[i], b.Reach, .02)
		}
	}
}

// legalAbove returns the smallest legal bid at or above a price.
func legalAbove(l sale.Lot, x float64) money.Amount {
	b := invoice.Next(l.Steps, 0)
	for usd.Major(b) < x {
		b = invoice.Next(l.Steps, b)
	}
	return b
}

// After a result the rest of the sale is planned as if it stood alone.
func TestResultsLeaveTheRest(t *testing.T) {
	s := byDay(small(rand.New(rand.NewPCG(7, 8)), 4), rand.New(rand.NewPCG(8, 9)))
	s.Lots[0].WalkAway = amount(100000)
	won := sale.Result{ID: "0", Won: true, Price: 60000}
	rest, faults := s.After([]sale.Result{won, {ID: "1"}})
	total := s.Lots[0].Terms.Total(60000, usd).Total + s.Lots[0].Beside
	if len(faults) > 0 || len(rest.Lots) != 2 || rest.Cash != s.Cash-total || rest.Hours != s.Hours-s.Lots[0].Hours || rest.Bays != s.Bays-1 {
		t.Fatalf("%+v, %v", rest.Purse, faults)
	}
	p := sale.New(s)
	for i, b := range sale.New(rest).Answer().Lots {
		left := rest
		left.Lots = rest.Lots[i:]
		bid, ok := p.Stop(i+2, left.InHand())
		if ok != (b.Bid != nil) || ok && bid != *b.Bid {
			t.Errorf("lot %s: %v against %d", b.ID, b.Bid, bid)
		}
	}
	won.Price = 100000 * 50
	broke, _ := s.After([]sale.Result{won})
	broke.In, broke.Freed = nil, nil
	if a := sale.New(broke).Answer(); broke.Cash >= 0 || a.Expected != 0 || len(a.Leave) != 3 {
		t.Errorf("bids with %d of cash: %+v", broke.Cash, a)
	}
	for _, wrong := range [][]sale.Result{{{ID: "1"}}, {{ID: "0", Won: true, Price: 60001}}, {{ID: "0"}, {ID: "0"}}} {
		if _, faults := s.After(wrong); len(faults) != 1 {
			t.Errorf("%v is taken: %v", wrong, faults)
		}
	}
}
