package valuation

import (
	"maps"
	"math"

	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
	"walkline/valuation/score"
)

// Foretell returns what is foretold of a lot, figure by figure, to be frozen with the bid and held against what comes. The
// figures stand at the given hammer price; nil: at the walk-away bid, or at the lowest legal bid where there is none.
// Limits and errors: those of [Value].
func Foretell(c Case, k Knowledge, hammer *money.Amount) (learn.Prediction, error) {
	return NewMemory().Foretell(c, k, hammer)
}

// Foretell is [Foretell] by way of the memory.
func (m *Memory) Foretell(c Case, k Knowledge, hammer *money.Amount) (learn.Prediction, error) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	w := work{c: c, k: k}
	if err := w.run(m); err != nil {
		return learn.Prediction{}, err
	}
	at := w.found.Lowest
	walk := w.options[w.best].walk()
	switch {
	case hammer != nil:
		at = *hammer
	case walk != nil:
		at = *walk
	}
	return w.prediction(walk, at), nil
}

// prediction writes the valuation down as a prediction at a hammer price.
func (w *work) prediction(walk *money.Amount, at money.Amount) learn.Prediction {
	o := w.played
	total := w.currency.Major(w.c.Buying.Total(at, w.currency).Total)
	cost := make([]float64, len(o.Cost))
	for i := range cost {
		cost[i] = o.Repair[i] + o.Hidden[i]
	}
	p := learn.Prediction{On: w.c.ValuedOn, Engine: Engine, Factors: w.c.learned().Clone(), At: at, LossChance: w.problem.LossChance(total),
		Cost: sampled(cost), Hours: sampled(o.Hours), Days: sampled(o.Days), Terms: w.foretoldTerms(), Money: w.ledger(at)}
	terms := w.c.Clone().Buying.Terms
	p.Invoice = &terms
	if walk != nil {
		bid := *walk
		p.WalkAway = &bid
	}
	p.Resale.Mean, p.Profit.Mean = w.market.table.Mean(), w.problem.Judge(at).Mean
	for _, u := range score.Chances {
		p.Resale.Q = append(p.Resale.Q, w.market.table.Quantile(u))
		p.Profit.Q = append(p.Profit.Q, w.problem.Quantile(u, total))
	}
	if len(w.parts) > 0 {
		return p // a first guess over surveys foretells no line and no risk
	}
	for _, l := range w.lines {
		p.Items = append(p.Items, w.lineItems(l)...)
	}
	for i, r := range w.risks {
		p.Items = append(p.Items, w.riskItems(i)...)
		p.Risks = append(p.Risks, learn.Risk{ID: r.ID, Name: r.Name, Base: r.Chance.Mean(), Chance: w.chances[i]})
	}
	return p
}

// sampled returns the figure of a column of scenarios.
func sampled(xs []float64) learn.Figure {
	s := prob.Sorted(xs)
	f := learn.Figure{Mean: prob.Mean(xs)}
	for _, u := range score.Chances {
		f.Q = append(f.Q, prob.Quantile(s, u))
	}
	return f
}

// foretoldTerms returns the beliefs and rates that the forecast rests on. The winner's allowance is split between the
// resale price and the cost as the two share its variance.
func (w *work) foretoldTerms() learn.Terms {
	c := w.c
	sell := c.Time.DaysToSell.Times(factorOf(c.learned().DaysToSell))
	t := learn.Terms{AskedToSold: c.askedToSold().Mean(), AskedShare: w.share(asked), Brand: c.subject().Brand, BrandShare: w.brandShare(),
		DaysToSell: sell.Mean(), DaysSD: math.Sqrt(sell.Variance()),
		Rates: maps.Clone(c.Labour.Rates), HoldingPerDay: c.Time.HoldingPerDay, CapitalRate: c.Time.CapitalRate, SellPercent: c.Selling.Percent}
	if hours := prob.Mean(w.played.Hours); hours > 0 {
		t.Rate = prob.Mean(w.played.Labour) / hours
	}
	level, factor, _, _ := w.doubt(&w.problem)
	if all := level*level + factor; all > 0 {
		t.ResaleAllow = w.problem.Allowance * level * level / all
		t.CostAllow = w.problem.Allowance - t.ResaleAllow
		t.OwnShare = w.c.OwnShare()
	}
	return t
}

// asked reports whether a comparable's price was asked and not paid; unbranded, whether its title is without a brand.
func asked(r resale.Row) bool     { return r.Kind != "sold" }
func unbranded(r resale.Row) bool { return r.Title == "" || r.Title == "clear" }

