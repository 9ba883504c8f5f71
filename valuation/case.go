package valuation

import (
	"walkline/valuation/bid"
	"walkline/valuation/hidden"
	"walkline/valuation/invoice"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// Format is the version of the case file that this engine reads.
const Format = "walkline-case/1"

// Case is all that one valuation needs. Its JSON keys are those of the case file; package store/casefile reads and writes it.
type Case struct {
	Format   string            `json:"format"`
	Currency string            `json:"currency"`
	ValuedOn lot.Date          `json:"valued_on"`
	Lot      lot.Lot           `json:"lot"`
	Damage   []lot.Damage      `json:"damage"`
	Survey   *lot.Survey       `json:"survey"`   // what else a walk round it says; nil: nothing
	Findings map[string]string `json:"findings"` // finding id -> yes | no
	Repair   Repair            `json:"repair"`
	Hidden   Hidden            `json:"hidden"`
	Resale   Resale            `json:"resale"`
	Buying   Buying            `json:"buying"`
	Time     Time              `json:"time"`
	Selling  Selling           `json:"selling"`
	Labour   Labour            `json:"labour"`
	Market   Market            `json:"market"`
	Rules    bid.Rules         `json:"rules"`
	WaysOut  WaysOut           `json:"ways_out"`
	Run      Run               `json:"run"`
	Factors  *learn.Factors    `json:"factors"` // learned from past buys and accepted; nil: the starter values
}

// Repair is the known work.
type Repair struct {
	UseCatalogue bool          `json:"use_catalogue"`
	Lines        []repair.Line `json:"lines"`
	Donor        *repair.Donor `json:"donor"` // bought whole for its parts; nil: none
}

// Hidden is the work that may be there unseen.
type Hidden struct {
	UseCatalogue  bool          `json:"use_catalogue"`
	Risks         []hidden.Risk `json:"risks"`
	SharedLoading float64       `json:"shared_loading"`
}

// Resale is what the price of the finished vehicle rests on.
type Resale struct {
	Comparables   string                `json:"comparables"` // name of a CSV file beside the case
	Rows          []resale.Row          `json:"rows"`
	Subject       resale.Subject        `json:"subject"`
	BrandDiscount prob.Three            `json:"brand_discount"`
	AskedToSold   prob.Three            `json:"asked_to_sold"`
	Discounts     map[string]prob.Three `json:"discounts"`    // by the cause of the title brand, see [Causes]; missing: starter values
	TrueMileage   *prob.Three           `json:"true_mileage"` // of a reading that can't be trusted, in its unit; nil: up to twice the reading
	Guess         *prob.Three           `json:"guess" unit:"money"`
	// fraction a year by which the price moves while the lot is owned; nil: the fit's age effect
	YearlyChange *prob.Three `json:"yearly_change"`
	Season       []float64   `json:"season"` // of the price, by month from January, against the year's mean; empty: all 1
}

// Buying is what the sale charges and how bids rise.
type Buying struct {
	BidSteps []invoice.Step `json:"bid_steps"`
	invoice.Terms
	Freight prob.Three `json:"freight" unit:"money"`
	Storage Storage    `json:"storage"`
}

// Storage is the yard's charge for a lot not fetched in time.
type Storage struct {
	PerDay   float64    `json:"per_day" unit:"money"`
	FreeDays float64    `json:"free_days"`
	Days     prob.Three `json:"days"`
}

// Time is how the weeks go.
type Time struct {
	HoursPerWeek        float64    `json:"hours_per_week"`
	InspectionQueueDays prob.Three `json:"inspection_queue_days"`
	DaysToSell          prob.Three `json:"days_to_sell"`
	HoldingPerDay       float64    `json:"holding_per_day" unit:"money"`
	CapitalRate         float64    `json:"capital_rate"` // a year
}

// Selling is the cost of the sale.
type Selling struct {
	Percent float64 `json:"percent"` // fraction of the price
	Flat    float64 `json:"flat" unit:"money"`

	// Papers is what title, rebuilt inspection and registration cost together; nil: nobody stated it, and none of it is counted.
	Papers *float64 `json:"papers" unit:"money"`
}

// fixed returns what the sale of a finished vehicle costs at any price.
func (s Selling) fixed() float64 {
	if s.Papers == nil {
		return s.Flat
	}
	return s.Flat + *s.Papers
}

// Labour holds the rate of an own hour by trade.
type Labour struct {
	Rates map[string]float64 `json:"rates" unit:"money"`
}

// Market is who else bids and what the hammer may fall at.
type Market struct {
	Rivals        *int               `json:"rivals"`         // other serious bidders; nil: not known
	UsualRivals   *int               `json:"usual_rivals"`   // the shop's own number that stands in for it; nil: the constant UsualRivals
	ExchangeRates map[string]float64 `json:"exchange_rates"` // what one unit of a catalogue's currency is in the case's, by its code
	HammerGuess   *prob.Three        `json:"hammer_guess" unit:"money"`
	OwnShare      float64            `json:"own_share"` // of the shared doubt, what differs from bidder to bidder, 0..1
	Narrowing     bool               `json:"narrowing"` // to have won draws the shared doubt in
}

// Run sets the simulation.
type Run struct {
	Scenarios        int   `json:"scenarios"`
	Seed             int64 `json:"seed"`
	WinnersAllowance bool  `json:"winners_allowance"`
}

// UsualRivals is how many other bidders stand in for a number that neither the lot nor the shop has. Starter value, from memory.
const UsualRivals = 4

// rivals returns the number of other bidders in force.
func (m Market) rivals() int {
	switch {
	case m.Rivals != nil:
		return *m.Rivals
	case m.UsualRivals != nil:
		return *m.UsualRivals
	}
	return UsualRivals
}

// whose says where a number of other bidders comes from that the lot does not have.
func (m Market) whose() string {
	if m.UsualRivals != nil {
		return "the usual number of your shop"
	}
	return "a starter value"
}

// Others returns the number of other bidders in force, and whether it was entered.
func (m Market) Others() (n int, entered bool) { return m.rivals(), m.Rivals != nil }

// Defaults returns a case with every optional key at its documented default.
func Defaults() Case {
	return Case{
		Format: Format,
		Repair: Repair{UseCatalogue: true},
		Hidden: Hidden{UseCatalogue: true, SharedLoading: 0.3},
		Resale: Resale{BrandDiscount: prob.Three{Low: 0.15, Likely: 0.28, High: 0.45},
			AskedToSold: prob.Three{Low: 0.90, Likely: 0.95, High: 1}},
		Time:    Time{HoursPerWeek: 30},
		Lot:     lot.Lot{OdometerUnit: "mi", OdometerStatus: "unknown", Condition: "unknown"},
		Buying:  Buying{Terms: invoice.Terms{Tax: invoice.Tax{Base: "hammer"}}},
		Market:  Market{OwnShare: starterOwnShare, Narrowing: true},
		WaysOut: WaysOut{Stop: true, Strip: Strip{Trade: wayTrade}},
		Run:     Run{Scenarios: 16384, Seed: 1, WinnersAllowance: true},
	}
}
