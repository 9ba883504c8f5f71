package learn

import (
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
