package valuation_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// rat reads a decimal figure exactly.
func rat(x any) *big.Rat {
	r, ok := new(big.Rat).SetString(fmt.Sprint(x))
	if !ok {
		panic(fmt.Sprint(x))
	}
	return r
}

func cents(a money.Amount) *big.Rat { return big.NewRat(int64(a), 100) }

func add(xs ...*big.Rat) *big.Rat {
	s := new(big.Rat)
	for _, x := range xs {
		s.Add(s, x)
	}
	return s
}

func mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
func sub(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }

// halfUp rounds a sum that is not negative to cents.
func halfUp(x *big.Rat) *big.Rat {
	scaled := add(mul(x, rat(100)), rat("0.5"))
	return new(big.Rat).SetFrac(new(big.Int).Quo(scaled.Num(), scaled.Denom()), big.NewInt(100))
}

// scanInvoice is the invoice total in whole fractions, written from model.md section 1 and from nothing else.
func scanInvoice(t invoice.Terms, b *big.Rat) *big.Rat {
	fees := new(big.Rat)
	for _, s := range t.Fees {
		fees = add(fees, halfUp(scanFee(s, b)))
	}
	fixed := new(big.Rat)
	for _, f := range t.Fixed {
		fixed = add(fixed, cents(f.Amount))
	}
	base := b
	if t.Tax.Base == "hammer_and_fees" {
		base = add(b, fees, fixed)
	}
	invoice := add(b, fees, fixed, halfUp(mul(base, rat(t.Tax.Rate))))
	return add(invoice, halfUp(mul(invoice, rat(t.Surcharge))))
}

func scanFee(s invoice.Schedule, b *big.Rat) *big.Rat {
	sum := new(big.Rat)
	for i, r := range s.Rows {
		if b.Cmp(cents(r.From)) < 0 {
			continue
		}
		base := b
		if s.Mode == "slice" {
			top := b
			if i+1 < len(s.Rows) && b.Cmp(cents(s.Rows[i+1].From)) > 0 {
				top = cents(s.Rows[i+1].From)
			}
			base = sub(top, cents(r.From))
		}
		own := add(cents(r.Flat), mul(base, rat(r.Percent)))
		if r.Minimum != nil && own.Cmp(cents(*r.Minimum)) < 0 {
			own = cents(*r.Minimum)
		}
		if r.Maximum != nil && own.Cmp(cents(*r.Maximum)) > 0 {
			own = cents(*r.Maximum)
		}
		if s.Mode == "slice" {
			sum = add(sum, own)
		} else {
			sum = own
		}
	}
	return sum
}

// scanned is what of a certain case does not depend on the bid, in whole fractions.
type scanned struct {
	c                         valuation.Case
	hours, labour, cash, days *big.Rat
	before                    *big.Rat // every cost but the invoice and its capital
	price, growth             *big.Rat
}

// scan adds up the costs, hours and days of a certain case.
func scan(c valuation.Case) scanned {
	hours, labour, cash := new(big.Rat), new(big.Rat), new(big.Rat)
	lead, hiddenDays, work := new(big.Rat), new(big.Rat), new(big.Rat)
	for _, l := range c.Repair.Lines {
		h := rat(l.Hours["body"].Likely)
		work = add(work, h)
		cash = add(cash, rat(l.Materials.Likely), rat(l.Outside.Likely))
		for _, p := range l.Parts {
			o := p.Options[0]
			cash = add(cash, rat(o.Price.Likely), rat(o.Freight.Likely))
			if d := rat(o.LeadDays.Likely); d.Cmp(lead) > 0 {
				lead = d
			}
		}
	}
	hours = add(hours, work)
	for _, r := range c.Hidden.Risks {
		hours, cash = add(hours, rat(r.Hours["body"].Likely)), add(cash, rat(r.Cost.Likely))
		hiddenDays = add(hiddenDays, rat(r.Days.Likely))
	}
	labour = mul(hours, rat(c.Labour.Rates["body"]))
	days := mul(hours, big.NewRat(7, 1))
	days.Quo(days, rat(c.Time.HoursPerWeek))
	if lead.Cmp(days) > 0 {
		days = lead
	}
	days = add(days, hiddenDays, rat(c.Time.InspectionQueueDays.Likely), rat(c.Time.DaysToSell.Likely))
	storage := sub(rat(c.Buying.Storage.Days.Likely), rat(c.Buying.Storage.FreeDays))
	if storage.Sign() < 0 {
		storage = new(big.Rat)
	}
	cash = add(cash, rat(c.Buying.Freight.Likely), mul(storage, rat(c.Buying.Storage.PerDay)), mul(days, rat(c.Time.HoldingPerDay)))
	price := rat(c.Resale.Guess.Likely)
	return scanned{c, hours, labour, cash, days, add(mul(price, rat(c.Selling.Percent)), rat(c.Selling.Flat), cash, labour), price,
		add(rat(1), mul(rat(c.Time.CapitalRate), new(big.Rat).Quo(days, rat(365))))}
}

