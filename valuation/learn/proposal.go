package learn

import (
	"math"
	"strings"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Proposal is one factor as it stands and as the builds would have it.
type Proposal struct {
	Key      string     `json:"key"`  // "hours/body", "parts/used", "materials", "risk/rail_end_bent", ...
	Name     string     `json:"name"` // in words
	Unit     Unit       `json:"unit"`
	Starter  Value      `json:"starter"`  // before anything was learned
	Now      Value      `json:"now"`      // in force
	Proposed Value      `json:"proposed"` // what Apply would put in force
	Evidence []Evidence `json:"evidence"` // the buys, oldest first; none: all that moves it comes from similar factors
	Weight   float64    `json:"weight"`   // buys that count, old ones faded
	Alone    *float64   `json:"alone"`    // what the buys alone would say; nil: nothing
	Pull     float64    `json:"pull"`     // share of the way from the starter value to Alone, 0..1
	Why      []string   `json:"why"`      // how far it moves and why, in words
	Buys     int        `json:"buys"`     // that speak of it

	Counts [2]float64 `json:"-"` // of a chance: the starter's

	put func(*Factors) // takes the proposal over
}

// Unit says how a factor's values read.
type Unit string

// The units of factors.
const (
	RatioUnit  Unit = "ratio"  // actual / foretold
	ChanceUnit Unit = "chance" // 0..1
	LoadUnit   Unit = "loading"
)

// Value is a factor with the range in which the truth lies with a chance of 80 %, and its spread where it has one: of a
// ratio the log sd beyond the forecast's own range, of the resale price the factor on the forecast's spread.
type Value struct {
	At     float64  `json:"at"`
	Low    float64  `json:"low"`
	High   float64  `json:"high"`
	Spread *float64 `json:"spread"`
}

// Evidence is what one build says of a factor.
type Evidence struct {
	Build  int64    `json:"build"`
	Name   string   `json:"name"`
	On     lot.Date `json:"on"`
	Says   float64  `json:"says"`   // ratio of actual to foretold; of a risk 1 found, 0 not there
	Weight float64  `json:"weight"` // 0..1, faded with age
}

// EnoughBuys is how many buys a factor needs before it may move a bid by two steps or more without being taken knowingly. Ours.
const EnoughBuys = 5

// Toward returns the factors a share of the way from now to what the proposal would put in force: 0 is now, 1 all of it. Factors go by
// their logarithms, chances by their counts.
func Toward(now Factors, p Proposal, share float64) Factors {
	after := Apply(now, p)
	if share >= 1 {
		return after
	}
	out := now.Clone()
	between := func(a, b float64) float64 { return a + share*(b-a) }
	scaled := func(a, b float64) float64 { return math.Exp(between(math.Log(a), math.Log(b))) }
	ratio := func(a, b *Ratio) *Ratio {
		if b == nil {
			return a
		}
		before := Ratio{Factor: 1}
		if a != nil {
			before = *a
		}
		return &Ratio{scaled(before.Factor, b.Factor), between(before.LogSD, b.LogSD), between(before.Known, b.Known), b.When, b.From}
	}
	for _, r := range []struct{ to, a, b **Ratio }{{&out.Materials, &now.Materials, &after.Materials},
		{&out.Outside, &now.Outside, &after.Outside},
		{&out.Hidden, &now.Hidden, &after.Hidden}, {&out.AskedToSold, &now.AskedToSold, &after.AskedToSold},
		{&out.BrandDiscount, &now.BrandDiscount, &after.BrandDiscount}, {&out.DaysToSell, &now.DaysToSell, &after.DaysToSell}} {
		*r.to = ratio(*r.a, *r.b)
	}
	out.Hours, out.Parts = eachToward(now.Hours, after.Hours, ratio), eachToward(now.Parts, after.Parts, ratio)
	if b := after.Resale; b != nil {
		before := Bias{Factor: 1, Spread: 1}
		if now.Resale != nil {
			before = *now.Resale
		}
		out.Resale = &Bias{scaled(before.Factor, b.Factor), scaled(before.Spread, b.Spread), b.When, b.From}
	}
	return out.soft(now, after, p, between)
}

// soft puts the share of a chance or of the loading into the factors.
func (f Factors) soft(now, after Factors, p Proposal, between func(a, b float64) float64) Factors {
	id := strings.TrimPrefix(p.Key, "risk/")
	if to, ok := after.Risks[id]; ok && id != p.Key {
		before, had := now.Risks[id]
		if !had {
			before = Chance{A: p.Counts[0], B: p.Counts[1]}
		}
		if f.Risks == nil {
			f.Risks = map[string]Chance{}
		}
		f.Risks[id] = Chance{between(before.A, to.A), between(before.B, to.B), to.When, to.From}
	}
	if l := after.Loading; l != nil {
		f.Loading = &Loading{between(p.Now.At, l.Value), l.When, l.From}
	}
	return f
}

func eachToward(now, after map[string]Ratio, ratio func(a, b *Ratio) *Ratio) map[string]Ratio {
	if after == nil {
		return nil
	}
	out := map[string]Ratio{}
	for key, b := range after {
		var before *Ratio
		if a, ok := now[key]; ok {
			before = &a
		}
		out[key] = *ratio(before, &b)
	}
	return out
}

// Apply returns the factors with one proposal taken over; current is left alone.
func Apply(current Factors, p Proposal) Factors {
	f := current.Clone()
	if p.put != nil {
		p.put(&f)
	}
	return f
}

// Starter is what is believed before any buy.
type Starter struct {
	Risks         []StarterRisk
	AskedToSold   prob.Three
	BrandDiscount prob.Three
	Loading       float64
	OwnShare      float64 // 0: none is proposed
}

// StarterRisk is a risk of the catalogue: counts A times present and B times absent, and the kind by which it is similar
// to others.
type StarterRisk struct {
	ID, Name, Kind string
	A, B           float64
}

// Selection says what no figure drawn from past buys can show.
const Selection = "Only lots that you won are seen. Whoever wins is mostly the one who rated the lot highest, so won lots " +
	"turn out worse than lots at large; lots that you lost or passed tell nothing of their damage, cost or resale price."
