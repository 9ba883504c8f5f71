package valuation

import (
	"math"
	"slices"

	"walkline/valuation/bid"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/patterns"
)

// Odds reads what a lot brings at any bid. It is made by [Weigh] with the answer, never changes, and may be read from any
// goroutine. The zero value knows no lot.
type Odds struct{ w *work }

// Outlook is what one bid brings. Units: as in [Profit].
type Outlook struct {
	Bid, Total money.Amount
	Profit     Profit
	Rules      []Ruling // those that are on, in their order
	Holds      bool     // every rule holds
	Win        *float64 // chance that the hammer falls at or below the bid; nil: nobody can say where it falls
	Cash90     float64  // 90th percentile of all money out before the sale
	Days90     float64  // 90th percentile of days, whatever is bid
}

// Ruling is a house rule at a bid.
type Ruling struct {
	Rule   string // as the case file spells it
	Wanted string // "at least USD 1,500"
	Holds  bool
}

// Slice is a range of money, in major units, with the chance that a figure lies in it.
type Slice struct{ From, To, Chance float64 }

func (m *Memory) weigh(c Case, k Knowledge, over ...patterns.Pattern) (Answer, Odds, error) {
	w := work{c: c, k: k, brief: m.drawn != nil, over: over}
	if err := w.run(m); err != nil {
		return Answer{}, Odds{}, err
	}
	if len(w.missing()) > 0 {
		return w.answer(), Odds{}, nil
	}
	kept := work{c: w.c, currency: w.currency, problem: w.problem, found: w.found} // without the scenarios of each line
	kept.law, _ = w.falls()
	return w.answer(), Odds{&kept}, nil
}

// Known reports whether there are odds to read.
func (o Odds) Known() bool { return o.w != nil }

// At returns what a bid brings, whether or not it is legal. Limits: o is known, b is not negative.
func (o Odds) At(b money.Amount) Outlook {
	p := &o.w.problem
	f := p.Judge(b)
	a := o.w.currency.Major(f.Total)
	m := p.Means(b)
	out := Outlook{Bid: b, Total: f.Total, Holds: f.Holds, Win: o.win(b), Cash90: a + m.Cash90, Days90: m.Days90,
		Profit: Profit{Mean: f.Mean, P05: p.Quantile(.05, a), P10: p.Quantile(.1, a),
			P50: p.Quantile(.5, a), P90: p.Quantile(.9, a), LossChance: f.LossChance, WorstTenth: f.WorstTenth, Margin: f.Margin,
			PerHour: f.PerHour}}
	for _, c := range o.w.found.Ceilings {
		out.Rules = append(out.Rules, Ruling{c.Rule, o.w.limit(c.Rule), !slices.Contains(f.Broken, c.Rule)})
	}
	return out
}

// Law returns where the hammer falls, nil where nobody can say. Limits: o is known.
func (o Odds) Law() bid.Law { return o.w.law }

// Total returns the invoice total at a bid. Limits: o is known.
func (o Odds) Total(b money.Amount) money.Amount {
	return o.w.c.Buying.Total(b, o.w.currency).Total
}

// Chances is one legal bid with its chances.
type Chances struct {
	Bid  money.Amount
	Loss float64  // P(profit < 0) at this bid
	Win  *float64 // P(the hammer falls at or below this bid); nil: nobody guessed where it falls
}

// seldom is the chance that is left out at either end of what is drawn of a price; mostly is the chance of a loss that the chances
// along the bids go up to.
const seldom, mostly = 0.001, 0.75

// nearly is the chance to win that the bids along go up to.
const nearly = 0.98

// Along returns the chances along the bids, from the lowest legal one to where the lot mostly loses and is nearly always won.
// Shape: rising, at most n. Limits: o is known, n is at least 2.
func (o Odds) Along(n int) []Chances {
	p, steps := &o.w.problem, o.w.c.Buying.BidSteps
	const few = 20
	_, most := invoice.Stand(steps, o.w.currency.FromMajor(max(p.Even(mostly), 0)))
	if law := o.w.law; law != nil {
		high := law.Quantile(1)
		if math.IsInf(high, 1) {
			high = law.Quantile(nearly)
		}
		_, won := invoice.Stand(steps, o.w.currency.FromMajor(high))
		most = max(most, won)
	}
	most = max(most, few)
	count := min(most, int64(n))
	out := make([]Chances, count)
	for i := range out {
		out[i] = o.chances(invoice.Nth(steps, 1+int64(i)*(most-1)/(count-1)))
	}
	return out
}

// chances returns the chances at a bid.
func (o Odds) chances(b money.Amount) Chances {
	return Chances{Bid: b, Loss: o.w.problem.LossChance(o.w.currency.Major(o.Total(b))), Win: o.win(b)}
}

// win returns the chance that the hammer falls at or below a bid, nil where nobody can say.
func (o Odds) win(b money.Amount) *float64 {
	if o.w.law == nil {
		return nil
	}
	chance := o.w.law.CDF(o.w.currency.Major(b))
	return &chance
}

// slicesOf cuts low to high into n slices of one width, each with its chance; below is the distribution function.
func slicesOf(n int, low, high float64, below func(float64) float64) []Slice {
	if high-low < 1 { // certain
		low, high = low-1, high+1
	}
	out := make([]Slice, n)
	edge := func(i int) float64 { return low + (high-low)*float64(i)/float64(n) }
	before := below(low)
	for i := range out {
		chance := below(edge(i + 1))
		out[i] = Slice{edge(i), edge(i + 1), chance - before}
		before = chance
	}
	return out
}

// Price returns what the finished vehicle may bring, in n slices of one width. Shape: rising; the rarest 0.1 % at
// either end are left out. Limits: o is known, n is positive.
func (o Odds) Price(n int) []Slice {
	r := o.w.problem.Resale
	return slicesOf(n, r.Quantile(seldom), r.Quantile(1-seldom), r.CDF)
}
