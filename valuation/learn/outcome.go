package learn

import (
	"math"

	"walkline/valuation/money"
	"walkline/valuation/score"
)

// figure is one foretold figure and how to read it and its outcome off a build.
type figure struct {
	key, name string
	foretold  func(*Prediction) Figure
	came      func(Build) (float64, bool)
}

var figures = []figure{
	{"resale", "Resale price", func(p *Prediction) Figure { return p.Resale }, Build.resaleCame},
	{"profit", "Profit", func(p *Prediction) Figure { return p.Profit }, Build.profitCame},
	{"cost", "Repair and hidden damage", func(p *Prediction) Figure { return p.Cost }, Build.costCame},
	{"hours", "Own hours", func(p *Prediction) Figure { return p.Hours }, Build.hoursCame},
	{"days", "Days from the sale to sold", func(p *Prediction) Figure { return p.Days }, Build.daysCame},
}

// levels are the intervals whose coverage is kept.
var levels = []float64{0.5, 0.8, 0.9}

// tenths is the number of bars of a PIT histogram.
const tenths = 10

// record holds one figure against what came of it.
func (f figure) record(judged []Build) FigureRecord {
	r := FigureRecord{Key: f.key, Name: f.name, PIT: make([]int, tenths), Uneven: 1}
	inside := make([]int, len(levels))
	var came []float64
	for _, b := range judged {
		said := f.foretold(b.Foretold.restated(b.Hammer, b.Currency))
		x, known := f.came(b)
		if !known || !said.Known() || said.Q[0] == said.Q[len(said.Q)-1] {
			continue
		}
		came = append(came, x)
		for i, level := range levels {
			if x >= said.quantile((1-level)/2) && x <= said.quantile((1+level)/2) {
				inside[i]++
			}
		}
		r.PIT[min(tenths-1, int(tenths*score.CDF(said.Q, x)))]++
		r.CRPS += score.CRPS(said.Q, x)
	}
	r.N = len(came)
	for i, level := range levels {
		r.Coverage = append(r.Coverage, score.NewCoverage(level, inside[i], r.N))
	}
	if r.N == 0 {
		return r
	}
	r.CRPS /= float64(r.N)
	r.Uneven = score.Uneven(r.PIT)
	if r.N >= 3 {
		naive := score.Naive(came)
		r.Naive = &naive
	}
	return r
}

func (b Build) resaleCame() (float64, bool) {
	if b.Came.Sale == nil || b.Came.Sale.Price <= 0 {
		return 0, false
	}
	return b.major(b.Came.Sale.Price), true
}

// hoursCame returns all own hours.
func (b Build) hoursCame() (float64, bool) {
	if b.Came.Hours != nil {
		return *b.Came.Hours, true
	}
	sum := 0.0
	for _, w := range b.Came.Worked {
		sum += w.Hours
	}
	return sum, len(b.Came.Worked) > 0
}

func (b Build) daysCame() (float64, bool) {
	if b.Came.Days.All == nil {
		return 0, false
	}
	return *b.Came.Days.All, true
}

// labour returns the own hours at the forecast's rates, each trade at its own where the trades are known.
func (b Build) labour() (float64, bool) {
	if len(b.Came.Worked) == 0 {
		h, known := b.hoursCame()
		return h * b.Foretold.Terms.Rate, known
	}
	sum := 0.0
	for _, w := range b.Came.Worked {
		sum += w.Hours * b.Foretold.Terms.Rates[w.Trade]
	}
	return sum, true
}

func (b Build) costCame() (float64, bool) {
	labour, known := b.labour()
	c := b.Came
	if !known || c.Repair == nil || c.Hidden == nil {
		return 0, false
	}
	return b.major(*c.Repair+*c.Hidden) + labour, true
}

func (b Build) profitCame() (float64, bool) {
	m, known := b.money()
	return b.major(m.Came), known
}

// money returns the build's profit as foretold and as made, with its causes, and whether all of it is known.
func (b Build) money() (BuyMoney, bool) {
	c, p := b.Came, b.Foretold.restated(b.Hammer, b.Currency)
	labour, hours := b.labour()
	days, dated := b.daysCame()
	for _, a := range []*money.Amount{b.Hammer, c.Fees, c.Freight, c.Storage, c.Repair, c.Hidden, c.Selling} {
		if a == nil {
			return BuyMoney{}, false
		}
	}
	cur, known := money.Lookup(b.Currency)
	if !hours || !dated || !known || c.Sale == nil {
		return BuyMoney{}, false
	}
	holding := cur.FromMajor(days * p.Terms.HoldingPerDay)
	if c.Holding != nil {
		holding = *c.Holding
	}
	capital := cur.FromMajor(cur.Major(*b.Hammer+*c.Fees) * p.Terms.CapitalRate * days / 365)
	work := cur.FromMajor(labour)
	l := p.Money
	m := BuyMoney{Build: b.ID, Name: b.Name, Foretold: l.Profit(p.At)}
	m.Causes = []Cause{
		{"Resale", c.Sale.Price - l.Resale + l.Selling - *c.Selling},
		{"Repair", l.Repair - *c.Repair},
		{"Own hours", l.Labour - work},
		{"Hidden damage", l.Hidden - *c.Hidden},
		{"Freight and storage", l.Freight + l.Storage - *c.Freight - *c.Storage},
		{"Time", l.Holding + l.Capital - holding - capital},
		{"Price and fees", l.Fees + p.At - *c.Fees - *b.Hammer},
		{"Winner's allowance", l.Allowance},
	}
	m.Came = c.Sale.Price - *c.Selling - *c.Repair - *c.Hidden - work - *c.Freight - *c.Storage - holding - capital - *c.Fees - *b.Hammer
	return m, true
}

// moneyOf adds the builds' money up.
func moneyOf(judged []Build, currency string) Money {
	out := Money{Currency: currency}
	for _, b := range judged {
		m, known := b.money()
		if !known || b.Currency != currency {
			continue
		}
		out.Buys = append(out.Buys, m)
		out.Foretold += m.Foretold
		out.Came += m.Came
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
func riskCalls(builds []Build) []score.Call {
	var out []score.Call
	for _, b := range builds {
		if b.Foretold == nil || !b.ours() {
			continue
		}
		for _, r := range b.Foretold.Risks {
			if seen := b.Came.Risks[r.ID]; seen == Found || seen == NotThere {
				out = append(out, score.Call{Chance: r.Chance, Came: seen == Found})
			}
		}
	}
	return out
}

// lossCalls returns the stated chances of a loss of the buys whose profit is known.
func lossCalls(judged []Build) []score.Call {
	var out []score.Call
	for _, b := range judged {
		said := b.Foretold.restated(b.Hammer, b.Currency).LossChance
		if m, known := b.money(); known && !math.IsNaN(said) {
			out = append(out, score.Call{Chance: said, Came: m.Came < 0})
		}
	}
	return out
}

// Made returns the profit that a finished and sold build made, nil where it is not known whole.
func (b Build) Made() *money.Amount {
	if b.Ending != Sold || b.Foretold == nil {
		return nil
	}
	m, known := b.money()
	if !known {
		return nil
	}
	return &m.Came
}