// share returns the share of some comparables among the weights of those that are used; 0 for a bare guess.
func (w *work) share(of func(resale.Row) bool) float64 {
	var some, all float64
	for _, a := range w.market.price.Adjusted {
		if !a.Used || a.Row < 0 || a.Row >= len(w.c.Resale.Rows) {
			continue
		}
		all += a.Weight
		if of(w.c.Resale.Rows[a.Row]) {
			some += a.Weight
		}
	}
	if all == 0 {
		return 0
	}
	return some / all
}

// brandShare returns how far the price hangs on the belief about the brand's discount: as far as clear titles carry it.
func (w *work) brandShare() float64 {
	if brand := w.c.subject().Brand; brand == "" || brand == "clear" {
		return 0
	}
	return w.share(unbranded)
}

// ledger returns the expected money at a hammer price.
func (w *work) ledger(at money.Amount) learn.Ledger {
	m, o, round := w.finish.Means(at), w.played, w.currency.FromMajor
	unseen := prob.Mean(o.HiddenLabour)
	return learn.Ledger{
		Resale: round(m.Resale + m.Growing), Selling: round(m.Selling), Repair: round(prob.Mean(o.Repair) - m.Labour + unseen),
		Hidden: round(prob.Mean(o.Hidden) - unseen), Labour: round(m.Labour), Freight: round(prob.Mean(o.Freight)),
		Storage: round(prob.Mean(o.Storage)), Holding: round(prob.Mean(o.Holding)), Capital: round(m.Capital),
		Allowance: round(w.problem.Allowance),
		Fees:      w.c.Buying.Total(at, w.currency).Total - at,
	}
}

// lineItems returns the foretold figures of one line.
func (w *work) lineItems(l repair.Line) []learn.Item {
	rho := repair.Or(l.Loading, w.c.loading())
	_, need := w.belief.Known(prob.Three{}, repair.Or(l.Chance, 1), rho)
	mean := func(t prob.Three) float64 {
		m, _ := w.belief.Known(t, 1, rho)
		return m
	}
	item := func(kind learn.Kind, key, part string, chance float64, ts ...prob.Three) learn.Item {
		i := learn.Item{Line: l.ID, Job: l.Job, Kind: kind, Key: key, Part: part, Chance: chance}
		for _, t := range ts {
			i.Mean += mean(t)
			i.SD += t.Variance()
		}
		i.SD = math.Sqrt(i.SD)
		return i
	}
	chief, extra := l.ChiefTrade(), 0.0
	var out []learn.Item
	for _, p := range l.Parts {
		left := 1.0
		for _, j := range p.Order(w.c.Labour.Rates[chief], w.c.Time.HoldingPerDay) {
			o := p.Options[j]
			taken := left * repair.Or(o.Chance, 1)
			left -= taken
			i := item(learn.PartKind, o.Source, p.Name, need*taken, o.Asked(), o.Freight)
			i.Mean -= o.CoreBack.Mean()
			i.Quoted = o.Given()
			extra += taken * mean(o.ExtraHours)
			out = append(out, i)
		}
		if p.Fallback != nil && left > 0 {
			i := item(learn.PartKind, "fallback", p.Name, need*left, p.Fallback.Price)
			i.Quoted = true
			extra += left * mean(p.Fallback.Hours)
			out = append(out, i)
		}
	}
	for _, trade := range lot.Trades {
		i := item(learn.HoursKind, trade, "", need, l.Hours[trade])
		if trade == chief {
			i.Mean += extra
		}
		out = append(out, i)
	}
	return keep(append(out, item(learn.MaterialsKind, "", "", need, l.Materials), item(learn.OutsideKind, "", "", need, l.Outside)))
}

// riskItems returns the foretold figures of one risk, given that the damage is there.
func (w *work) riskItems(at int) []learn.Item {
	r, chance := w.risks[at], w.chances[at]
	item := func(kind learn.Kind, key string, mean float64, t prob.Three) learn.Item {
		return learn.Item{Risk: r.ID, Job: r.Name, Kind: kind, Key: key, Chance: chance, Mean: mean, SD: math.Sqrt(t.Variance())}
	}
	out := []learn.Item{item(learn.HiddenKind, "", w.belief.IfPresent(at, nil).Cash, r.Cost)}
	for _, trade := range lot.Trades {
		hours := w.belief.IfPresent(at, map[string]float64{trade: 1}).Labour
		out = append(out, item(learn.HoursKind, trade, hours, r.Hours[trade]))
	}
	return keep(out)
}

// keep returns the items that come to anything.
func keep(items []learn.Item) []learn.Item {
	var out []learn.Item
	for _, i := range items {
		if i.Mean > 0 && i.Chance > 0 {
			out = append(out, i)
		}
	}
	return out
}
