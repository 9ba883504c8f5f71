package hindsight

import (
	"math"

	"walkline/valuation/learn"
	"walkline/valuation/money"
	"walkline/valuation/score"
)

// figure is one foretold figure and how to read it and its outcome off a build.
type figure struct {
	key, name string
	money     bool // in units of money, which are added up in one currency only
	foretold  func(*learn.Prediction) learn.Figure
	came      func(learn.Build) (float64, bool)
}

var figures = []figure{
	{"resale", "Resale price", true, func(p *learn.Prediction) learn.Figure { return p.Resale }, resaleCame},
	{"profit", "Profit", true, func(p *learn.Prediction) learn.Figure { return p.Profit }, profitCame},
	{"cost", "Repair and hidden damage", true, func(p *learn.Prediction) learn.Figure { return p.Cost }, costCame},
	{"hours", "My hours", false, func(p *learn.Prediction) learn.Figure { return p.Hours }, hoursCame},
	{"days", "Days from the sale to sold", false, func(p *learn.Prediction) learn.Figure { return p.Days }, daysCame},
}

// levels are the intervals whose coverage is kept.
var levels = []float64{0.5, 0.8, 0.9}

// tenths is the number of bars of a PIT histogram.
const tenths = 10

// sameness is the share of an outcome by which the naive baseline must miss, to be one: outcomes that are all alike have none.
const sameness = 1e-6

// record holds one figure against what came of it; its scores are those of the buys in one currency, where it is money.
func (f figure) record(judged []learn.Build, currency string) FigureRecord {
	r := FigureRecord{Key: f.key, Name: f.name, PIT: make([]int, tenths), Uneven: 1}
	inside := make([]int, len(levels))
	var came []float64
	for _, b := range judged {
		said := f.foretold(Restated(b.Foretold, b.Hammer, b.Currency))
		x, known := f.came(b)
		if !known || !said.Known() || said.Q[0] == said.Q[len(said.Q)-1] {
			continue
		}
		r.N++
		for i, level := range levels {
			if x >= score.Quantile(said.Q, (1-level)/2) && x <= score.Quantile(said.Q, (1+level)/2) {
				inside[i]++
			}
		}
		r.PIT[min(tenths-1, int(tenths*score.CDF(said.Q, x)))]++
		if !f.money || b.Currency == currency {
			came = append(came, x)
			r.CRPS += score.CRPS(said.Q, x)
		}
	}
	r.Unscored = r.N - len(came)
	for i, level := range levels {
		r.Coverage = append(r.Coverage, score.NewCoverage(level, inside[i], r.N))
	}
	if r.N == 0 {
		return r
	}
	r.Uneven = score.Uneven(r.PIT)
	if len(came) == 0 {
		return r
	}
	r.CRPS /= float64(len(came))
	if naive := score.Naive(came); len(came) >= 3 && naive > sameness*math.Abs(came[0]) {
		r.Naive = &naive
	}
	return r
}

func resaleCame(b learn.Build) (float64, bool) {
	if b.Came.Sale == nil || b.Came.Sale.Price <= 0 {
		return 0, false
	}
	return b.Major(b.Came.Sale.Price), true
}

// hoursCame returns all own hours.
func hoursCame(b learn.Build) (float64, bool) {
	if b.Came.Hours != nil {
		return *b.Came.Hours, true
	}
	sum := 0.0
	for _, w := range b.Came.Worked {
		sum += w.Hours
	}
	return sum, len(b.Came.Worked) > 0
}

func daysCame(b learn.Build) (float64, bool) {
	if b.Came.Days.All == nil {
		return 0, false
	}
	return *b.Came.Days.All, true
}

// labour returns the own hours at the forecast's rates, each trade at its own where the trades are known.
func labour(b learn.Build) (float64, bool) {
	if len(b.Came.Worked) == 0 {
		h, known := hoursCame(b)
		return h * b.Foretold.Terms.Rate, known
	}
	sum := 0.0
	for _, w := range b.Came.Worked {
		sum += w.Hours * b.Foretold.Terms.Rates[w.Trade]
	}
	return sum, true
}

func costCame(b learn.Build) (float64, bool) {
	labour, known := labour(b)
	c := b.Came
	if !known || c.Repair == nil || c.Hidden == nil {
		return 0, false
	}
	return b.Major(*c.Repair+*c.Hidden) + labour, true
}

func profitCame(b learn.Build) (float64, bool) {
	m, known := moneyIn(b)
	return b.Major(m.Came), known
}

