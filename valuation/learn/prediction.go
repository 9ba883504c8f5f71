package learn

import (
	"math"

	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/score"
)

// Prediction is what was foretold of a buy, as frozen when it was bid for: it never changes. Figures are stated at the
// hammer price At, with the factors that were in force.
type Prediction struct {
	On       lot.Date      `json:"on"` // day of the valuation
	Engine   string        `json:"engine"`
	Factors  Factors       `json:"factors"`   // in force then
	WalkAway *money.Amount `json:"walk_away"` // nil: do not bid
	At       money.Amount  `json:"at"`        // hammer price of the figures below

	Resale     Figure  `json:"resale"` // price of the finished vehicle, major units
	Profit     Figure  `json:"profit"` // after the winner's allowance, major units
	Cost       Figure  `json:"cost"`   // repair and hidden damage, own labour included, major units
	Hours      Figure  `json:"hours"`  // own hours
	Days       Figure  `json:"days"`   // bought to sold
	LossChance float64 `json:"loss_chance"`

	Items []Item `json:"items"`
	Risks []Risk `json:"risks"`
	Terms Terms  `json:"terms"`
	Money Ledger `json:"money"`

	Invoice *invoice.Terms `json:"invoice"` // what the sale charges; nil: not kept
}

// Visible returns the mean cost of the work that can be seen, own hours at their rates. Units: major units.
func (p Prediction) Visible() float64 {
	sum := 0.0
	for _, i := range p.Items {
		switch {
		case i.Line == "":
		case i.Kind == HoursKind:
			sum += i.Chance * i.Mean * p.Terms.Rates[i.Key]
		default:
			sum += i.Chance * i.Mean
		}
	}
	return sum
}

// Selling returns what selling costs at a price: what was foretold, with the part that goes by the price moved to this one.
func (p Prediction) Selling(price money.Amount) money.Amount {
	return p.Money.Selling + money.Amount(math.Round(float64(price-p.Money.Resale)*p.Terms.SellPercent))
}

// Figure is a foretold distribution: its mean and its quantiles at [score.Chances]. No quantiles: not foretold.
type Figure struct {
	Mean float64   `json:"mean"`
	Q    []float64 `json:"q"`
}

// Known reports whether the figure was foretold.
func (f Figure) Known() bool { return len(f.Q) == len(score.Chances) }

// quantile returns the value below which the figure lies with chance u.
func (f Figure) quantile(u float64) float64 { return score.Quantile(f.Q, u) }

// Item is one foretold figure of a line or a risk: hours of a trade, or money for a part from a source, for materials,
// outside work or hidden damage. Mean and SD are given that it is needed; Chance is that of being needed. Of a part's
// sources, Chance is that of ending up with this one.
type Item struct {
	Line   string  `json:"line"`
	Job    string  `json:"job"` // in words
	Risk   string  `json:"risk"`
	Part   string  `json:"part"`
	Kind   Kind    `json:"kind"`
	Key    string  `json:"key"` // trade of hours, source of a part, else empty
	Chance float64 `json:"chance"`
	Mean   float64 `json:"mean"`   // hours, or money in major units
	SD     float64 `json:"sd"`     // the item's own, without what factors add
	Quoted bool    `json:"quoted"` // a price that was quoted: no factor is on it, and it teaches none
}

// Risk is one foretold hidden risk.
type Risk struct {
	ID     string  `json:"id"`
	Name   string  `json:"name"`
	Base   float64 `json:"base"`   // chance before the findings
	Chance float64 `json:"chance"` // after the findings
}

// Terms are the beliefs and rates of the forecast.
type Terms struct {
	AskedToSold   float64            `json:"asked_to_sold"`  // mean factor
	AskedShare    float64            `json:"asked_share"`    // of the comparables' weight that asking prices have, 0..1
	Brand         string             `json:"brand"`          // title brand at which the sale was foretold
	BrandShare    float64            `json:"brand_share"`    // how far the price hangs on the belief about the brand's discount, 0..1
	DaysToSell    float64            `json:"days_to_sell"`   // mean
	DaysSD        float64            `json:"days_sd"`        // of the days to sell
	Rates         map[string]float64 `json:"rates"`          // money an own hour by trade, major units
	Rate          float64            `json:"rate"`           // mean money an own hour over the foretold hours
	HoldingPerDay float64            `json:"holding_a_day"`  // major units
	CapitalRate   float64            `json:"capital_rate"`   // a year
	SellPercent   float64            `json:"sell_percent"`   // fraction of the price
	ResaleAllow   float64            `json:"resale_allowed"` // part of the winner's allowance that is the resale's, major units
	CostAllow     float64            `json:"cost_allowed"`   // part that is the cost's
	OwnShare      float64            `json:"own_share"`      // in force for the allowance; 0: not kept, and nothing is learned of it
}

// Ledger is the expected money of the forecast at the hammer price, each rounded to the minor unit. Costs are positive.
// Profit is what is left, exactly; the hammer price is in the prediction.
type Ledger struct {
	Resale    money.Amount `json:"resale"`
	Selling   money.Amount `json:"selling"`
	Repair    money.Amount `json:"repair"` // money for known work, own labour not included
	Hidden    money.Amount `json:"hidden"` // money for hidden damage, own labour not included
	Labour    money.Amount `json:"labour"` // own hours at their rates
	Freight   money.Amount `json:"freight"`
	Storage   money.Amount `json:"storage"`
	Holding   money.Amount `json:"holding"`
	Capital   money.Amount `json:"capital"`
	Allowance money.Amount `json:"allowance"` // winner's allowance
	Fees      money.Amount `json:"fees"`      // invoice less the hammer price
}

// Profit returns the expected profit at a hammer price.
func (l Ledger) Profit(hammer money.Amount) money.Amount {
	return l.Resale - l.Selling - l.Repair - l.Hidden - l.Labour - l.Freight - l.Storage - l.Holding - l.Capital -
		l.Allowance - l.Fees - hammer
}
