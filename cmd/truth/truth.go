package truth

import (
	"math"
	"math/rand/v2"

	"walkline/valuation"
	"walkline/valuation/learn"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Truth is what the shop is really like. Invented, for the simulation alone.
type Truth struct {
	Factors learn.Factors
	odds    map[string]float64 // by kind of risk: of damage being there, against the starter chance
}

const (
	scatter   = 0.25 // log sd of a kind's ratio about the shop's own, beyond the items' spread
	loading   = 0.45
	askedSD   = 0.04
	trueBias  = 0.95 // resale price / forecast
	trueWidth = 1.25 // spread of the resale price / the forecast's
	trueDays  = 1.5
	trueAsked = 0.98
)

// New returns the truth beside the starter values.
func New(start learn.Starter) Truth {
	ratio := func(x float64) learn.Ratio { return learn.Ratio{Factor: x, LogSD: scatter} }
	at := func(x float64) *learn.Ratio { r := ratio(x); return &r }
	t := Truth{odds: map[string]float64{"body": 1.6, "structure": 2.2, "mechanical": 0.7, "electrical": 1.4, "paint": 1, "trim": 1}}
	t.Factors = learn.Factors{
		Hours: map[string]learn.Ratio{"body": ratio(1.3), "structure": ratio(1.2), "mechanical": ratio(0.95), "paint": ratio(1.45),
			"electrical": ratio(1.25), "trim": ratio(1.1)},
		Parts: map[string]learn.Ratio{"used": ratio(1.15), "new_aftermarket": ratio(0.95), "new_maker": ratio(1.05), "repaired": ratio(1.1),
			"made": ratio(1.2)},
		Materials: at(1.35), Outside: at(1.1), Hidden: at(1.25), Resale: &learn.Bias{Factor: trueBias, Spread: trueWidth},
		AskedToSold: at(trueAsked), DaysToSell: at(trueDays), Risks: map[string]learn.Chance{}, Loading: &learn.Loading{Value: loading},
	}
	for _, r := range start.Risks {
		odds := r.A / r.B * t.oddsOf(r.Kind)
		p := odds / (1 + odds)
		t.Factors.Risks[r.ID] = learn.Chance{A: p * (r.A + r.B), B: (1 - p) * (r.A + r.B)}
	}
	return t
}

func (t Truth) oddsOf(kind string) float64 {
	if x, ok := t.odds[kind]; ok {
		return x
	}
	return 1
}

// life is one lot under way in the shop.
type life struct {
	Truth
	rng           *rand.Rand
	p             *learn.Prediction // made with the starter values
	seen, scatter float64           // common scores of the lot: of its items, and of the shop's own scatter
	kinds         map[string]float64
	came          learn.Came
}

// Live draws what comes of a lot that was foretold with the starter values.
func (t Truth) Live(p *learn.Prediction, start learn.Starter, rng *rand.Rand) learn.Came {
	l := life{Truth: t, rng: rng, p: p, seen: rng.NormFloat64(), scatter: rng.NormFloat64(), kinds: map[string]float64{}}
	l.risks(start)
	l.lines()
	l.sums()
	l.sell()
	return l.came
}

// score draws a standard normal that leans on a common score.
func (l *life) score(common float64) float64 {
	return loading*common + math.Sqrt(1-loading*loading)*l.rng.NormFloat64()
}

// risks draws which hidden damage is there.
func (l *life) risks(start learn.Starter) {
	kind := map[string]string{}
	for _, r := range start.Risks {
		kind[r.ID] = r.Kind
	}
	l.came.Risks = map[string]learn.Seen{}
	for _, r := range l.p.Risks {
		odds := r.Chance / (1 - r.Chance) * l.oddsOf(kind[r.ID])
		l.came.Risks[r.ID] = learn.NotThere
		if l.score(l.seen) > prob.Edge(odds/(1+odds)) {
			l.came.Risks[r.ID] = learn.Found
		}
	}
}

// lines draws the hours and the money of what is needed; of a part's sources one is taken.
func (l *life) lines() {
	needed, taken := map[string]float64{}, map[string]float64{}
	for _, i := range l.p.Items {
		switch {
		case i.Risk != "":
			if l.came.Risks[i.Risk] == learn.Found {
				l.book(i)
			}
			continue
		case i.Kind != learn.PartKind:
			u, drawn := needed[i.Line]
			if !drawn {
				u = l.rng.Float64()
				needed[i.Line] = u
			}
			if u < i.Chance {
				l.book(i)
			}
			continue
		}
		part := i.Line + "/" + i.Part
		if _, drawn := taken[part]; !drawn {
			taken[part] = l.rng.Float64()
		}
		if before := taken[part]; before >= 0 && before < i.Chance {
			l.book(i)
		}
		taken[part] -= i.Chance
	}
}

// book draws one item's figure: lognormal with the item's own mean and sd, times the truth.
func (l *life) book(i learn.Item) {
	cv := i.SD / i.Mean
	s := math.Sqrt(math.Log1p(cv * cv))
	x := i.Mean * math.Exp(s*l.score(l.seen)-s*s/2) * l.ratio(i)
	if i.Kind == learn.HoursKind {
		l.came.Worked = append(l.came.Worked, learn.Worked{Line: i.Line, Risk: i.Risk, Trade: i.Key, Hours: x})
		return
	}
	l.came.Receipts = append(l.came.Receipts, learn.Receipt{Line: i.Line, Risk: i.Risk, Part: i.Part, Kind: i.Kind, Source: i.Key,
		Paid: cents(x)})
}

// ratio returns the shop's ratio on an item: the truth, and this lot's own scatter of the item's kind.
func (l *life) ratio(i learn.Item) float64 {
	if i.Quoted {
		return 1
	}
	f := map[learn.Kind]*learn.Ratio{learn.MaterialsKind: l.Factors.Materials, learn.OutsideKind: l.Factors.Outside,
		learn.HiddenKind: l.Factors.Hidden}[i.Kind]
	x := 1.0
	switch {
	case i.Kind == learn.HoursKind:
		x = l.Factors.Hours[i.Key].Factor
	case i.Kind == learn.PartKind:
		x = l.Factors.Parts[i.Key].Factor
	default:
		x = f.Factor
	}
	kind := string(i.Kind) + i.Key
	if _, drawn := l.kinds[kind]; !drawn {
		l.kinds[kind] = math.Exp(scatter * l.score(l.scatter))
	}
	return x * l.kinds[kind]
}

// cents returns major units of a currency with two minor digits in minor units.
func cents(x float64) money.Amount { return money.Amount(math.Round(100 * x)) }

// sums adds the bills up; getting home and selling cost what was foretold.
func (l *life) sums() {
	var known, hidden money.Amount
	for _, r := range l.came.Receipts {
		if r.Risk == "" {
			known += r.Paid
		} else {
			hidden += r.Paid
		}
	}
	hours := 0.0
	for _, w := range l.came.Worked {
		hours += w.Hours
	}
	m := l.p.Money
	l.came.Repair, l.came.Hidden, l.came.Hours = &known, &hidden, &hours
	l.came.Freight, l.came.Storage, l.came.Selling = &m.Freight, &m.Storage, &m.Selling
}

// sell draws the price, the price first asked and the days.
func (l *life) sell() {
	q := l.p.Resale.Q
	low, mid, high := q[3], q[11], q[19] // the 10th, 50th and 90th percentiles
	sd := math.Log(high/low) / (2 * prob.NormQuantile(0.9))
	price := mid * trueBias * math.Exp(trueWidth*sd*l.rng.NormFloat64())
	asked := cents(price / (l.p.Terms.AskedToSold * trueAsked * math.Exp(askedSD*l.rng.NormFloat64())))
	l.came.Sale = &learn.Sale{Price: cents(price), Asked: &asked, Brand: l.p.Terms.Brand}
	cv := l.p.Terms.DaysSD / l.p.Terms.DaysToSell
	s := math.Sqrt(math.Log1p(cv*cv) + scatter*scatter)
	sell := l.p.Terms.DaysToSell * trueDays * math.Exp(s*l.rng.NormFloat64()-math.Log1p(cv*cv)/2)
	all := (l.p.Days.Mean-l.p.Terms.DaysToSell)**l.came.Hours/l.p.Hours.Mean + sell
	l.came.Days = learn.Days{Sell: &sell, All: &all}
}

// Buy returns a finished and sold build of a lot that was bought at a hammer price.
func Buy(id int64, p *learn.Prediction, c valuation.Case, came learn.Came, hammer money.Amount) learn.Build {
	cur, _ := money.Lookup(c.Currency)
	fees := c.Buying.Total(hammer, cur).Total - hammer
	came.Fees = &fees
	return learn.Build{ID: id, Currency: c.Currency, Ending: learn.Sold, Closed: c.ValuedOn, Hammer: &hammer, Foretold: p, Came: came}
}