// moneyIn returns the build's profit as foretold and as made, with its causes, and whether all of it is known. Freight, storage, selling
// and holding of which nothing was entered count as they were foretold, as build.Account does.
func moneyIn(b learn.Build) (BuyMoney, bool) {
	c, p := b.Came, Restated(b.Foretold, b.Hammer, b.Currency)
	labour, hours := labour(b)
	days, dated := daysCame(b)
	for _, a := range []*money.Amount{b.Hammer, c.Fees, c.Repair, c.Hidden} {
		if a == nil {
			return BuyMoney{}, false
		}
	}
	cur, known := money.Lookup(b.Currency)
	if !hours || !dated || !known || c.Sale == nil {
		return BuyMoney{}, false
	}
	freight, storage, selling := or(c.Freight, p.Money.Freight), or(c.Storage, p.Money.Storage), or(c.Selling, p.Selling(c.Sale.Price))
	holding := or(c.Holding, cur.FromMajor(days*p.Terms.HoldingPerDay))
	capital := cur.FromMajor(cur.Major(*b.Hammer+*c.Fees) * p.Terms.CapitalRate * days / 365)
	work := cur.FromMajor(labour)
	l := p.Money
	m := BuyMoney{Build: b.ID, Name: b.Name, Foretold: l.Profit(p.At)}
	m.Causes = []Cause{
		{"Resale", c.Sale.Price - l.Resale + l.Selling - selling},
		{"Repair", l.Repair - *c.Repair},
		{"My hours", l.Labour - work},
		{"Hidden damage", l.Hidden - *c.Hidden},
		{"Freight and storage", l.Freight + l.Storage - freight - storage},
		{"Time", l.Holding + l.Capital - holding - capital},
		{"Price and fees", l.Fees + p.At - *c.Fees - *b.Hammer},
		{"Winner's allowance", l.Allowance},
	}
	m.Came = c.Sale.Price - selling - *c.Repair - *c.Hidden - work - freight - storage - holding - capital - *c.Fees - *b.Hammer
	return m, true
}

// or returns an amount, or what it is taken for where it is not known.
func or(a *money.Amount, unknown money.Amount) money.Amount {
	if a == nil {
		return unknown
	}
	return *a
}

// assumed reports whether the build's money counts freight, storage or selling as foretold, for nothing was entered of it.
func assumed(b learn.Build) bool {
	c, l := b.Came, b.Foretold.Money
	return c.Freight == nil && l.Freight != 0 || c.Storage == nil && l.Storage != 0 || c.Selling == nil && l.Selling != 0
}

// moneyOf adds the builds' money up.
func moneyOf(judged []learn.Build, currency string) Money {
	out := Money{Currency: currency}
	for _, b := range judged {
		m, known := moneyIn(b)
		if !known || b.Currency != currency {
			continue
		}
		out.Buys = append(out.Buys, m)
		out.Foretold += m.Foretold
		out.Came += m.Came
		if assumed(b) {
			out.Assumed++
		}
		if out.Causes == nil {
			out.Causes = make([]Cause, len(m.Causes))
		}
		for i, c := range m.Causes {
			out.Causes[i] = Cause{c.Name, out.Causes[i].Difference + c.Difference}
		}
	}
	return out
}

// riskCalls returns the stated chances of hidden damage that stripping settled.
func riskCalls(builds []learn.Build) []score.Call {
	var out []score.Call
	for _, b := range builds {
		if b.Foretold == nil || b.Ending == learn.LostTo {
			continue
		}
		for _, r := range b.Foretold.Risks {
			if seen := b.Came.Risks[r.ID]; seen == learn.Found || seen == learn.NotThere {
				out = append(out, score.Call{Chance: r.Chance, Came: seen == learn.Found})
			}
		}
	}
	return out
}

// lossCalls returns the stated chances of a loss of the buys whose profit is known.
func lossCalls(judged []learn.Build) []score.Call {
	var out []score.Call
	for _, b := range judged {
		said := Restated(b.Foretold, b.Hammer, b.Currency).LossChance
		if m, known := moneyIn(b); known && !math.IsNaN(said) {
			out = append(out, score.Call{Chance: said, Came: m.Came < 0})
		}
	}
	return out
}

// Made returns the profit that a finished and sold build made, nil where it is not known whole.
func Made(b learn.Build) *money.Amount {
	if b.Ending != learn.Sold || b.Foretold == nil {
		return nil
	}
	m, known := moneyIn(b)
	if !known {
		return nil
	}
	return &m.Came
}