// holds says whether every rule that is on holds at an invoice total.
func (s scanned) holds(total *big.Rat) bool {
	outlay := add(s.before, mul(total, s.growth))
	return scanRules(s.c.Rules, sub(s.price, outlay), outlay, s.labour, s.hours, add(s.cash, total), s.days)
}

func scanRules(r bid.Rules, profit, outlay, labour, hours, cash, days *big.Rat) bool {
	holds := true
	need := func(on, ok bool) { holds = holds && (!on || ok) }
	need(r.MinProfit != nil, r.MinProfit == nil || profit.Cmp(cents(*r.MinProfit)) >= 0)
	need(r.MinMargin != nil, r.MinMargin == nil || profit.Cmp(mul(outlay, rat(*r.MinMargin))) >= 0)
	need(r.MaxLossChance != nil, profit.Sign() >= 0)
	need(r.MaxWorstTenthLoss != nil, r.MaxWorstTenthLoss == nil || new(big.Rat).Neg(profit).Cmp(cents(*r.MaxWorstTenthLoss)) <= 0)
	need(r.MinPerHour != nil, r.MinPerHour == nil || add(profit, labour).Cmp(mul(hours, cents(*r.MinPerHour))) >= 0)
	need(r.MaxCash != nil, r.MaxCash == nil || cash.Cmp(cents(*r.MaxCash)) <= 0)
	need(r.MaxDays != nil, r.MaxDays == nil || days.Cmp(rat(*r.MaxDays)) <= 0)
	return holds
}

// certain draws a case whose every cost is certain; fee schedules jump and fall.
func certain(rng *rand.Rand) valuation.Case {
	pick := func(lo, hi int) float64 { return float64(lo + rng.IntN(hi-lo+1)) }
	amount := func(lo, hi int) *money.Amount { a := money.Amount(100*lo + rng.IntN(100*(hi-lo))); return &a }
	one := func(x float64) prob.Three { return prob.Certain(x) }
	c := valuation.Defaults()
	c.Currency, c.ValuedOn = "USD", "2026-11-20"
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue = false, false
	price := pick(6000, 30000)
	c.Resale.Guess = &prob.Three{Low: price, Likely: price, High: price}
	for i := range 1 + rng.IntN(4) {
		c.Repair.Lines = append(c.Repair.Lines, repair.Line{ID: fmt.Sprint("r", i), Job: "work",
			Hours: map[string]prob.Three{"body": one(pick(1, 40) / 4)}, Materials: one(pick(0, 9000) / 100), Outside: one(pick(0, 200)),
			Parts: []repair.Part{{Name: "p", Options: []repair.Option{{Price: one(pick(0, 90000) / 100), Freight: one(pick(0, 50)),
				LeadDays: one(pick(0, 30))}}}}})
	}
	c.Hidden.Risks = []hidden.Risk{{ID: "h", Name: "sure", Chance: hidden.Beta{A: 1}, Cost: one(pick(0, 500)),
		Hours: map[string]prob.Three{"body": one(pick(0, 20) / 4)}, Days: one(pick(0, 9))}}
	c.Labour.Rates = map[string]float64{"body": pick(0, 60)}
	c.Time = valuation.Time{HoursPerWeek: pick(5, 50), InspectionQueueDays: one(pick(0, 30)), DaysToSell: one(pick(1, 60)),
		HoldingPerDay: pick(0, 900) / 100, CapitalRate: pick(0, 15) / 100}
	c.Selling = valuation.Selling{Percent: pick(0, 8) / 100, Flat: pick(0, 300)}
	c.Buying.Freight = one(pick(0, 400))
	c.Buying.Storage = valuation.Storage{PerDay: pick(0, 40), FreeDays: pick(0, 5), Days: one(pick(0, 9))}
	c.Buying.BidSteps = []invoice.Step{{Step: money.Amount(500 * (1 + rng.IntN(10)))},
		{From: *amount(200, 1500), Step: money.Amount(777 * (1 + rng.IntN(9)))},
		{From: *amount(4000, 9000), Step: money.Amount(2500 * (1 + rng.IntN(8)))}}
	c.Buying.Terms = terms(rng, amount)
	c.Rules = someRules(rng, amount)
	c.Market.Rivals = others(rng.IntN(6))
	c.Run.Scenarios = 256
	return c
}

