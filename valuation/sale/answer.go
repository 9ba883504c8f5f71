package sale

import "walkline/valuation/money"

// Answer returns the bids and what following them brings.
func (p *Plan) Answer() Answer {
	start := p.start()
	a := Answer{Exact: p.Exact()}
	var c *course
	if a.Exact {
		c = p.forward()
		a.Expected = p.value.at(0, start)
	} else {
		s := p.simulate(start, runs)
		c, a.Expected, a.Error = s.course, s.mean, s.err
	}
	more := p.more(start)
	a.Thousand, a.TenHours, a.Bay = more[0], more[1], more[2]
	for i := range p.offers {
		a.Lots = append(a.Lots, p.bid(i, start, c))
		if c.reach[i] == 0 && a.Lots[i].Bid == nil {
			a.Leave = append(a.Leave, p.sale.Lots[i].ID)
		}
	}
	return a
}

// more returns what each extra brings. Simulated, both sides follow the same draws.
func (p *Plan) more(start state) []float64 {
	value := func(s state) float64 { return p.value.at(0, s) }
	if !p.Exact() {
		value = func(s state) float64 { return p.simulate(s, moreRuns).mean }
	}
	base := value(start)
	var out []float64
	for _, extra := range extras(p.sale.Currency) {
		out = append(out, value(start.plus(extra))-base)
	}
	return out
}

// bid says what stands of one lot, with what there is before the sale.
func (p *Plan) bid(i int, s state, c *course) Bid {
	o := &p.offers[i]
	b := Bid{ID: p.sale.Lots[i].ID, Reach: min(1, c.reach[i]), AfterWin: o.bidOf(c.middle(i))}
	count := p.stop(i, s)
	b.By = p.bound(i, count, s)
	if count == 0 {
		return b
	}
	b.Bid = o.bidOf(count)
	b.Expected, b.WinChance = o.mean(count)
	b.CashFull = left(s, o, count-1)
	sum := 0.0
	for k := range count {
		if sum += o.chance[k]; sum > 0 && 2*sum >= b.WinChance {
			b.CashMiddle = left(s, o, k)
			break
		}
	}
	return b
}

// bidOf returns the bid that wins the first count prices, nil for none.
func (o *offer) bidOf(count int) *money.Amount {
	if count == 0 {
		return nil
	}
	return &o.bids[count-1]
}

// left returns the cash after a win at the k-th price.
func left(s state, o *offer, k int) *money.Amount {
	a := money.Amount(s.after(o, k).cash - o.owed)
	return &a
}
