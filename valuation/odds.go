package valuation

import (
	"slices"

	"walkline/valuation/invoice"
	"walkline/valuation/money"
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
	Cash90     float64  // 90th percentile of all money out before the sale
	Days90     float64  // 90th percentile of days, whatever is bid
}

// Ruling is a house rule at a bid.
type Ruling struct {
	Rule   string // as the case file spells it
	Wanted string // "at least USD 1,500"
	Found  string // "expected profit USD 1,320"
	Holds  bool
}

// Slice is a range of money, in major units, with the chance that a figure (a break-even total, a price) lies in it.
type Slice struct{ From, To, Chance float64 }

func (m *Memory) weigh(c Case, k Knowledge) (Answer, Odds, error) {
	w := work{c: c, k: k}
	if err := w.run(m); err != nil {
		return Answer{}, Odds{}, err
	}
	if len(w.missing()) > 0 {
		return w.answer(), Odds{}, nil
	}
	kept := work{c: w.c, currency: w.currency, problem: w.problem, found: w.found} // without the scenarios of each line
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
	out := Outlook{Bid: b, Total: f.Total, Holds: f.Holds, Cash90: a + m.Cash90, Days90: m.Days90,
		Profit: Profit{Mean: f.Mean, P05: p.Quantile(.05, a), P10: p.Quantile(.1, a),
			P50: p.Quantile(.5, a), P90: p.Quantile(.9, a), LossChance: f.LossChance, WorstTenth: f.WorstTenth, Margin: f.Margin,
			PerHour: f.PerHour}}
	for _, c := range o.w.found.Ceilings {
		out.Rules = append(out.Rules, Ruling{c.Rule, o.w.limit(c.Rule), o.w.figure(c.Rule, f), !slices.Contains(f.Broken, c.Rule)})
	}
	return out
}

// Total returns the invoice total at a bid. Limits: o is known.
func (o Odds) Total(b money.Amount) money.Amount {
	return o.w.c.Buying.Total(b, o.w.currency).Total
}

// BidFor returns the legal bid whose invoice comes up to a total, 0 where none does; where the invoice falls as the bid rises,
// it may be any of those that do. Units: total in major units. Limits: o is known.
func (o Odds) BidFor(total float64) money.Amount {
	limit := o.w.currency.FromMajor(total)
	low, high := money.Amount(0), max(limit, 0)
	for low < high {
		middle := high - (high-low)/2
		if o.Total(middle) <= limit {
			low = middle
		} else {
			high = middle - 1
		}
	}
	legal, _ := invoice.Stand(o.w.c.Buying.BidSteps, low)
	return legal
}

// seldom is the chance that [Odds.BreakEven] leaves out at either end.
const seldom = 0.001

// BreakEven returns where the lot breaks even, in n slices of one width: a lot bought for an invoice total loses money where it
// breaks even below that, and what lies between the two is its profit, but for the capital cost on the difference. Shape:
// rising; the rarest 0.1 % at either end are left out. Limits: o is known, n is positive.
func (o Odds) BreakEven(n int) []Slice {
	p := &o.w.problem
	return slicesOf(n, p.Even(seldom), p.Even(1-seldom), p.LossChance)
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

// Price returns what the finished vehicle may bring, in n slices of one width. Shape, limits: as [Odds.BreakEven].
func (o Odds) Price(n int) []Slice {
	r := o.w.problem.Resale
	return slicesOf(n, r.Quantile(seldom), r.Quantile(1-seldom), r.CDF)
}
