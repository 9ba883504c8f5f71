package bid

import (
	"math"

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
	Grown  []float64 // the price on the day of sale, as a multiple of Resale; nil: 1
	Drawn  []float64 // put to the cost where profits are read: what draws the common doubt in; its mean is nothing; nil: none
	At     []uint8   // 0: finished and sold; k: stopped, for the money of Ways[k-1]; nil: all finished

	Resale      prob.Table
	SellPercent float64 // fraction of the price, below 1
	SellFlat    float64
	Ways        []prob.Table // what each way out brings, net of selling
	CapitalRate float64      // a year
	Allowance   float64      // winner's allowance, money

	Terms    invoice.Terms
	Steps    []invoice.Step
	Currency money.Currency
	Rules    Rules

	cost, days, hours, labour float64 // means
	cash90, days90            float64
	grown, finished           float64 // mean of Grown, nothing where stopped; share that is finished
	got                       float64 // mean money of the ways out
	groups                    [][]group
}

// prepare works out what does not depend on the bid.
func (p *Problem) prepare() {
	p.cost, p.days, p.hours, p.labour = prob.Mean(p.Cost), prob.Mean(p.Days), prob.Mean(p.Hours), prob.Mean(p.Labour)
	p.cash90 = prob.Quantiles(p.Cash, 0.9)[0]
	p.days90 = prob.Quantiles(p.Days, 0.9)[0]
	p.grown, p.finished, p.got = 0, 0, 0
	n := float64(len(p.Cost))
	for i := range p.Cost {
		if k := p.End(i); k > 0 {
			p.got += p.Ways[k-1].Mean() / n
			continue
		}
		p.finished += 1 / n
		p.grown += p.Multiple(i) / n
	}
	p.group()
}

// End returns how scenario i ends, as [Problem.At] has it.
func (p *Problem) End(i int) int {
	if p.At == nil {
		return 0
	}
	return int(p.At[i])
}

// Multiple returns the price on the day of sale of scenario i as a multiple of Resale.
func (p *Problem) Multiple(i int) float64 {
	if p.Grown == nil {
		return 1
	}
	return p.Grown[i]
}

// price returns what a scenario with that end brings, before the price has moved and selling is paid.
func (p *Problem) price(end int) *prob.Table {
	if end == 0 {
		return &p.Resale
	}
	return &p.Ways[end-1]
}

// kept returns what of the price of its end stays in scenario i, as a multiple.
func (p *Problem) kept(i int) float64 {
	if p.End(i) > 0 {
		return 1
	}
	return p.Multiple(i) * (1 - p.SellPercent)
}

// fixed returns what scenario i costs whatever is bid and paid, the allowance counted in.
func (p *Problem) fixed(i int) float64 {
	out := p.Cost[i] + p.Allowance
	if p.Drawn != nil {
		out += p.Drawn[i]
	}
	if p.End(i) == 0 {
		out += p.SellFlat
	}
	return out
}

// growth returns what a unit of money out costs with its capital over the days of scenario i.
func (p *Problem) growth(i int) float64 { return 1 + p.CapitalRate*p.Days[i]/365 }

// capital returns the mean capital cost of an invoice total.
func (p *Problem) capital(total float64) float64 { return total * p.CapitalRate * p.days / 365 }

// sold returns what the sale of the finished vehicle brings on average, nothing where it is not finished.
func (p *Problem) sold() float64 { return p.Resale.Mean() * p.grown }

// selling returns the mean cost of the sale.
func (p *Problem) selling() float64 { return p.sold()*p.SellPercent + p.SellFlat*p.finished }

// outlay returns the expected outlay: every cost, selling, own labour and capital included.
func (p *Problem) outlay(total float64) float64 {
	return p.selling() + p.cost + total + p.capital(total)
}

// mean returns the expected profit after the winner's allowance.
func (p *Problem) mean(total float64) float64 {
	return p.sold() + p.got - p.outlay(total) - p.Allowance
}

// LossChance returns P(profit < 0) at an invoice total.
func (p *Problem) LossChance(total float64) float64 {
	chance, _ := p.lower(0, total)
	return chance
}

// lower returns the chance of a profit below v and the partial expectation of the profit there.
func (p *Problem) lower(v, total float64) (chance, partial float64) {
	for end, groups := range p.groups {
		price := p.price(end).Walk()
		for _, g := range groups {
			out := g.cost + total*g.growth
			c, b := price.Lower((v + out) / g.kept)
			chance += g.count * c
			partial += g.count * (g.kept*b - c*out)
		}
	}
	n := float64(len(p.Cost))
	return chance / n, partial / n
}

// Quantile returns the profit below which a tenth (q = 0.1), a half ... of the profits lie.
func (p *Problem) Quantile(q, total float64) float64 {
	if p.certain() {
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
	if p.certain() {
		return prob.WorstMean(p.profits(total), worst)
	}
	v := p.Quantile(worst, total)
	c, partial := p.lower(v, total)
	return (partial + (worst-c)*v) / worst
}

// certain reports whether what each scenario brings is certain.
func (p *Problem) certain() bool {
	for end, groups := range p.groups {
		if len(groups) > 0 && !p.price(end).Certain() {
			return false
		}
	}
	return true
}

// profits returns the sorted profits of the scenarios, which bring what is certain.
func (p *Problem) profits(total float64) []float64 {
	var out []float64
	for end, groups := range p.groups {
		price := p.price(end).Mean()
		for _, g := range groups {
			out = append(out, g.kept*price-g.cost-total*g.growth)
		}
	}
	return prob.Sorted(out)
}

// span returns the least and the greatest profit that there can be.
func (p *Problem) span(total float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for end, groups := range p.groups {
		worst, best := p.price(end).Quantile(0), p.price(end).Quantile(1)
		for _, g := range groups {
			out := g.cost + total*g.growth
			lo, hi = math.Min(lo, g.kept*worst-out), math.Max(hi, g.kept*best-out)
		}
	}
	return lo, hi
}

// highest returns a price that no scenario brings more than.
func (p *Problem) highest() float64 {
	most := 0.0
	for end, groups := range p.groups {
		best := p.price(end).Quantile(1)
		for _, g := range groups {
			most = math.Max(most, best*g.kept)
		}
	}
	return most
}
