package bid

import (
	"math"
	"sort"

	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Problem is all that a bid is judged by. Shape: the columns have one value a scenario. Units: money in major units.
type Problem struct {
	Cost   []float64 // every cost but the invoice, capital and selling
	Days   []float64
	Cash   []float64 // money out before the sale beside the invoice
	Hours  []float64
	Labour []float64 // own hours at their rates, part of Cost

	Resale      prob.Table
	SellPercent float64 // fraction of the price, below 1
	SellFlat    float64
	CapitalRate float64 // a year
	Allowance   float64 // winner's allowance, money

	Terms    invoice.Terms
	Steps    []invoice.Step
	Currency money.Currency
	Rules    Rules

	cost, days, hours, labour float64 // means
	cash90, days90            float64
	groups                    []group
}

// group is some scenarios of like cost, as one.
type group struct{ cost, growth float64 }

// groupCount is how many groups stand for the scenarios in quantiles and worst tenths.
const groupCount = 1024

// prepare works out what does not depend on the bid.
func (p *Problem) prepare() {
	p.cost, p.days, p.hours, p.labour = prob.Mean(p.Cost), prob.Mean(p.Days), prob.Mean(p.Hours), prob.Mean(p.Labour)
	p.cash90 = prob.Quantile(prob.Sorted(p.Cash), 0.9)
	p.days90 = prob.Quantile(prob.Sorted(p.Days), 0.9)
	p.group()
}

// group gathers neighbours in cost; with a certain resale price each scenario stays by itself.
func (p *Problem) group() {
	n := len(p.Cost)
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	sort.Slice(order, func(a, b int) bool {
		x, y := p.Cost[order[a]], p.Cost[order[b]]
		return x < y || x == y && order[a] < order[b]
	})
	m := min(n, groupCount)
	if p.Resale.Certain() {
		m = n
	}
	p.groups = make([]group, m)
	for g := range p.groups {
		from, to := g*n/m, (g+1)*n/m
		for _, i := range order[from:to] {
			p.groups[g].cost += p.Cost[i] / float64(to-from)
			p.groups[g].growth += p.growth(i) / float64(to-from)
		}
	}
}

// growth returns what a unit of money out costs with its capital over the days of scenario i.
func (p *Problem) growth(i int) float64 { return 1 + p.CapitalRate*p.Days[i]/365 }

// capital returns the mean capital cost of an invoice total.
func (p *Problem) capital(total float64) float64 { return total * p.CapitalRate * p.days / 365 }

// selling returns the mean cost of the sale.
func (p *Problem) selling() float64 { return p.Resale.Mean()*p.SellPercent + p.SellFlat }

// outlay returns the expected outlay: every cost, selling, own labour and capital included.
func (p *Problem) outlay(total float64) float64 {
	return p.selling() + p.cost + total + p.capital(total)
}

// mean returns the expected profit after the winner's allowance.
func (p *Problem) mean(total float64) float64 {
	return p.Resale.Mean() - p.outlay(total) - p.Allowance
}

// LossChance returns P(profit < 0) at an invoice total.
func (p *Problem) LossChance(total float64) float64 {
	var sum float64
	for i, c := range p.Cost {
		sum += p.Resale.CDF(p.breakEven(0, c, p.growth(i), total))
	}
	return sum / float64(len(p.Cost))
}

// breakEven returns the resale price that leaves a profit of v.
func (p *Problem) breakEven(v, cost, growth, total float64) float64 {
	return (v + p.SellFlat + p.Allowance + cost + total*growth) / (1 - p.SellPercent)
}

// lower returns the chance of a profit below v and the partial expectation of the profit there.
func (p *Problem) lower(v, total float64) (chance, partial float64) {
	for _, g := range p.groups {
		x := p.breakEven(v, g.cost, g.growth, total)
		c, b := p.Resale.Lower(x)
		chance += c
		partial += (1-p.SellPercent)*b - c*(p.breakEven(0, g.cost, g.growth, total)*(1-p.SellPercent))
	}
	n := float64(len(p.groups))
	return chance / n, partial / n
}

// Quantile returns the profit below which a tenth (q = 0.1), a half ... of the profits lie.
func (p *Problem) Quantile(q, total float64) float64 {
	if p.Resale.Certain() {
		return prob.Quantile(p.profits(total), q)
	}
	lo, hi := p.span(total)
	for range 60 {
		mid := (lo + hi) / 2
		if c, _ := p.lower(mid, total); c < q {
			lo = mid
		} else {
			hi = mid
		}
		if hi-lo < tie {
			break
		}
	}
	return (lo + hi) / 2
}

// worst is the share of the profits whose mean the worst-tenth rule looks at.
const worst = 0.1

// worstTenth returns the mean profit in the worst tenth of the profits.
func (p *Problem) worstTenth(total float64) float64 {
	if p.Resale.Certain() {
		return prob.WorstMean(p.profits(total), worst)
	}
	v := p.Quantile(worst, total)
	c, partial := p.lower(v, total)
	return (partial + (worst-c)*v) / worst
}

// profits returns the sorted profits of the scenarios at a certain resale price.
func (p *Problem) profits(total float64) []float64 {
	net := p.Resale.Mean()*(1-p.SellPercent) - p.SellFlat - p.Allowance
	out := make([]float64, len(p.groups))
	for i, g := range p.groups {
		out[i] = net - g.cost - total*g.growth
	}
	sort.Float64s(out)
	return out
}

// span returns the least and the greatest profit that there can be.
func (p *Problem) span(total float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	worst, best := p.Resale.Quantile(0)*(1-p.SellPercent), p.Resale.Quantile(1)*(1-p.SellPercent)
	for _, g := range p.groups {
		out := p.SellFlat + p.Allowance + g.cost + total*g.growth
		lo, hi = math.Min(lo, worst-out), math.Max(hi, best-out)
	}
	return lo, hi
}
