package bid

import (
	"cmp"
	"math"
	"slices"

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

// group is some scenarios of like outlay, as one: their mean cost and growth, and how many they are.
type group struct{ cost, growth, count float64 }

// fineness is how many groups of scenarios go into one standard deviation of what the sale brings: the spread that is lost
// inside a group then moves a chance by less than 1 in 100,000.
const fineness = 128

// prepare works out what does not depend on the bid.
func (p *Problem) prepare() {
	p.cost, p.days, p.hours, p.labour = prob.Mean(p.Cost), prob.Mean(p.Days), prob.Mean(p.Hours), prob.Mean(p.Labour)
	p.cash90 = prob.Quantiles(p.Cash, 0.9)[0]
	p.days90 = prob.Quantiles(p.Days, 0.9)[0]
	p.group()
}

// group gathers scenarios of like outlay in slices of one width. Outlays are those at the invoice total that breaks even on
// average, so that near it, where rules bind, cost and days both count. Where there would be more slices than scenarios, and
// with a certain resale price, each scenario stays by itself.
func (p *Problem) group() {
	n := len(p.Cost)
	even := math.Max(0, p.Resale.Mean()*(1-p.SellPercent)-p.SellFlat-p.Allowance-p.cost)
	out := make([]float64, n)
	lo, hi := math.Inf(1), math.Inf(-1)
	for i, c := range p.Cost {
		out[i] = c + even*p.growth(i)
		lo, hi = math.Min(lo, out[i]), math.Max(hi, out[i])
	}
	count := (hi - lo) / (p.Resale.SD() * (1 - p.SellPercent)) * fineness
	if p.Resale.Certain() || !(count < float64(n)) {
		p.apart(out)
		return
	}
	p.slice(out, lo, hi, int(count)+1)
}

// apart leaves each scenario by itself, in the order of their outlays.
func (p *Problem) apart(out []float64) {
	n := len(out)
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(out[a], out[b]) })
	p.groups = make([]group, n)
	for k, i := range order {
		p.groups[k] = group{p.Cost[i], p.growth(i), 1}
	}
}

// slice gathers the scenarios in m slices of their outlays from lo to hi.
func (p *Problem) slice(out []float64, lo, hi float64, m int) {
	all := make([]group, m)
	scale := float64(m) / math.Max(hi-lo, tie)
	for i, x := range out {
		g := &all[min(m-1, int((x-lo)*scale))]
		g.cost += p.Cost[i]
		g.growth += p.growth(i)
		g.count++
	}
	p.groups = all[:0]
	for _, g := range all {
		if g.count > 0 {
			p.groups = append(p.groups, group{g.cost / g.count, g.growth / g.count, g.count})
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
	chance, _ := p.lower(0, total)
	return chance
}

// lower returns the chance of a profit below v and the partial expectation of the profit there.
func (p *Problem) lower(v, total float64) (chance, partial float64) {
	price := p.Resale.Walk()
	kept, fixed := 1-p.SellPercent, p.SellFlat+p.Allowance
	for _, g := range p.groups {
		out := fixed + g.cost + total*g.growth
		c, b := price.Lower((v + out) / kept)
		chance += g.count * c
		partial += g.count * (kept*b - c*out)
	}
	n := float64(len(p.Cost))
	return chance / n, partial / n
}

// Quantile returns the profit below which a tenth (q = 0.1), a half ... of the profits lie.
func (p *Problem) Quantile(q, total float64) float64 {
	if p.Resale.Certain() {
		return prob.Quantile(p.profits(total), q)
	}
	lo, hi := p.span(total)
	return turn(lo-1, hi+1, tie, func(v float64) float64 {
		c, _ := p.lower(v, total)
		return c - q
	})
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
	slices.Sort(out)
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