func terms(rng *rand.Rand, amount func(lo, hi int) *money.Amount) invoice.Terms {
	rate := func(n int) decimal.Decimal { return decimal.New(int64(rng.IntN(n)), -4) }
	mode := func() string { return []string{"whole", "slice"}[rng.IntN(2)] }
	t := invoice.Terms{Surcharge: rate(400), Tax: invoice.Tax{Rate: rate(1000), Base: []string{"hammer", "hammer_and_fees"}[rng.IntN(2)]},
		Fixed: []invoice.Fixed{{Name: "Gate", Amount: *amount(0, 120)}}}
	for range 1 + rng.IntN(2) {
		low, high := amount(0, 300), amount(300, 900)
		t.Fees = append(t.Fees, invoice.Schedule{Name: "fee", Mode: mode(), Rows: []invoice.Row{
			{From: 0, Flat: *amount(0, 400)}, {From: *amount(500, 2000), Flat: *amount(0, 700), Percent: rate(1500), Minimum: low},
			{From: *amount(2000, 7000), Percent: rate(1200), Minimum: low, Maximum: high},
			{From: *amount(7000, 15000), Flat: *amount(0, 200), Percent: rate(500)}}})
	}
	return t
}

func someRules(rng *rand.Rand, amount func(lo, hi int) *money.Amount) bid.Rules {
	r := bid.Rules{MinProfit: amount(0, 3000)}
	margin, loss, days := float64(rng.IntN(30))/100, float64(rng.IntN(40))/100, float64(20+rng.IntN(150))
	for _, f := range []func(){func() { r.MinMargin = &margin }, func() { r.MaxLossChance = &loss },
		func() { r.MaxWorstTenthLoss = amount(0, 3000) },
		func() { r.MinPerHour = amount(0, 90) }, func() { r.MaxCash = amount(2000, 20000) }, func() { r.MaxDays = &days }} {
		if rng.IntN(2) == 0 {
			f()
		}
	}
	if rng.IntN(3) == 0 && (r.MinMargin != nil || r.MaxCash != nil || r.MinPerHour != nil) {
		r.MinProfit = nil
	}
	return r
}

// For 300 random cases with certain costs the walk-away bid is the last of all legal bids at which every rule holds,
// found by scanning them with arithmetic in whole fractions that shares nothing with the engine.
func TestWalkAwayAgreesWithAScanOfEveryLegalBid(t *testing.T) {
	rng := rand.New(rand.NewPCG(20261120, 1))
	bids, refused, gaps := 0, 0, 0
	for n := range 300 {
		c := certain(rng)
		if fs := c.Check(); len(fs) > 0 {
			t.Fatalf("case %d: %v", n, fs)
		}
		var best, failed *money.Amount
		gap := false
		lot := scan(c)
		for b := c.Buying.BidSteps[0].Step; b < 3_300_000; b = scanNext(c.Buying.BidSteps, b) {
			if lot.holds(scanInvoice(c.Buying.Terms, cents(b))) {
				x := b
				best, gap = &x, failed != nil
			} else if failed == nil {
				x := b
				failed = &x
			}
		}
		a, err := valuation.Value(c, valuation.Knowledge{Prior: prior(t)})
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case best == nil && a.WalkAway == nil:
			refused++
		case best == nil || a.WalkAway == nil || *best != *a.WalkAway:
			t.Errorf("case %d: scan %v, engine %v, rule %s", n, show(best), show(a.WalkAway), a.BindingRule)
		default:
			bids++
		}
		if gap && a.WalkAway != nil {
			gaps++
		}
	}
	t.Logf("%d bids, %d refusals, %d with a gap below the bid", bids, refused, gaps)
	if bids < 100 || refused < 10 || gaps < 3 {
		t.Errorf("the cases are too much alike: %d bids, %d refusals, %d gaps", bids, refused, gaps)
	}
}

// scanNext adds the step of the tier in which the bid stands.
func scanNext(steps []invoice.Step, b money.Amount) money.Amount {
	for i := len(steps) - 1; ; i-- {
		if b >= steps[i].From {
			return b + steps[i].Step
		}
	}
}

func show(a *money.Amount) string {
	if a == nil {
		return "no bid"
	}
	return fmt.Sprint(*a)
}
